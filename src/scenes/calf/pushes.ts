/** Arrows onto the deep vein from the muscles on both sides, as long as their pressure; and in the vein, as long as its blood flows. */
import type { Graphics } from "pixi.js";
import type { Theme } from "../theme/theme.ts";
import { halfWidth, placeInLeg, pressing, STANDS } from "./vein.ts";

/** Plane units: where along the vein, how long at most, half the shaft and the head, and how far their tips stay off its wall. In front they begin beyond artery and second vein. */
const AT = [400, 475, 550] as const;
const LONG = { behind: 44, front: 62 } as const;
const OFF = 3;
/** mmHg under which there is none, and that make one as long as it can be. */
const [FAINTEST, HARDEST] = [3, 60];
/** Plane units: half an arrow's shaft and head, and how long that is. */
const PUSH = { shaft: 4, half: 10, head: 13 } as const;

/** Along the vein, plane units: tips of the arrows above the upper valves and between the lower ones, how they are shaped, and how long they are at least and at most. */
const WAYS = [
  { flow: "out", tip: 16, shaft: 6, half: 14.5, head: 20, long: [28, 58] },
  { flow: "in", tip: 666, shaft: 3, half: 7.5, head: 11, long: [16, 44] },
] as const;
/** L/min, for each m2 of body, that make an arrow as long as it can be. */
const FULL = 1.6;

/** @param spot by how far from the tip, and across */
function drawArrow(
  ink: Graphics,
  spot: (back: number, across: number) => readonly [number, number],
  { shaft, half, head, long }: Readonly<Record<"shaft" | "half" | "head" | "long", number>>,
  { colour }: Theme,
): void {
  const one = [spot(head, half), spot(head, shaft), spot(long, shaft)];
  const other = [spot(long, -shaft), spot(head, -shaft), spot(head, -half)];
  ink
    .poly([spot(0, 0), ...one, ...other].flat())
    .fill({ color: colour.ink })
    .stroke({ color: colour.stage, width: 2, join: "round" });
}

/** @param pressed 0..1 */
export function drawPushes(ink: Graphics, pressed: number, theme: Theme): void {
  const mmHg = pressing(pressed);
  if (mmHg < FAINTEST) return;
  for (const at of AT)
    for (const [side, most] of [
      [-1, LONG.behind],
      [1, LONG.front],
    ] as const) {
      const wall = halfWidth(at, pressed) + OFF;
      const spot = (back: number, up: number) => placeInLeg(at + up, side * (wall + back)).spot;
      drawArrow(ink, spot, { ...PUSH, long: PUSH.head + most * Math.min(1, mmHg / HARDEST) }, theme);
    }
}

/** @param flows L/min for each m2 of body, towards the heart */
export function drawFlows(ink: Graphics, flows: Readonly<Record<"out" | "in", number>>, theme: Theme): void {
  for (const { flow, tip, long, ...shape } of WAYS) {
    if (flows[flow] < STANDS) continue;
    const [least, most] = long;
    const length = least + (most - least) * Math.min(1, flows[flow] / FULL);
    drawArrow(ink, (back, across) => placeInLeg(tip + back, across).spot, { ...shape, long: length }, theme);
  }
}
