/** Vessel walls with thickness, the inside of the lumen's back wall and a soft shadow, all from one distance field. */
import type { Container } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Opening, PathwayGeometry, Point } from "../../sim/geometry/geometry.ts";
import { castShadow } from "../anatomy/paint-tube.ts";
import { type Bounds, type Ink, servesAt, sheet, trace } from "../anatomy/painted-sheet.ts";
import { cutFace, inside } from "../anatomy/tones.ts";
import type { Theme } from "../theme/theme.ts";
import { contours, type Loop } from "./contour.ts";
import { beyondOpening, type Plane, SHY } from "./drawn-plane.ts";
import { LIP, WALL } from "./fade.ts";
import { paintInside, type Venous } from "./paint-inside.ts";
import { isArtery, lipOf, windowEnd } from "./window-ends.ts";

/** mm by which the shadow falls on what lies behind */
const CAST = 3.4;

export interface WallLayer {
  /** shadow and lumen; tracers lie between the two */
  readonly below: Container;
  /** wall and its edges */
  readonly above: Container;
  set(geometry: PathwayGeometry, plane: Plane, theme: Theme): void;
  /** The lumen in its blood's tone, from the next time on that it is kept. */
  fill(blood: Venous): void;
  /** Keeps the painted walls as pictures at this many device pixels a millimetre, so that a frame costs two pictures. */
  keep(density: number): void;
  release(): void;
}

/** Lines at a level of the distance from the blood, mm. */
type Lines = (level: number) => readonly Loop[];

export interface Line {
  readonly line: Loop;
  readonly closed: boolean;
}

/** The stretches of a closed line that no opening cuts away, as open lines; the loop itself when none does. */
export function cutOpen(loop: Loop, openings: readonly Opening[], reach: number): Line[] {
  const count = loop.length / 2;
  const kept = Array.from(
    { length: count },
    (_, i) =>
      !openings.some((opening) =>
        beyondOpening(opening, entryAt(loop, 2 * i), entryAt(loop, 2 * i + 1), reach),
      ),
  );
  const first = kept.findIndex((keep, i) => keep && !kept[(i + count - 1) % count]);
  if (first < 0) return kept[0] ? [{ line: loop, closed: true }] : [];
  const lines: Line[] = [];
  let line: Loop = [];
  for (let n = 0; n <= count; n++) {
    const i = (first + n) % count;
    if (n < count && kept[i]) line.push(entryAt(loop, 2 * i), entryAt(loop, 2 * i + 1));
    else if (line.length > 0) {
      if (line.length >= 4) lines.push({ line, closed: false });
      line = [];
    }
  }
  return lines;
}

export function wallLayer(): WallLayer {
  const [below, above] = [sheet(), sheet()];
  let kept = 0;
  let filled: Venous = null;
  let paint = (_density: number): void => {};
  return {
    below: below.view,
    above: above.view,
    keep(density) {
      if (kept > 0 && servesAt(kept, density)) return;
      kept = density;
      paint(density);
    },
    fill(blood) {
      const same = (of: "svc" | "ivc") => Math.round(blood?.[of] ?? 0) === Math.round(filled?.[of] ?? 0);
      if (same("svc") && same("ivc")) return;
      [filled, kept] = [blood, 0];
    },
    set(geometry, plane, theme) {
      kept = 0;
      const { originX: left, originY: bottom, dx, nx, ny } = plane;
      const bounds = [left, bottom, left + nx * dx, bottom + ny * dx] as const;
      const openings = geometry.openings.map((cut) => windowEnd(cut, geometry.chest));
      let lines: Lines | null = null;
      paint = (density) => {
        lines ??= contours(plane, plane.distance, 0, WALL);
        const at = lines;
        below.paint(bounds, density, [0, 0], (ink) => {
          paintShadow(ink, bounds, openings, at(WALL));
          paintInside(ink, openings, plane, filled, theme);
        });
        above.paint(bounds, density, [0, 0], (ink) => paintWall(ink, openings, at, theme));
      };
    },
    release() {
      below.release();
      above.release();
    },
  };
}

/** The shadow alone: what throws it is drawn outside the picture. */
function paintShadow(
  ink: Ink,
  [left, , right]: Bounds,
  openings: readonly Opening[],
  outside: readonly Loop[],
): void {
  const dense = ink.getTransform().a;
  const away = 2 * (right - left);
  ink.save();
  castShadow(ink, CAST * dense);
  ink.shadowOffsetX -= away * dense;
  for (const loop of outside) {
    trace(ink, shortened(loop, openings, away), true);
    ink.fill();
  }
  ink.restore();
}

/** mm to either side of a lumen within which its wall lies, and a bend of it beyond a window's end */
const BESIDE = 7;
/** mm before a cut at which what throws the shadow ends, so that none falls across what goes on there */
const SHORT = 2.4 * CAST;

/** The line drawn back from each cut, and moved aside: what goes on there has no shadow of the vessel that it goes on from. */
function shortened(loop: Loop, openings: readonly Opening[], away: number): Point[] {
  return Array.from({ length: loop.length / 2 }, (_, i) => {
    let [x, y] = [entryAt(loop, 2 * i), entryAt(loop, 2 * i + 1)];
    for (const opening of openings) {
      const [nx, ny] = opening.normal;
      if (opening.name === "fenestration" || !beyondOpening(opening, x, y, BESIDE, SHORT)) continue;
      const back = (x - opening.centre[0]) * nx + (y - opening.centre[1]) * ny + SHORT;
      [x, y] = [x - back * nx, y - back * ny];
    }
    return [x + away, y];
  });
}

/** The wall where it is cut: a pale face between the vessel's outside and the edge of its lining. */
function paintWall(ink: Ink, openings: readonly Opening[], lines: Lines, theme: Theme): void {
  ink.lineCap = "butt";
  for (const opening of openings) paintEntry(ink, opening, theme);
  for (const [part, colour] of cutFace(theme)) {
    ink.lineWidth = part * WALL;
    ink.strokeStyle = colour;
    for (const loop of lines((part * WALL) / 2))
      for (const { line, closed } of cutOpen(loop, openings, BESIDE)) {
        trace(ink, pointsOf(line), closed);
        ink.stroke();
      }
    for (const opening of openings)
      if (opening.name !== "fenestration") paintEnd(ink, opening, part * WALL, colour);
  }
}

const pointsOf = (line: Loop): Point[] =>
  Array.from({ length: line.length / 2 }, (_, i) => [entryAt(line, 2 * i), entryAt(line, 2 * i + 1)]);

/** Where a lung's artery is closed again its front shades the blood that goes on under it. */
function paintEntry(ink: Ink, { name, centre, normal, width }: Opening, theme: Theme): void {
  if (!isArtery(name)) return;
  const half = width / 2;
  ink.save();
  ink.transform(normal[0], normal[1], -normal[1], normal[0], centre[0], centre[1]);
  ink.fillStyle = inside(theme).edge;
  ink.globalAlpha = 0.2;
  for (let k = 1; k <= SHADES; k++) {
    ink.beginPath();
    ink.ellipse((-k * ENTRY * width) / SHADES, 0, LIP * width, half, 0, Math.PI / 2, -Math.PI / 2);
    ink.ellipse(0, 0, LIP * width, half, 0, -Math.PI / 2, Math.PI / 2, true);
    ink.fill();
  }
  ink.restore();
}

/** Of the width: how far back that shade reaches, and its steps. */
const ENTRY = 0.24;
const SHADES = 6;

/** mm beyond a cut over which the face of a wall that goes on runs out. */
const RUNS_OUT = 5;

/** Part of a wall's thickness that shows where its front is cut across. */
const THIN = 0.24;

/** How the wall ends at a cut, out to `reach` mm beyond the lumen: straight into a vein; towards a lung its front alone begins again, in a thin lip between sides that go on. */
function paintEnd(ink: Ink, opening: Opening, reach: number, colour: string): void {
  const { name, centre, normal, width } = opening;
  ink.fillStyle = colour;
  if (isArtery(name)) {
    trace(ink, [...lipOf(opening), ...lipOf(opening, reach, THIN * reach).reverse()], true);
    ink.fill();
  }
  for (const side of [1, -1]) {
    const place = (along: number, more: number): Point => {
      const across = side * (width / 2 + more);
      return [
        centre[0] + normal[0] * along - normal[1] * across,
        centre[1] + normal[1] * along + normal[0] * across,
      ];
    };
    const end = isArtery(name) ? [place(0, 0), place(RUNS_OUT, reach)] : [place(0.4, 0), place(0.4, reach)];
    trace(ink, [place(-2 * SHY, 0), ...end, place(-2 * SHY, reach)], true);
    ink.fill();
  }
}
