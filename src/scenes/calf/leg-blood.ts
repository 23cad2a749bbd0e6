/** The deep vein's blood at a moment: dots between wall and cusps, each as long as its blood is fast. */
import type { LegValves } from "../../chain/leg-valves.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { saturationOf } from "../circuit/circuit-blood.ts";
import { type Streaks, shapeOf } from "../drawing/streaks.ts";
import { markColour, tintOf } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import type { BloodColumn } from "./blood-column.ts";
import { footTurn } from "./foot.ts";
import { freeHalfWidth, halfWidth, placeInLeg, pressedAt } from "./vein.ts";

export interface LegState {
  readonly circulation: Circulation;
  /** null until they are computed: drawn shut */
  readonly valves: LegValves | null;
  /** s of blood time */
  readonly time: number;
  readonly still: boolean;
}

/** Gives each dot a rank of no order that shows; how fast one whose rank has no room fades. */
const ODD = 0.7548776662;
const FADE = 5;
/** Half a dot, and how near it comes to the wall. */
const DOT = 3.6;
/** s in which a dot goes as far as it is drawn longer than round, and plane units of the longest. */
const EXPOSED = 0.09;
const LONGEST = 38;
/** Plane units a second under which an arrowhead is no more than a dot, and its length at next to no speed. */
const STANDS = 6;
const POINTED = 13;

/** Along the vein, plane units: what is shown of it. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Sets the column's dots. */
export function placeBlood(
  blood: Streaks,
  column: BloodColumn,
  { circulation, time, still }: LegState,
  { open, from, to }: Span & { readonly open: readonly number[] },
  theme: Theme,
): void {
  const pressed = pressedAt(circulation.traces, time);
  const turn = footTurn(pressed);
  const colour = tintOf(markColour(theme.colour, saturationOf(circulation, "ivc")));
  let shown = 0;
  column.each(time, (dot, at, across, speed) => {
    if (at < from || at > to) return;
    const free = freeHalfWidth(at, pressed, open);
    // Between cusps that are shut there is room for few.
    const crowd = free / halfWidth(at, pressed) - ((dot * dot * ODD) % 1);
    const points = still && Math.abs(speed) > STANDS;
    const { spot, up } = placeInLeg(at, across * Math.max(0, free - DOT - 3), turn);
    const [width, least] = [Math.min((points ? 3.6 : 2) * DOT, 1.2 * free), points ? POINTED : 0];
    blood.set(shown++, {
      x: spot[0],
      y: spot[1],
      angle: Math.atan2(up[1], up[0]) + (speed < 0 ? Math.PI : 0),
      length: Math.min(LONGEST, Math.max(least, width) + EXPOSED * Math.abs(speed)),
      width,
      colour,
      shape: shapeOf(false, points),
      alpha: still && dot % 3 !== 0 ? 0 : Math.min(1, Math.max(0, 1 + FADE * crowd)),
    });
  });
  blood.resize(shown);
}
