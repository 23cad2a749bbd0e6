/** A right atrium that is the pathway itself, opened from the front: its stretched wall around the blood, and the seams by which its roof is sewn to the pulmonary arteries. */
import type { ChestFrame, Opening, Point } from "../../../sim/geometry/geometry.ts";
import type { Theme } from "../../theme/theme.ts";
import { laidOver, scratch } from "../paint-tube.ts";
import { type Bounds, type Ink, type Outlines, strokes, trace } from "../painted-sheet.ts";
import { tissue } from "../tones.ts";
import { cutAt, keepChamber } from "./chamber-edges.ts";
import { INNER, mouthOf, rounded } from "./chamber-shape.ts";
import { paintMarks } from "./paint-chamber-lining.ts";
import { aroundMouth } from "./running-suture.ts";

/** mm of a 5-year-old: muscle beyond the vessels' wall, thin for its size. */
const MUSCLE = 1.1;
/** Points to either side over which its outside is rounded. */
const OUTER = 6;
/** How much of what its back wall shows is seen through the blood. */
const THROUGH = 0.34;

export function paintChamber(
  ink: Ink,
  bounds: Bounds,
  frame: ChestFrame,
  { seen, lumen = [] }: Outlines,
  theme: Theme,
): void {
  const { scale: s, chamber } = frame;
  if (!chamber) return;
  const own = scratch(ink, bounds);
  paintWall(own, chamber, seen, s, theme);
  own.globalCompositeOperation = "destination-out";
  for (const loop of lumen) {
    trace(own, rounded(loop, INNER), true);
    own.fill();
  }
  own.globalCompositeOperation = "source-over";
  own.lineWidth = 0.55 * s;
  own.strokeStyle = tissue("atrium", theme).light;
  for (const loop of lumen) {
    trace(own, rounded(loop, INNER), true);
    own.stroke();
  }
  const mouths = (["left", "right"] as const).map((side) => mouthOf({ ...frame, chamber }, side, lumen));
  keepChamber(own, chamber, s, bounds);
  for (const mouth of mouths) cutAt(own, mouth, s);
  if (frame.hole) paintWay(own, frame.hole, s, theme);
  laidOver(ink, own, bounds);
  ink.globalAlpha = THROUGH;
  paintMarks(ink, frame, theme);
  ink.globalAlpha = 1;
  for (const { low, high } of mouths) aroundMouth(ink, low, high, s, theme);
}

/** Lit from the upper left, so that its outside turns away below and towards the heart. */
function paintWall(ink: Ink, [a, b]: Point, seen: Outlines["seen"], s: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const lit = ink.createLinearGradient(-0.7 * a, 0.9 * b, 0.8 * a, -0.9 * b);
  lit.addColorStop(0, look.light);
  lit.addColorStop(0.35, look.body);
  lit.addColorStop(1, look.shade);
  for (const loop of seen) {
    trace(ink, rounded(loop, OUTER), true);
    for (const [more, colour] of [
      [MUSCLE + 0.3, look.edge],
      [MUSCLE, lit],
    ] as const) {
      ink.lineWidth = 2 * more * s;
      ink.strokeStyle = ink.fillStyle = colour;
      ink.stroke();
      ink.fill();
    }
  }
}

/** The hole goes through the whole wall, which ends straight around it. */
function paintWay(
  ink: Ink,
  { centre: [x, y], normal: [nx, ny], width }: Opening,
  s: number,
  theme: Theme,
): void {
  const at = (out: number, across: number): Point => [x + out * nx - across * ny, y + out * ny + across * nx];
  const take = (from: number, to: number, half: number) => {
    trace(ink, [at(from, -half), at(to, -half), at(to, half), at(from, half)], true);
    ink.fill();
  };
  const [outside, half] = [1.6 * s, width / 2];
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  take(outside, 14 * s, half + 9 * s);
  take(-1.5 * s, outside, half);
  ink.globalCompositeOperation = "source-over";
  for (const side of [-1, 1]) {
    const rim = side * half;
    strokes(ink, [at(-0.6 * s, rim), at(outside, rim)], s, [[0.55, tissue("atrium", theme).light]]);
    strokes(ink, [at(outside, rim), at(outside, rim + 5.5 * side * s)], s, [
      [0.3, tissue("atrium", theme).edge],
    ]);
  }
  ink.restore();
}
