/** The same person at each effort of the curves' axis: standing, walking, running. The one of the state on the stage moves. */
import type { Graphics } from "pixi.js";
import { curve, traceCurve } from "../drawing/curve-drawing.ts";
import { innerBox, type Plotted } from "../drawing/plot.ts";
import { gaitOf, reachOf, runner } from "../drawing/runner.ts";
import type { Box } from "../scene.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** Rounds of a step a second when walking, and what running at the greatest effort adds. */
const WALKING = 0.8;
const FASTER = 0.65;
/** Moments of a round at which walking and running are told apart: both feet down, and both in the air. */
const [DOWN, FLYING] = [0.02, 0.42];
/** A person's height at most: in heights of the row, and in widths that one more time rest takes on the axis. */
const TALL = 0.9;
const TALL_FOR_STEP = 1.6;
/** How far the fastest runner reaches ahead of the hips in a whole step, in parts of the height. */
const REACH = Math.max(...Array.from({ length: 24 }, (_, i) => reachOf(runner(gaitOf(8), i / 24))));

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
  theme: Theme,
): void {
  const nearest = efforts.reduce((a, b) => (Math.abs(b - now) < Math.abs(a - now) ? b : a), 1);
  const most = Math.max(...efforts);
  const step = Math.abs(toX(2) - toX(1));
  const height = tallest(box, step);
  const ground = box.y + box.height - 2;
  ink
    .moveTo(toX(1) - step / 2, ground + 1)
    .lineTo(Math.min(toX(most) + step / 3, box.x + box.width), ground + 1)
    .stroke({ color: theme.colour.hair, width: 1.5, alpha: 0.6 });
  for (const effort of efforts) {
    const own = effort === nearest;
    const shown = own ? now : effort;
    const gait = gaitOf(shown);
    const pace = Math.max(0, (shown - 1) / Math.max(1, most - 1));
    const resting = gait.running > 0.5 ? FLYING : DOWN;
    const round = own && !still && gait.stride > 0 ? time * (WALKING + FASTER * pace) : resting;
    drawRunner(ink, runner(gait, round), { x: toX(shown), ground, height }, own, theme);
  }
}

function drawRunner(
  ink: Graphics,
  parts: ReturnType<typeof runner>,
  { x, ground, height }: { readonly x: number; readonly ground: number; readonly height: number },
  own: boolean,
  { colour, name }: Theme,
): void {
  const body = own ? colour.accent : mix(colour.stage, colour.hair, 0.55);
  const shade = (share: number) => mix(body, name === "dark" ? colour.stageDeep : colour.ink, share);
  const tones = {
    near: body,
    far: mix(body, colour.stage, 0.4),
    shirt: shade(0.14),
    farCloth: mix(shade(0.45), colour.stage, 0.25),
    cloth: shade(0.45),
  };
  for (const { tone, outline } of parts) {
    const spots = outline.map(([px, py]) => [x + height * px, ground - height * py] as const);
    const [first] = spots;
    if (!first) continue;
    traceCurve(ink, curve([...spots, first], 2));
    ink.closePath().fill({ color: tones[tone] });
  }
}
