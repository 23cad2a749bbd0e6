/** What shows in an opened right atrium behind its blood: ridges of muscle, the patch that closes the septum, mouths in the back wall, and the roof's wide opening to the pulmonary arteries. */
import { entryAt } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import { laidOver, scratch, takeAway } from "../paint-tube.ts";
import { type Bounds, boundsOf, type Ink, type Outlines, strokes, trace } from "../painted-sheet.ts";
import { smoothLine } from "../placing.ts";
import { CLOTH, inside, tissue } from "../tones.ts";
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
import { paintSqueezed } from "./paint-squeezed.ts";
import { insideOf, soften } from "./paint-tunnel-lining.ts";
import { paintRidge } from "./ridges.ts";
import { runningSuture } from "./running-suture.ts";

/** What a mouth or a dimple darkens towards. */
const HOLLOW = "#2a1030";

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
  paintCavalRim(ink, frame, theme);
}

type Connection = ReturnType<typeof connectionOf>;

/** The artery lifts the wall before it: in the light above, in its own shade beneath. */
function paintArteryBehind(ink: Ink, { over, under }: Connection, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const shifted = (line: readonly Point[], up: number) => line.map(([x, y]): Point => [x, y + up * size]);
  soften(ink, shifted(under, -1), 3 * size, look.shade);
  soften(ink, shifted(under, 1), 2 * size, look.shade);
  soften(ink, shifted(over, -0.6), 2 * size, look.shade);
  ink.globalAlpha = 0.4;
  strokes(ink, shifted(over, -2.2), size, [[1.6, look.light]]);
  ink.globalAlpha = 1;
}

/** Through the mouth: the artery's back wall, which runs on into the dark to both sides, and the shadow of the roof's edge on it. */
function paintOpening(ink: Ink, { opening }: Connection, size: number, theme: Theme): void {
  const { edge, body, light } = inside(theme);
  const mouth = opening();
  const [left, bottom, right, top] = boundsOf([mouth], 0);
  const deep = mix(edge, HOLLOW, 0.45);
  const along = ink.createLinearGradient(left, 0, right, 0);
  for (const [part, colour] of [
    [0, deep],
    [0.2, edge],
    [0.42, body],
    [0.58, body],
    [0.8, edge],
    [1, deep],
  ] as const)
    along.addColorStop(part, colour);
  trace(ink, mouth, true);
  ink.fillStyle = along;
  ink.fill();
  ink.save();
  ink.clip();
  // A round that lies across: its light is low, for it is hollow.
  const middle = bottom + 0.34 * (top - bottom);
  ink.globalAlpha = 0.35;
  strokes(
    ink,
    smoothLine([
      [left + 0.2 * (right - left), middle + size],
      [(left + right) / 2, middle],
      [right - 0.2 * (right - left), middle + size],
    ]),
    size,
    [[2, light]],
  );
  ink.globalAlpha = 1;
  ink.translate(0.4 * size, -1.2 * size);
  soften(ink, mouth, 3 * size, deep);
  ink.restore();
}

/** The upper vein opens through the roof with a rounded edge of its own, which no surgeon has touched. */
function paintCavalRim(ink: Ink, { chamber: [, b], scale: s, svc }: Chambered, theme: Theme): void {
  const [half, y] = [svc.width / 2, b - 0.5 * s];
  const edge = (up: number): readonly Point[] =>
    smoothLine([
      [-half, y],
      [-0.5 * half, y + up],
      [0.5 * half, y + up],
      [half, y],
    ]);
  soften(ink, edge(3.4 * s), 4 * s, inside(theme).edge);
  paintRidge(ink, edge(2.2 * s), 2.2, s, theme);
}

/** The wall's cut edge, turned in all round and sewn to the artery's: the wall is drawn to it in folds. */
export function paintRim(ink: Ink, { opening }: Connection, size: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const [near, far] = [opening(1.6 * size), opening(4.6 * size)];
  for (let i = 1; i < near.length; i += 3) {
    const [[x, y], [toX, toY]] = [entryAt(near, i), entryAt(far, i)];
    ink.globalAlpha = 0.3;
    strokes(
      ink,
      smoothLine([
        [x, y],
        [(x + toX) / 2 + 0.3 * size, (y + toY) / 2],
        [toX, toY],
      ]),
      size,
      [[0.6, look.edge]],
    );
  }
  ink.globalAlpha = 1;
  strokes(ink, opening(1.1 * size), size, [
    [2.9, look.edge],
    [2.4, look.body],
    [0.9, look.light],
  ]);
  runningSuture(ink, opening(0.8 * size), 1.1 * size, theme);
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
