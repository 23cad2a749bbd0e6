import type { Point } from "../../../sim/geometry/geometry.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import { laidOver, scratch, takeAway } from "../paint-tube.ts";
import { type Bounds, type Ink, type Outlines, strokes, trace } from "../painted-sheet.ts";
import { smoothLine } from "../placing.ts";
import { CLOTH, tissue } from "../tones.ts";
import { keepChamber } from "./chamber-edges.ts";
import {
  type Chambered,
  chamberedIn,
  closedOf,
  connectionOf,
  onOval,
  placesIn,
  SEPTUM,
} from "./chamber-shape.ts";
import { HOLLOW, paintArteryBehind, paintOpening, paintRim } from "./paint-roof-mouth.ts";
import { paintSqueezed } from "./paint-squeezed.ts";
import { insideOf, soften } from "./paint-tunnel-lining.ts";
import { paintRidge } from "./ridges.ts";
import { runningSuture } from "./running-suture.ts";

export function paintChamberLining(
  ink: Ink,
  bounds: Bounds,
  anatomy: Anatomy,
  { lumen = [] }: Outlines,
  theme: Theme,
): void {
  const frame = chamberedIn(anatomy.frame);
  if (!frame) return;
  const { chamber, scale: s } = frame;
  const look = insideOf(theme);
  const own = scratch(ink, bounds);
  own.fillStyle = look.body;
  for (const inner of closedOf(frame, lumen)) {
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
  paintMarks(own, frame, theme);
  own.globalCompositeOperation = "source-over";
  keepChamber(own, chamber, s, bounds);
  laidOver(ink, own, bounds);
  const connection = connectionOf(frame, lumen);
  for (const inner of closedOf(frame, lumen)) {
    ink.save();
    trace(ink, inner, true);
    ink.clip();
    paintArteryBehind(ink, connection, s, theme);
    ink.restore();
  }
  paintOpening(ink, connection, s, theme);
  paintRim(ink, connection, s, theme);
}

/** Veins of the right lung behind its back wall, but not in the opening. @param ink of a sheet that holds nothing else */
export function paintThroughChamber(
  ink: Ink,
  bounds: Bounds,
  anatomy: Anatomy,
  { lumen = [] }: Outlines,
  theme: Theme,
): void {
  const frame = chamberedIn(anatomy.frame);
  if (!frame) return;
  const { chamber, scale: s } = frame;
  for (const inner of closedOf(frame, lumen)) {
    ink.save();
    trace(ink, inner, true);
    ink.clip();
    paintSqueezed(ink, anatomy, ([x, y]) => 1 - (x / chamber[0]) ** 2 - (y / chamber[1]) ** 2, theme);
    ink.restore();
  }
  keepChamber(ink, chamber, s, bounds);
  // What the wall bears lies before them.
  const before = scratch(ink, bounds);
  paintMarks(before, frame, theme);
  trace(before, connectionOf(frame, lumen).opening(), true);
  before.fill();
  takeAway(ink, before, bounds);
}

/** Ridges, septum and mouths, by the chamber's own half width and height. */
function paintMarks(ink: Ink, { chamber, scale: s, ivc }: Chambered, theme: Theme): void {
  const at = placesIn(chamber);
  paintRidges(ink, at, 1 + (6 * s) / chamber[1], s, theme);
  paintSeptum(ink, chamber, s, theme);
  paintCoronarySinus(ink, at(0.2, -0.5), s, theme);
  paintDimple(ink, at(0.68, -0.44), s, theme);
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

/** Terminal crest from the upper vein's mouth down the back wall to the lower one's, and from it pectinate muscles that fork towards the free wall. */
function paintRidges(ink: Ink, at: PlaceAt, top: number, size: number, theme: Theme): void {
  const ridge = (points: readonly Point[], width: number) => paintRidge(ink, points, width, size, theme);
  for (let k = 0; k < 8; k++) {
    const y = 0.4 - 0.155 * k;
    const root = -0.5 + 0.22 * y * y;
    const rim = -1.2 * Math.sqrt(Math.max(0, 1 - (0.9 * y - 0.1) ** 2));
    const fork = at((root + rim) / 2 + 0.02, y - 0.045);
    ridge([fork, at(rim, y + 0.035)], 1);
    ridge([at(root, y), fork, at(rim, y - 0.075 + 0.03 * (k % 2))], 1.5);
  }
  ridge([at(-0.24, top), at(-0.42, 0.6), at(-0.52, 0.1), at(-0.48, -0.4), at(-0.28, -0.9)], 2.6);
}

/** Of half its width: how far the patch reaches from where it is cut. */
const PATCH = 0.7;

/** The septum's hole closed with a patch, within its oval rim; the front half is cut away. */
function paintSeptum(ink: Ink, chamber: Point, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const on = onOval(chamber);
  const [x, y] = on(SEPTUM.at);
  const high = (1.2 * (on(SEPTUM.at + SEPTUM.half)[1] - on(SEPTUM.at - SEPTUM.half)[1])) / 2;
  const oval = (more: number): Point[] =>
    Array.from({ length: 41 }, (_, i) => {
      const turn = (2 * Math.PI * i) / 40;
      return [x + (PATCH * chamber[0] + more) * Math.cos(turn), y + (high + more) * Math.sin(turn)];
    });
  strokes(ink, oval(1.1 * size), size, [
    [3, look.shade],
    [2.2, look.body],
    [0.7, look.light],
  ]);
  const { body, fold } = CLOTH[theme.name];
  trace(ink, oval(0), true);
  ink.fillStyle = theme.name === "dark" ? mix(body, "#000000", 0.5) : mix(body, fold, 0.12);
  ink.fill();
  runningSuture(ink, oval(-0.3 * size), size, theme, 0.6);
}

/** Its mouth in the back wall before the septum, with a thin fold at its lower rim. */
function paintCoronarySinus(ink: Ink, [x, y]: Point, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  ink.save();
  ink.translate(x, y);
  ink.rotate(0.35);
  ink.beginPath();
  ink.ellipse(0, 0, 3 * size, 1.9 * size, 0, 0, 2 * Math.PI);
  ink.fillStyle = mix(look.shade, HOLLOW, 0.6);
  ink.fill();
  for (const [width, colour] of [
    [1.3, look.edge],
    [0.8, look.light],
  ] as const) {
    ink.lineWidth = width * size;
    ink.strokeStyle = colour;
    ink.stroke();
  }
  ink.beginPath();
  ink.ellipse(0, 0, 3 * size, 1.9 * size, 0, Math.PI, 2 * Math.PI);
  ink.quadraticCurveTo(0, -0.5 * size, -3 * size, 0);
  ink.fillStyle = look.body;
  ink.fill();
  ink.restore();
}

/** In the floor where no valve has formed: a blind dimple of scar, to which the lining is drawn in folds. */
function paintDimple(ink: Ink, [x, y]: Point, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  soften(ink, [[x, y]], 4 * size, look.shade);
  for (let k = 0; k < 9; k++) {
    const turn = (2 * Math.PI * k) / 9 + 0.2;
    const at = (out: number): Point => [
      x + out * size * Math.cos(turn + 0.05 * out),
      y + 0.8 * out * size * Math.sin(turn + 0.05 * out),
    ];
    strokes(ink, [at(1), at(2.2), at(3.2 + (k % 3))], size, [
      [0.8, mix(look.shade, look.edge, 0.3)],
      [0.3, look.light],
    ]);
  }
  strokes(
    ink,
    [
      [x, y],
      [x, y],
    ],
    size,
    [
      [2.2, look.edge],
      [1.6, look.light],
    ],
  );
}
