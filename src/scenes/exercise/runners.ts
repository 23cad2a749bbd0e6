/** The same person at each effort of the curves' axis: standing, walking, running. The one of the state on the stage moves. */
import type { Graphics } from "pixi.js";
import { drawFigure, going, reachOf } from "../drawing/figure.ts";
import { innerBox, type Plotted } from "../drawing/plot.ts";
import type { Box } from "../scene.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** Steps' rounds a second when walking, and what running at the greatest effort adds. */
const WALKING = 0.8;
const FASTER = 0.65;
/** Where a step is widest. */
const STRIDE = 1.2;
/** A person's height at most: in heights of the row, and in widths that one more time rest takes on the axis. */
const TALL = 0.94;
const TALL_FOR_STEP = 1.5;
/** How far the fastest runner reaches ahead of the middle of the feet in a whole step, in parts of the height. */
const REACH = Math.max(...Array.from({ length: 24 }, (_, i) => reachOf(going(1, (i * Math.PI) / 12))));

const tallest = (box: Box, step: number): number => Math.min(TALL * box.height, TALL_FOR_STEP * step);

/** CSS px that plots under the row must leave free at their right, so that the last runner stays within the box. */
export function roomAhead(efforts: readonly number[], box: Box, type: number): number {
  const inner = innerBox(box, type, false);
  const step = inner.width / Math.max(1, Math.max(...efforts) - Math.min(...efforts));
  return Math.max(0, REACH * tallest(box, step) - (box.x + box.width - inner.x - inner.width));
}

interface RunnersState {
  /** `now`: effort of the state on the stage, times rest */
  readonly efforts: readonly number[];
  readonly now: number;
  /** s of the running clock */
  readonly time: number;
  readonly still: boolean;
}

export function drawRunners(
  ink: Graphics,
  { efforts, now, time, still }: RunnersState,
  { toX }: Pick<Plotted, "toX">,
  box: Box,
  { colour }: Theme,
): void {
  const most = Math.max(...efforts);
  const paceOf = (effort: number) => Math.max(0, (effort - 1) / Math.max(1, most - 1));
  const nearest = efforts.reduce((a, b) => (Math.abs(b - now) < Math.abs(a - now) ? b : a), 1);
  const step = Math.abs(toX(2) - toX(1));
  const height = tallest(box, step);
  const ground = box.y + box.height;
  for (const effort of efforts) {
    const own = effort === nearest;
    const pace = paceOf(own ? now : effort);
    const phase = own && !still && pace > 0 ? 2 * Math.PI * time * (WALKING + FASTER * pace) : STRIDE;
    drawFigure(
      ink,
      going(pace, phase),
      { x: toX(own ? now : effort), ground, height },
      own ? colour.accent : mix(colour.stage, colour.hair, 0.5),
    );
  }
  ink
    .moveTo(toX(1) - step / 2, ground)
    .lineTo(Math.min(toX(most) + step / 3, box.x + box.width), ground)
    .stroke({ color: colour.hair, width: 1.5, alpha: 0.6 });
}
