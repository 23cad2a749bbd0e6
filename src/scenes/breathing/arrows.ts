/** Arrows that say how wall and diaphragm move at the moment, and what the great veins carry. */
import type { Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { lungsAt } from "../anatomy/standing.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { meanOf, valueAt } from "../drawing/trace-clock.ts";
import type { Palette } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { MIDLINE } from "./torso.ts";

/** Plane units of an arrow for a widening of one in a second, and for a vein's mean flow. */
const BY_RATE = 190;
const BY_MEAN = 44;
const LONGEST = 96;

/** How fast the lungs widen, in parts of their resting size a second. */
export function wideningAt(circulation: Circulation, time: number): number {
  const step = circulation.traces.period / 200;
  const at = (when: number) => lungsAt(circulation, when, false);
  return (at(time + step) - at(time - step)) / (2 * step);
}

/** Where an arrow begins, and which way it points while the chest widens. */
const MOVING: readonly (readonly [from: Spot, way: Spot])[] = [
  ...[300, 380, 460].flatMap((y) =>
    [-1, 1].map(
      (side) =>
        [
          [MIDLINE + side * 312, y],
          [side * 0.92, -0.39],
        ] as const,
    ),
  ),
  [
    [318, 508],
    [0, 1],
  ],
  [
    [688, 530],
    [0, 1],
  ],
];

interface Stream {
  readonly flow: "svc" | "ivc";
  readonly from: Spot;
  readonly way: Spot;
  readonly colour: (palette: Palette) => string;
}
/** Beside each great vein, in the colour of its curve. */
const STREAMS: readonly Stream[] = [
  { flow: "ivc", from: [500, 700], way: [0, -1], colour: ({ origin }) => origin[2] },
  { flow: "svc", from: [426, 170], way: [0, 1], colour: ({ origin }) => origin[0] },
];

const means = new WeakMap<Circulation, Readonly<Record<Stream["flow"], number>>>();

/** L/min, summed over the traces once; 0 where the model gives no such flow. */
function meansOf(circulation: Circulation): Readonly<Record<Stream["flow"], number>> {
  const before = means.get(circulation);
  if (before) return before;
  const { traces } = circulation;
  const mean = (trace: Float64Array | undefined) => (trace ? meanOf(traces, trace) : 0);
  const made = { ivc: mean(traces.flows.ivc), svc: mean(traces.flows.svc) };
  means.set(circulation, made);
  return made;
}

export function drawArrows(
  ink: Graphics,
  circulation: Circulation,
  time: number,
  moves: boolean,
  theme: Theme,
): void {
  const { colour } = theme;
  const { traces } = circulation;
  ink.clear();
  const rate = moves ? wideningAt(circulation, time) : 0;
  for (const [from, way] of MOVING) arrow(ink, from, way, BY_RATE * rate, colour.ink);
  for (const { flow, from, way, colour: of } of STREAMS) {
    const trace = traces.flows[flow];
    if (!trace) continue;
    const part = valueAt(traces, trace, time) / Math.max(1e-9, Math.abs(meansOf(circulation)[flow]));
    arrow(ink, from, way, BY_MEAN * part, of(colour));
  }
}

/** @param length below nought: the other way, over the same place */
function arrow(ink: Graphics, [x, y]: Spot, [wx, wy]: Spot, length: number, color: string): void {
  const reach = Math.min(LONGEST, Math.abs(length));
  if (reach < 9) return;
  const turn = Math.sign(length);
  const [ux, uy] = [turn * wx, turn * wy];
  const [sx, sy] = turn > 0 ? [x, y] : [x + reach * wx, y + reach * wy];
  const [tx, ty] = [sx + ux * reach, sy + uy * reach];
  const head = Math.min(15, reach * 0.6);
  const [bx, by] = [tx - ux * head, ty - uy * head];
  ink
    .moveTo(sx, sy)
    .lineTo(bx + ux * 2, by + uy * 2)
    .stroke({ color, width: 5, cap: "round" });
  const half = head * 0.58;
  ink.poly([tx, ty, bx - uy * half, by + ux * half, bx + uy * half, by - ux * half]).fill({ color });
}
