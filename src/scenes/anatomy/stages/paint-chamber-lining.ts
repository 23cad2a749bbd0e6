/** What shows in an opened right atrium behind its blood: ridges of muscle, the patch that closes the septum, mouths in the back wall, and the roof's wide opening to the pulmonary arteries. */
import type { ChestFrame, Point } from "../../../sim/geometry/geometry.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import { laidOver, scratch } from "../paint-tube.ts";
import { type Bounds, type Ink, type Outlines, strokes, trace } from "../painted-sheet.ts";
import { smoothLine } from "../placing.ts";
import { CLOTH, hollow, tissue } from "../tones.ts";
import { keepChamber } from "./chamber-edges.ts";
import { connectionOf, INNER, placesIn, rounded } from "./chamber-shape.ts";
import { insideOf } from "./paint-tunnel-lining.ts";
import { runningSuture } from "./running-suture.ts";

export function paintChamberLining(
  ink: Ink,
  bounds: Bounds,
  frame: ChestFrame,
  { lumen = [] }: Outlines,
  theme: Theme,
): void {
  const { chamber, scale: s } = frame;
  if (!chamber) return;
  const [a, b] = chamber;
  const look = insideOf(theme);
  const own = scratch(ink, bounds);
  own.beginPath();
  const hollowed = own.createRadialGradient(0.3 * a, -0.35 * b, 0, 0.1 * a, -0.1 * b, 1.7 * b);
  hollowed.addColorStop(0, look.light);
  hollowed.addColorStop(0.55, look.body);
  hollowed.addColorStop(1, look.shade);
  own.fillStyle = hollowed;
  for (const loop of lumen) {
    const inner = rounded(loop, INNER);
    trace(own, inner, true);
    own.fill();
    own.save();
    own.clip();
    // The cut front wall throws its shadow into the room.
    own.translate(0.9 * s, -1.2 * s);
    own.globalAlpha = 0.08;
    for (let k = 1; k <= 7; k++) strokes(own, inner, s, [[1.5 * k, look.shade]]);
    own.restore();
  }
  own.globalCompositeOperation = "source-atop";
  paintMarks(own, { ...frame, chamber }, theme);
  paintConnection(own, { ...frame, chamber }, lumen, theme, 1);
  own.globalCompositeOperation = "source-over";
  keepChamber(own, chamber, s, bounds);
  laidOver(ink, own, bounds);
}

/**
 * The pulmonary arteries behind the roof, and the seam that joins them to it.
 * @param through part of them that is seen, 1 behind the blood; over it their lines are enough
 */
export function paintConnection(
  ink: Ink,
  frame: ChestFrame & { readonly chamber: Point },
  lumen: NonNullable<Outlines["lumen"]>,
  theme: Theme,
  through: number,
): void {
  const { scale: s } = frame;
  const { artery, low, high, oval } = connectionOf(frame, lumen);
  const { body, wall } = hollow(theme);
  const dark = theme.name === "dark";
  const fill = (points: readonly Point[], deep: number) => {
    trace(ink, points, true);
    ink.fillStyle = mix(body, wall, deep);
    ink.fill();
  };
  if (through === 1) fill(artery, dark ? 0.2 : 0.1);
  ink.globalAlpha = through;
  for (const side of [low, high]) strokes(ink, side, s, [[0.7, wall]]);
  ink.globalAlpha = 1;
  if (through === 1) fill(oval, dark ? 0.05 : 0.28);
  runningSuture(ink, oval, s, theme, through);
}

/** Ridges, septum and mouths, by the chamber's own half width and height. */
function paintMarks(
  ink: Ink,
  { chamber, scale: s, ivc }: ChestFrame & { readonly chamber: Point },
  theme: Theme,
): void {
  const at = placesIn(chamber);
  paintRidges(ink, at, s, theme);
  paintSeptum(ink, at(0.42, 0.02), [0.23 * chamber[0], 0.25 * chamber[1]], s, theme);
  paintCoronarySinus(ink, at(0.2, -0.5), s, theme);
  paintInlet(ink, at(0.56, -0.42), s, theme);
  // The fold before the lower vein's mouth (Eustachian valve).
  const [x, y] = [ivc.centre[0] - 4 * s, -0.93 * chamber[1]];
  const half = ivc.width / 2;
  const fold = smoothLine([
    [x - half - s, y + 1.4 * s],
    [x, y - 1.2 * s],
    [x + half + s, y + 2 * s],
  ]);
  const look = tissue("atrium", theme);
  strokes(ink, fold, s, [
    [1.5, look.shade],
    [0.8, look.light],
  ]);
}

type PlaceAt = (x: number, y: number) => Point;

/** Terminal crest from the upper vein's mouth down the back wall to the lower one's, and from it pectinate muscles to the free wall. */
function paintRidges(ink: Ink, at: PlaceAt, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const ridge = (points: readonly Point[], width: number) =>
    strokes(ink, smoothLine(points), size, [
      [width, mix(look.shade, look.light, 0.45)],
      [0.62 * width, mix(look.body, look.light, 0.6)],
      [0.2 * width, look.light],
    ]);
  for (let k = 0; k < 9; k++) {
    const y = 0.52 - 0.145 * k;
    const root = -0.5 + 0.22 * y * y;
    const rim = -1.06 * Math.sqrt(Math.max(0, 1 - (0.9 * y - 0.1) ** 2));
    ridge([at(root, y), at((root + rim) / 2 + 0.02, y - 0.05), at(rim, y - 0.04 + 0.03 * (k % 2))], 1.3);
  }
  ridge([at(-0.27, 0.92), at(-0.42, 0.6), at(-0.52, 0.1), at(-0.48, -0.4), at(-0.28, -0.9)], 2);
}

/** The oval rim of the septum, its hole closed with a patch. */
function paintSeptum(ink: Ink, [x, y]: Point, [wide, high]: Point, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const oval = (more: number): Point[] =>
    Array.from({ length: 41 }, (_, i) => {
      const turn = (2 * Math.PI * i) / 40;
      const [u, v] = [(wide + more) * Math.cos(turn), (high + more) * Math.sin(turn)];
      return [x + 0.97 * u - 0.24 * v, y + 0.24 * u + 0.97 * v];
    });
  strokes(ink, oval(0.8 * size), size, [
    [2, look.shade],
    [1.4, look.body],
    [0.4, look.light],
  ]);
  const { body, fold } = CLOTH[theme.name];
  trace(ink, oval(0), true);
  ink.fillStyle = theme.name === "dark" ? mix(body, "#000000", 0.5) : mix(body, fold, 0.12);
  ink.fill();
  runningSuture(ink, oval(-0.5 * size), size, theme, 0.6);
}

/** Its mouth in the back wall before the septum, with a thin fold at its lower rim. */
function paintCoronarySinus(ink: Ink, [x, y]: Point, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  ink.save();
  ink.translate(x, y);
  ink.rotate(0.35);
  ink.beginPath();
  ink.ellipse(0, 0, 2.7 * size, 1.7 * size, 0, 0, 2 * Math.PI);
  ink.fillStyle = mix(look.shade, "#2a1030", 0.45);
  ink.fill();
  ink.lineWidth = 0.6 * size;
  ink.strokeStyle = look.light;
  ink.stroke();
  ink.beginPath();
  ink.ellipse(0, 0, 2.7 * size, 1.7 * size, 0, Math.PI, 2 * Math.PI);
  ink.quadraticCurveTo(0, -0.3 * size, -2.7 * size, 0);
  ink.fillStyle = look.body;
  ink.fill();
  ink.restore();
}

/** Where the tricuspid valve is missing: a dimple in the floor, with folds that run together in it. */
function paintInlet(ink: Ink, [x, y]: Point, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  ink.save();
  ink.translate(x, y);
  ink.rotate(-0.7);
  for (const [reach, part] of [
    [5.4, 0.3],
    [3.8, 0.4],
    [1.9, 0.7],
  ] as const) {
    ink.globalAlpha = part;
    ink.beginPath();
    ink.ellipse(0, 0, reach * size, 0.55 * reach * size, 0, 0, 2 * Math.PI);
    ink.fillStyle = look.shade;
    ink.fill();
  }
  ink.globalAlpha = 0.7;
  for (let k = 0; k < 8; k++) {
    const [cos, sin] = [Math.cos((k * Math.PI) / 4), 0.55 * Math.sin((k * Math.PI) / 4)];
    const spoke: readonly Point[] = [
      [1.6 * size * cos, 1.6 * size * sin],
      [4.6 * size * cos, 4.6 * size * sin],
    ];
    strokes(ink, spoke, size, [[0.4, look.edge]]);
  }
  ink.restore();
}
