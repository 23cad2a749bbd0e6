/** Arrows that say how wall and diaphragm move at the moment, and what the great veins carry. */
import type { Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { lungsAt } from "../anatomy/standing.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { meanOf, valueAt } from "../drawing/trace-clock.ts";
import type { Palette } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { MIDLINE } from "./torso.ts";

/** Plane units of an arrow at the breath's fastest widening. */
const FASTEST = 64;
/** Parts of the lungs' size a second below which the chest is at rest. */
const AT_REST = 0.005;
/** Plane units of an arrow for the great veins' mean flow, unless its greatest flow would then leave the vein. */
const BY_MEAN = 50;
/** Widths: of an arrow for the wall's own motion, and of a stream's, which is what the picture is about. */
const MOTION = 6;
const STREAM = 10;

/** How fast the lungs widen, in parts of their resting size a second. */
export function wideningAt(circulation: Circulation, time: number): number {
  const step = circulation.traces.period / 200;
  const at = (when: number) => lungsAt(circulation, when, false);
  return (at(time + step) - at(time - step)) / (2 * step);
}

/** Where an arrow begins, and which way it points while the chest widens. */
const MOVING: readonly (readonly [from: Spot, way: Spot])[] = [
  ...[468, 518].flatMap((y) =>
    [-1, 1].map(
      (side) =>
        [
          [MIDLINE + side * 322, y],
          [side * 0.94, -0.34],
        ] as const,
    ),
  ),
  [
    [336, 500],
    [0, 1],
  ],
  [
    [706, 528],
    [0, 1],
  ],
];

interface Stream {
  readonly flow: "svc" | "ivc";
  readonly middle: Spot;
  readonly way: Spot;
  /** plane units of its vein */
  readonly longest: number;
  readonly colour: (palette: Palette) => string;
}
/** On each great vein, the lower one where it comes through the diaphragm from the belly's pressure to the chest's; in the colour of its curve. */
const STREAMS: readonly Stream[] = [
  { flow: "ivc", middle: [468, 500], way: [0, -1], longest: 120, colour: ({ origin }) => origin[2] },
  { flow: "svc", middle: [468, 229], way: [0, 1], longest: 84, colour: ({ origin }) => origin[0] },
];

/** Moments of a breath at which its fastest widening is looked for. */
const LOOKED = 60;

interface Scale {
  /** plane units for each L/min, the same for both great veins */
  readonly perFlow: number;
  /** fastest widening or narrowing of the breath */
  readonly fastest: number;
}
const scales = new WeakMap<Circulation, Scale>();

/** Read off the traces once. */
function scaleOf(circulation: Circulation): Scale {
  const before = scales.get(circulation);
  if (before) return before;
  const { traces } = circulation;
  const mean = (trace: Float64Array | undefined) => (trace ? meanOf(traces, trace) : 0);
  const rates = Array.from({ length: LOOKED }, (_, i) =>
    Math.abs(wideningAt(circulation, (i / LOOKED) * traces.period)),
  );
  const both = Math.abs(mean(traces.flows.ivc) + mean(traces.flows.svc)) / 2;
  const most = (trace: Float64Array | undefined) =>
    (trace ?? new Float64Array(0)).reduce((a, b) => Math.max(a, Math.abs(b)), 1e-9);
  const made = {
    perFlow: Math.min(
      BY_MEAN / Math.max(1e-9, both),
      ...STREAMS.map(({ flow, longest }) => longest / most(traces.flows[flow])),
    ),
    fastest: Math.max(AT_REST, ...rates),
  };
  scales.set(circulation, made);
  return made;
}

export function drawArrows(ink: Graphics, circulation: Circulation, time: number, theme: Theme): void {
  const { colour } = theme;
  const { traces } = circulation;
  ink.clear();
  const scale = scaleOf(circulation);
  const rate = wideningAt(circulation, time) / scale.fastest;
  // Of a slow motion too the way can be seen: by the root.
  const length = FASTEST * Math.sign(rate) * Math.sqrt(Math.abs(rate));
  for (const [from, way] of MOVING)
    arrow(ink, from, way, length, { color: colour.ink, width: MOTION, rim: colour.stage });
  for (const {
    flow,
    middle: [x, y],
    way,
    colour: of,
  } of STREAMS) {
    const trace = traces.flows[flow];
    if (!trace) continue;
    const length = scale.perFlow * valueAt(traces, trace, time);
    const half = Math.abs(length) / 2;
    arrow(ink, [x - half * way[0], y - half * way[1]], way, length, {
      color: of(colour),
      width: STREAM,
      rim: colour.stage,
    });
  }
}

/** Plane units of an arrow's light rim, on both sides together, and the least length that points anywhere; widths in the length of the stoutest. */
const RIM = 5;
const SHORTEST = 12;
const STOUTEST = 3.4;

/** @param length below nought: the other way, over the same place */
function arrow(
  ink: Graphics,
  [x, y]: Spot,
  [wx, wy]: Spot,
  length: number,
  { color, width: widest, rim }: { readonly color: string; readonly width: number; readonly rim: string },
): void {
  const reach = Math.abs(length);
  if (reach < SHORTEST) return;
  const width = Math.min(widest, reach / STOUTEST);
  const turn = Math.sign(length);
  const [ux, uy] = [turn * wx, turn * wy];
  const [sx, sy] = turn > 0 ? [x, y] : [x + reach * wx, y + reach * wy];
  const [tx, ty] = [sx + ux * reach, sy + uy * reach];
  const head = Math.min(3 * width, reach * 0.6);
  const [bx, by] = [tx - ux * head, ty - uy * head];
  const half = head * 0.58;
  const [ex, ey] = [bx + ux * 2, by + uy * 2];
  const tip = [tx, ty, bx - uy * half, by + ux * half, bx + uy * half, by - ux * half];
  ink
    .moveTo(sx, sy)
    .lineTo(ex, ey)
    .stroke({ color: rim, width: width + RIM, cap: "round" });
  ink.poly(tip).stroke({ color: rim, width: RIM, join: "round" });
  ink.moveTo(sx, sy).lineTo(ex, ey).stroke({ color, width, cap: "round" });
  ink.poly(tip).fill({ color });
}
