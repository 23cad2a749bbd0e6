/** A right atrium that is the pathway itself, opened from the front: its stretched wall around the blood, and the seams by which its roof is sewn to the pulmonary arteries. */

import { entryAt } from "../../../sim/checked/present.ts";
import type { ChestFrame, Opening, Point } from "../../../sim/geometry/geometry.ts";
import type { Theme } from "../../theme/theme.ts";
import { paintOrgan } from "../paint-organ.ts";
import { laidOver, scratch } from "../paint-tube.ts";
import { type Bounds, type Ink, type Outlines, strokes, trace } from "../painted-sheet.ts";
import { tissue } from "../tones.ts";
import { keepChamber } from "./chamber-edges.ts";
import { INNER, rounded } from "./chamber-shape.ts";
import { paintConnection } from "./paint-chamber-lining.ts";

/** mm of a 5-year-old: muscle beyond the vessels' wall, thin for its size; and where the tricuspid valve is missing. */
const MUSCLE = 1.1;
const FLOOR = 3.6;
/** mm of a 5-year-old by which fat fills the groove between there and the ventricle */
const FAT = 7;
/** degrees from the patient's left to the middle of the missing inlet, and how far it reaches to either side */
const INLET = -32;
const ABOUT = 36;
/** Points to either side over which its outside is rounded. */
const OUTER = 6;
/** How much of the arteries and the seam behind its roof is seen through the blood. */
const THROUGH = 0.4;

/** 1 at the middle of the missing inlet, 0 away from it */
const atInlet = (degrees: number): number =>
  Math.max(0, Math.cos(((degrees - INLET) / ABOUT) * (Math.PI / 2)));

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
  keepChamber(own, chamber, s, bounds);
  if (frame.hole) paintWay(own, frame.hole, s, theme);
  paintGroove(ink, chamber, s, theme);
  laidOver(ink, own, bounds);
  paintConnection(ink, { ...frame, chamber }, lumen, theme, THROUGH);
}

/** Fat between the floor that has no valve and the ventricle, with a coronary artery cut across. */
function paintGroove(ink: Ink, [a, b]: Point, s: number, theme: Theme): void {
  const fat = tissue("sac", theme);
  const on = (degrees: number, out: number): Point => {
    const turn = (degrees * Math.PI) / 180;
    return [(a + out * s) * Math.cos(turn), (b + out * s) * Math.sin(turn)];
  };
  const degrees = Array.from({ length: 41 }, (_, i) => INLET + ABOUT * (i / 20 - 1));
  const outer = degrees.map((at) => on(at, 2 + (FLOOR + FAT) * Math.sqrt(atInlet(at))));
  paintOrgan(ink, [...outer, ...degrees.map((at) => on(at, 0)).reverse()], fat, {
    depth: 3 * s,
    edge: 0.5 * s,
  });
  const [x, y] = on(INLET - 9, 4.4 + FLOOR + 0.3 * FAT);
  const wall = tissue("atrium", theme);
  for (const [reach, colour] of [
    [1.9, wall.edge],
    [1.5, wall.light],
    [0.9, wall.shade],
  ] as const) {
    ink.beginPath();
    ink.arc(x, y, reach * s, 0, 2 * Math.PI);
    ink.fillStyle = colour;
    ink.fill();
  }
}

/** Lit from the upper left, so that its outside turns away below and towards the heart; on the vessels it grows thin. */
function paintWall(ink: Ink, [a, b]: Point, seen: Outlines["seen"], s: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const lit = ink.createLinearGradient(-0.7 * a, 0.9 * b, 0.8 * a, -0.9 * b);
  lit.addColorStop(0, look.light);
  lit.addColorStop(0.35, look.body);
  lit.addColorStop(1, look.shade);
  const own = ([x, y]: Point): number =>
    Math.min(1, Math.max(0, (1.22 - Math.hypot(x / (a + 2 * s), y / (b + 2 * s))) / 0.2));
  const thick = ([x, y]: Point): number => {
    const floor = (FLOOR - MUSCLE) * atInlet((Math.atan2(y / b, x / a) * 180) / Math.PI);
    return (MUSCLE + floor) * own([x, y]);
  };
  for (const loop of seen) {
    const smooth = rounded(loop, OUTER);
    // Beyond the atrium it is the vessels' own outside.
    const points = rounded(loop, INNER).map(([x, y], i): Point => {
      const [sx, sy] = entryAt(smooth, i);
      const part = own([x, y]);
      return [x + part * (sx - x), y + part * (sy - y)];
    });
    for (const [more, colour] of [
      [0.3, look.edge],
      [0, lit],
    ] as const) {
      ink.strokeStyle = ink.fillStyle = colour;
      trace(ink, points, true);
      ink.fill();
      points.forEach((point, i) => {
        const width = thick(point);
        if (width === 0) return;
        trace(ink, [point, entryAt(points, (i + 1) % points.length)]);
        ink.lineWidth = 2 * (width + more) * s;
        ink.stroke();
      });
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
