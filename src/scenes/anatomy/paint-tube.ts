/** A vessel as a round: a wall, and bands that grow lighter towards the side of the light. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { type Line, line, spotAt } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { mix } from "../theme/colour.ts";
import type { Tube } from "./great-vessels.ts";
import { type Bounds, boundsOf, eraseAlong, type Ink, inkFor, trace } from "./painted-sheet.ts";
import type { Round } from "./tones.ts";

/** Bands across a vessel. */
const BANDS = 18;
/** Where the light comes from: above, from the patient's right. */
export const LIGHT: Point = [-0.6, 0.8];
/** Part of the half width by which the lightest band lies towards it. */
const ASIDE = 0.34;

/** mm: half the width at a part of the way. */
const halfOf = ({ from, to, dome = 0 }: Tube, along: number): number => {
  const past = dome > 0 ? Math.max(0, 1 - (1 - along) / dome) : 0;
  return ((from + (to - from) * along) / 2) * Math.sqrt(1 - past ** 2);
};

interface Band {
  /** of the vessel's width */
  readonly part: number;
  /** of the half width, by which it lies towards the light */
  readonly aside?: number;
  /** mm beyond the lumen */
  readonly wall?: number;
  /** which part of the vessel's way the line is; all of it when left out */
  readonly of?: number;
}

/** Outline of a band along the vessel. */
export function bandOf(whole: Line, tube: Tube, { part, aside = 0, wall = 0, of = 1 }: Band): Point[] {
  const total = lastOf(whole.run);
  const sides: [Point[], Point[]] = [[], []];
  whole.points.forEach((_, i) => {
    const along = entryAt(whole.run, i) / total;
    const { at, left } = spotAt(whole, along);
    const half = halfOf(tube, along * of);
    const lit = (left[0] * LIGHT[0] + left[1] * LIGHT[1]) * aside * half;
    // A thin vessel has a thin wall.
    const more = Math.min(wall, 0.42 * half);
    for (const [k, sign] of [1, -1].entries()) {
      const reach = lit + sign * (half * part + more);
      entryAt(sides, k).push([at[0] + reach * left[0], at[1] + reach * left[1]]);
    }
  });
  return [...sides[0], ...sides[1].reverse()];
}

/** The two sides of such an outline, each from end to end. */
export const sidesOf = (outline: readonly Point[]): readonly (readonly Point[])[] => [
  outline.slice(0, outline.length / 2),
  outline.slice(outline.length / 2),
];

/** @param wall mm */
export const paintTube = (ink: Ink, tube: Tube, tones: Round, wall: number): void =>
  paintTubes(ink, [tube], tones, wall);

/** Vessels that run into one another: each depth in its own pass, so that they join without seams. @param wall mm */
export function paintTubes(ink: Ink, tubes: readonly Tube[], tones: Round, wall: number): void {
  const bounds = boundsOf(
    tubes.map(({ line }) => line),
    Math.max(...tubes.flatMap(({ from, to }) => [from, to])),
  );
  const fading = tubes.filter(({ fades }) => fades);
  const own = fading.length > 0 ? scratch(ink, bounds) : ink;
  const wholes = tubes.map((tube) => [tube, line(tube.line)] as const);
  const pass = (band: Band, colour: string) => {
    own.fillStyle = colour;
    for (const [tube, whole] of wholes) {
      trace(own, bandOf(whole, tube, band), true);
      own.fill();
    }
  };
  for (const [part, colour] of tones.cut ?? [[1, tones.wall] as const])
    pass({ part: 1, wall: part * wall }, colour);
  for (let k = 0; k < BANDS; k++) {
    const depth = k / (BANDS - 1);
    pass({ part: 1 - 0.86 * depth, aside: (tones.cut ? -ASIDE : ASIDE) * depth }, toneAt(tones, depth));
  }
  if (own === ink) return;
  for (const tube of fading) fadeEnd(own, tube, bounds);
  laidOver(ink, own, bounds);
}

/** Across a vessel from its edge (0) to its light (1); one that is cut open turns up into the shade at its edges alone. */
function toneAt({ edge, body, light, cut }: Round, depth: number): string {
  const [turn, least, most] = cut ? [0.3, 0.4, 0.5] : [0.6, 0, 1];
  return depth < turn
    ? mix(edge, body, least + ((1 - least) * depth) / turn)
    : mix(body, light, (most * (depth - turn)) / (1 - turn));
}

/** A canvas of its own for the room within `bounds`, as finely drawn. */
export const scratch = (ink: Ink, bounds: Bounds): Ink =>
  inkFor(bounds, Math.hypot(ink.getTransform().a, ink.getTransform().b));

/** @param cast mm by which its shadow falls away from the light; none when left out */
export function laidOver(ink: Ink, own: Ink, [left, , , top]: Bounds, cast = 0): void {
  const scale = own.getTransform().a;
  const { width, height } = own.canvas;
  ink.save();
  castShadow(ink, cast * scale);
  ink.translate(left, top);
  ink.scale(1, -1);
  ink.drawImage(own.canvas, 0, 0, width / scale, height / scale);
  ink.restore();
}

/** Takes away what is painted on `own`. */
export function takeAway(ink: Ink, own: Ink, bounds: Bounds): void {
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  laidOver(ink, own, bounds);
  ink.restore();
}

/** What `ink` draws next has a shadow. @param reach px */
export function castShadow(ink: Ink, reach: number): void {
  ink.shadowColor = "#12020694";
  ink.shadowBlur = reach;
  [ink.shadowOffsetX, ink.shadowOffsetY] = [-reach * LIGHT[0], reach * LIGHT[1]];
}

/** A vessel that goes on out of the picture clears on its way. */
export function fadeEnd(ink: Ink, { line: points, fades, over = 0.42 }: Tube, bounds: Bounds): void {
  const whole = line(points);
  const [near, far] = fades === "end" ? [1 - over, 1] : [over, 0];
  const [a, b] = [spotAt(whole, near).at, spotAt(whole, far).at];
  eraseAlong(ink, a, b, bounds);
}
