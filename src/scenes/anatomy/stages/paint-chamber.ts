/** A right atrium that is the pathway itself: its muscular wall around the blood, ridges within, its appendage, the closed inlet, and the seams to the pulmonary arteries. */
import { entryAt } from "../../../sim/checked/present.ts";
import { closedOutline } from "../../../sim/geometry/centreline.ts";
import type { ChestFrame, Point } from "../../../sim/geometry/geometry.ts";
import type { Theme } from "../../theme/theme.ts";
import { paintJoin } from "../paint-graft.ts";
import { paintOrgan } from "../paint-organ.ts";
import { laidOver, scratch } from "../paint-tube.ts";
import { type Bounds, type Ink, type Outlines, trace } from "../painted-sheet.ts";
import { smoothLine } from "../placing.ts";
import { tissue } from "../tones.ts";

/** mm of a 5-year-old: muscle beyond the vessels' wall, and how far it reaches on to the vessels. */
const MUSCLE = 2.4;
const CUFF: Point = [8.5, 8];
/** Points to either side over which a line is rounded: the muscle's outside, and its inside. */
const OUTER = 6;
const INNER = 2;

export function paintChamber(
  ink: Ink,
  bounds: Bounds,
  { scale: s, chamber, left, right }: ChestFrame,
  { seen, lumen = [] }: Outlines,
  theme: Theme,
): void {
  if (!chamber) return;
  const [a, b] = chamber;
  const look = tissue("atrium", theme);
  const onWall = (degrees: number, part: number): Point => {
    const angle = (degrees * Math.PI) / 180;
    return [a * (-0.1 + 1.02 * part * Math.sin(angle)), b * (-0.06 + 0.95 * part * Math.cos(angle))];
  };
  const appendage = [
    onWall(-84, 0.98),
    onWall(-82, 1.22),
    onWall(-74, 1.36),
    onWall(-66, 1.3),
    onWall(-60, 1.38),
    onWall(-52, 1.24),
    onWall(-52, 1),
  ];
  paintOrgan(ink, closedOutline(appendage), look, { depth: 2.6 * s, edge: 0.5 * s });
  const own = scratch(ink, bounds);
  for (const loop of seen) {
    const outline = rounded(loop, OUTER);
    for (const [more, colour] of [
      [MUSCLE + 0.25, look.edge],
      [MUSCLE, look.shade],
      [0.5 * MUSCLE, look.body],
    ] as const) {
      trace(own, outline, true);
      own.lineWidth = 2 * more * s;
      own.strokeStyle = own.fillStyle = colour;
      own.stroke();
      own.fill();
    }
  }
  own.globalCompositeOperation = "destination-out";
  for (const loop of lumen) {
    trace(own, rounded(loop, INNER), true);
    own.fill();
  }
  own.globalCompositeOperation = "source-over";
  own.lineWidth = 0.7 * s;
  own.strokeStyle = look.light;
  for (const loop of lumen) {
    trace(own, rounded(loop, INNER), true);
    own.stroke();
  }
  paintRidges(own, onWall, s, theme);
  keepChamber(own, [a + CUFF[0] * s, b + CUFF[1] * s], bounds);
  laidOver(ink, own, bounds);
  paintInlet(ink, [0.3 * a, -0.5 * b], s, theme);
  for (const [side, { width }] of [
    [1, left],
    [-1, right],
  ] as const) {
    const [x, y] = [side * 0.83 * (a + 7 * s), 0.64 * b + 3.6 * s];
    const half = width / 2 + 2 + 0.8 * s;
    paintJoin(ink, [x - 0.3 * half * side, y + half], [x + 0.3 * half * side, y - half], s, theme);
  }
}

/** The muscle ends on the vessels as a sleeve that grows thin. */
function keepChamber(ink: Ink, [wide, high]: Point, [left, bottom, right, top]: Bounds): void {
  ink.save();
  ink.globalCompositeOperation = "destination-in";
  ink.scale(1, high / wide);
  const fall = ink.createRadialGradient(0, 0, 0.86 * wide, 0, 0, wide);
  fall.addColorStop(0, "#000");
  fall.addColorStop(1, "#0000");
  ink.fillStyle = fall;
  ink.fillRect(left, (bottom * wide) / high, right - left, ((top - bottom) * wide) / high);
  ink.restore();
}

/** The line's points, each the mean of those around it. */
function rounded(loop: readonly number[], reach: number): readonly Point[] {
  const count = loop.length / 2;
  const at = (i: number, k: 0 | 1) => entryAt(loop, 2 * ((i + count) % count) + k);
  return Array.from({ length: count }, (_, i): Point => {
    let [x, y] = [0, 0];
    for (let n = -reach; n <= reach; n++) {
      x += at(i + n, 0);
      y += at(i + n, 1);
    }
    return [x / (2 * reach + 1), y / (2 * reach + 1)];
  });
}

/** Pectinate muscles: from the crest that runs down the back to the free wall. */
function paintRidges(
  ink: Ink,
  onWall: (degrees: number, part: number) => Point,
  size: number,
  theme: Theme,
): void {
  const look = tissue("atrium", theme);
  const line = (points: readonly Point[], width: number) => {
    for (const [part, colour] of [
      [1, look.shade],
      [0.6, look.body],
    ] as const) {
      trace(ink, smoothLine(points));
      ink.lineWidth = part * width * size;
      ink.strokeStyle = colour;
      ink.stroke();
    }
  };
  ink.globalAlpha = 0.3;
  line([onWall(-22, 0.96), onWall(-50, 0.62), onWall(-95, 0.5), onWall(-140, 0.66), onWall(-162, 0.95)], 2);
  for (let degrees = -62; degrees >= -144; degrees -= 12)
    line([onWall(degrees + 7, 0.6), onWall(degrees + 2, 0.8), onWall(degrees, 1.04)], 1.4);
  ink.globalAlpha = 1;
}

/** Where the inlet's valve is missing: a dimple in the floor, fat of the groove beneath it. */
function paintInlet(ink: Ink, [x, y]: Point, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  ink.save();
  ink.translate(x, y);
  ink.rotate(-0.7);
  for (const [reach, alpha] of [
    [5.6, 0.16],
    [4, 0.22],
    [2, 0.4],
  ] as const) {
    ink.globalAlpha = alpha;
    ink.beginPath();
    ink.ellipse(0, 0, reach * size, 0.55 * reach * size, 0, 0, 2 * Math.PI);
    ink.fillStyle = look.shade;
    ink.fill();
  }
  ink.globalAlpha = 0.5;
  ink.lineWidth = 0.4 * size;
  ink.strokeStyle = look.edge;
  for (let k = 0; k < 8; k++) {
    const [cos, sin] = [Math.cos((k * Math.PI) / 4), 0.55 * Math.sin((k * Math.PI) / 4)];
    trace(ink, [
      [1.6 * size * cos, 1.6 * size * sin],
      [4.6 * size * cos, 4.6 * size * sin],
    ]);
    ink.stroke();
  }
  ink.restore();
}
