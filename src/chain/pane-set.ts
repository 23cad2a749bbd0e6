/** The panes side by side: as many as the state asks for, sharing out what one page can afford. */

import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { Foresee } from "./foreseen.ts";
import { type PaneLink, paneLink } from "./pane-link.ts";
import type { Port } from "./port.ts";
import type { GridChoice } from "./worker-messages.ts";

export interface PaneSetOptions {
  readonly startField: () => Port;
  /** what blood moves and is drawn by until a pane's first answer has come; without it there is none until then */
  readonly foresee?: Foresee;
  /** 0..1 */
  readonly random: () => number;
  /** tracers in all panes together; 10,000 when left out */
  readonly tracers?: number;
}

export interface PaneSet {
  readonly links: readonly PaneLink[];
  /** Word keys of the steps down the ladder that any pane has taken. */
  readonly degraded: readonly string[];
  /** Rebuilds the panes where their number changes, and says whether it did. */
  keep(count: number): boolean;
  /** The answers are these now; `more` are to come. */
  drive(circulations: readonly (Circulation | null)[], more: boolean): void;
  release(): void;
}

const TRACERS = 10_000;
/**
 * One pane can afford a finer grid than two or three that share the processor, and a lead; panes that race start together at once. What these could
 * solve finer is not seen in a third of the picture, and is left to the drawing.
 */
export const ALONE = { cellsAcross: 20, lead: { cellsAcross: 6, runUp: 1.2 }, soundSteps: 3 } as const;
const BESIDE: GridChoice = { cellsAcross: 16, finest: 16, soundSteps: 3 };
/** Steps down the ladder, in the order in which they are announced. */
const STEPS = ["fieldLost", "fieldOff", "fieldRefused"];

export function paneSet({ startField, random, tracers = TRACERS, foresee }: PaneSetOptions): PaneSet {
  let links: readonly PaneLink[] = [];
  const release = () => {
    for (const pane of links) pane.release();
  };
  return {
    get links() {
      return links;
    },
    get degraded() {
      return STEPS.filter((step) => links.some((pane) => pane.degraded.includes(step)));
    },
    keep(count) {
      if (links.length === count) return false;
      release();
      const [share, grid] = [Math.floor(tracers / count), count > 1 ? BESIDE : ALONE];
      links = Array.from({ length: count }, () => paneLink(startField, random, share, grid, foresee));
      return true;
    },
    drive(circulations, more) {
      const first = circulations[0] ?? null;
      links.forEach((pane, i) => {
        pane.drive({ own: circulations[i] ?? null, first }, more);
      });
    },
    release,
  };
}
