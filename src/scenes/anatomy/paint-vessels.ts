/** The vessels around the pathway by the depth at which they lie; each depth throws its shadow on what lies behind. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { line } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { WALL as HOLLOW_WALL } from "../layers/fade.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { type BloodTube, descending, type Holds, type Tube } from "./great-vessels.ts";
import { joined, type Saturations } from "./joined.ts";
import { paintSewnBehind } from "./paint-graft.ts";
import { paintPericardium } from "./paint-heart.ts";
import { paintBeforeArtery, paintSleeves, paintStems, underArtery } from "./paint-lung.ts";
import { cutOpen, paintRoot } from "./paint-root.ts";
import { bandOf, fadeEnd, laidOver, paintTube, paintTubes, scratch, takeAway } from "./paint-tube.ts";
import { type Bounds, boundsOf, dash, type Ink, type Outlines, trace, traceLoops } from "./painted-sheet.ts";
import { rootOutline, seatOf } from "./root-shape.ts";
import { hollow, type Round } from "./tones.ts";

/** mm of a 5-year-old: walls of great vessels. */
const WALL = 1.3;
/** as thin as those of their branches in the lungs */
const THIN = 0.4;
/** and how far their shadows fall on what lies behind */
const CAST = 3;

export type RoundOf = (holds: Holds | "pulmonaryArtery") => Round;

/** @param size mm of the body for one of a 5-year-old */
export const roomOf = (tubes: readonly Pick<Tube, "line">[], size: number): Bounds =>
  boundsOf(
    tubes.map(({ line }) => line),
    12 * size,
  );

/** On a layer of their own. */
function layerOf(ink: Ink, bounds: Bounds, drawn: readonly BloodTube[], round: RoundOf, size: number): Ink {
  const layer = scratch(ink, bounds);
  for (const tube of drawn)
    paintTube(layer, tube, round(tube.holds), (tube.holds === "pulmonaryVein" ? THIN : WALL) * size);
  return layer;
}

export function paintBehind(ink: Ink, bounds: Bounds, anatomy: Anatomy, round: RoundOf, theme: Theme): void {
  const { behind, heart, frame, pericardium } = anatomy;
  const s = frame.scale;
  const inFront = (wanted: boolean) => behind.filter(({ holds }) => (holds === "pulmonaryVein") === wanted);
  laidOver(ink, layerOf(ink, bounds, inFront(false), round, s), bounds, CAST * s);
  paintPericardium(ink, pericardium, s, theme);
  paintStems(ink, bounds, anatomy, round("pulmonaryArtery"));
  // Beneath a filling atrium and an empty one: they reach further than their mouths.
  const veins = inFront(true).map((tube) => ({ ...tube, line: [...tube.line, heart.at(-16, -4)] }));
  const isLower = ({ name }: Tube) => name.startsWith("leftLower");
  const lower = layerOf(ink, bounds, veins.filter(isLower), round, s);
  underArtery(lower, anatomy.lungs[1], s);
  laidOver(ink, lower, bounds);
  const others = veins.filter((vein) => !isLower(vein));
  laidOver(ink, layerOf(ink, bounds, others, round, s), bounds);
}

type Drawn = Pick<Before, "round" | "theme">;

/** What lies behind the pathway's blood and stays with it; and the aorta as the ground on which its own marks move. */
export function paintHidden(ink: Ink, bounds: Bounds, anatomy: Anatomy, drawn: Drawn): void {
  paintSewnBehind(ink, anatomy.frame, drawn.theme);
  paintClosed(ink, bounds, anatomy, drawn);
  laidOver(ink, aortaLayer(ink, bounds, anatomy, drawn.round), bounds);
}

/** The arteries' closed fronts, and what lies before them. */
function paintClosed(ink: Ink, bounds: Bounds, anatomy: Anatomy, { round }: Pick<Drawn, "round">): void {
  paintSleeves(ink, bounds, anatomy, round("pulmonaryArtery"));
  paintBeforeArtery(ink, bounds, anatomy, round("pulmonaryVein"));
}

/** Takes away what the aorta covers. */
export function underAorta(ink: Ink, bounds: Bounds, anatomy: Anatomy): void {
  const { before, frame } = anatomy;
  const aorta = lastOf(before);
  const own = scratch(ink, bounds);
  trace(own, bandOf(line(aorta.line), aorta, { part: 1, wall: WALL * frame.scale }), true);
  own.fill();
  trace(own, rootOutline(seatOf(anatomy)), true);
  own.fill();
  joined()?.clears(own, anatomy);
  takeAway(ink, own, bounds);
}

/** Blood shows through the front of what leaves the heart, except over the pathway, whose hidden edges are dashed there. */
function glaze(ink: Ink, bounds: Bounds, anatomy: Anatomy, { seen }: Before, hidden: string): void {
  const { before, frame } = anatomy;
  const s = frame.scale;
  const panes = scratch(ink, bounds);
  for (const tube of before)
    for (const part of [0.86, 0.66, 0.46]) {
      panes.globalAlpha = 0.42;
      trace(panes, bandOf(line(tube.line), tube, { part }), true);
      panes.fill();
    }
  const walls = scratch(ink, bounds);
  // Softly: a hard edge would read as a flap.
  for (const [wide, part] of [
    [4, 1],
    [6, 0.5],
  ] as const) {
    traceLoops(walls, seen);
    walls.globalAlpha = part;
    walls.lineWidth = wide * s;
    walls.stroke();
  }
  walls.globalAlpha = 1;
  traceLoops(walls, seen);
  walls.fill();
  panes.globalAlpha = 1;
  takeAway(panes, walls, bounds);
  takeAway(ink, panes, bounds);
  const aorta = lastOf(before);
  ink.save();
  trace(ink, bandOf(line(aorta.line), aorta, { part: 0.94 }), true);
  ink.clip();
  traceLoops(ink, seen);
  dash(ink, s, hidden);
  ink.restore();
}

export function paintVeins(
  ink: Ink,
  bounds: Bounds,
  anatomy: Anatomy,
  { svc, ivc }: Saturations,
  theme: Theme,
): void {
  const { veins, frame } = anatomy;
  const s = frame.scale;
  for (const group of ["atrium", "brachiocephalic"] as const) {
    const own = scratch(ink, bounds);
    paintTubes(
      own,
      veins.filter((vein) => vein.group === group),
      hollow(group === "atrium" ? ivc : svc, theme),
      HOLLOW_WALL,
    );
    laidOver(ink, own, bounds, group === "atrium" ? 0 : CAST * s);
  }
}

/** On a layer of its own, open where other parts are to be seen, and soft where it goes on behind. */
function aortaLayer(ink: Ink, bounds: Bounds, anatomy: Anatomy, round: RoundOf): Ink {
  const layer = layerOf(ink, bounds, anatomy.before, round, anatomy.frame.scale);
  cutOpen(layer, seatOf(anatomy));
  underVein(layer, anatomy);
  joined()?.clears(layer, anatomy);
  const aorta = lastOf(anatomy.before);
  layer.save();
  layer.beginPath();
  layer.arc(...lastOf(aorta.line), aorta.to, 0, 2 * Math.PI);
  layer.clip();
  fadeEnd(layer, { ...aorta, fades: "end", over: 0.025 }, bounds);
  layer.restore();
  return layer;
}

interface Before extends Outlines {
  readonly round: RoundOf;
  readonly theme: Theme;
}

/** The aorta and what leaves its arch. */
export function paintBefore(ink: Ink, bounds: Bounds, anatomy: Anatomy, front: Before): void {
  const { round } = front;
  const s = anatomy.frame.scale;
  const root = { ...seatOf(anatomy), tones: round("arterial") };
  const layer = aortaLayer(ink, bounds, anatomy, round);
  laidOver(ink, layer, bounds, 1.4 * CAST * s);
  // The arch throws none on itself where it goes on downwards; what is laid over again reaches further than what is cleared, so that no seam shows.
  const [left, bottom, right, top] = bounds;
  const down = entryAt(descending(anatomy), 0);
  const way = down.line.slice(0, down.line.length >> 1);
  const [[x, y], [nextX, nextY]] = [entryAt(way, 0), entryAt(way, 1)];
  const before: Point = [2 * x - nextX, 2 * y - nextY];
  ink.save();
  traceDown(ink, way, down, s);
  ink.clip();
  ink.clearRect(left, bottom, right - left, top - bottom);
  ink.restore();
  ink.save();
  traceDown(ink, [before, ...way], down, 1.2 * s);
  ink.clip();
  laidOver(ink, layer, bounds);
  ink.restore();
  glaze(ink, bounds, anatomy, front, root.tones.wall);
  paintRoot(ink, root);
}

const traceDown = (ink: Ink, way: readonly Point[], down: Tube, size: number): void =>
  trace(ink, bandOf(line(way), down, { part: 1, wall: WALL * size, of: 0.5 }), true);

/** The vein from the left arm lies before the aorta's branches. */
function underVein(ink: Ink, { veins }: Anatomy): void {
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  for (const vein of veins.filter((vein) => vein.group === "brachiocephalic")) {
    trace(ink, vein.line);
    ink.lineCap = "butt";
    ink.lineWidth = (vein.from + vein.to) / 2 + 2 * HOLLOW_WALL;
    ink.stroke();
  }
  ink.restore();
}
