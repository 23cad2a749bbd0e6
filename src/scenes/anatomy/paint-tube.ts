/** A vessel as a round: a wall, and bands that grow lighter towards the side of the light. */
import { DOMAdapter } from "pixi.js";
import { entryAt, lastOf, present } from "../../sim/checked/present.ts";
import { type Line, line, spotAt } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { mix } from "../theme/colour.ts";
import type { Tube } from "./great-vessels.ts";
import type { Ink } from "./sheet.ts";
import { trace } from "./sheet.ts";
import type { Round } from "./tones.ts";

/** Bands across a vessel. */
const BANDS = 18;
/** Where the light comes from: above, from the patient's right. */
export const LIGHT: Point = [-0.6, 0.8];
/** Part of the half width by which the lightest band lies towards it. */
const ASIDE = 0.34;

/** Outline of a band about the line: `part` of its width, moved towards the light by `aside` of its half width. */
function bandOf(whole: Line, tube: Tube, part: number, aside: number, more: number): Point[] {
  const total = lastOf(whole.run);
  const sides: [Point[], Point[]] = [[], []];
  whole.points.forEach((_, i) => {
    const along = entryAt(whole.run, i) / total;
    const { at, left } = spotAt(whole, along);
    const half = (tube.from + (tube.to - tube.from) * along) / 2;
    const lit = (left[0] * LIGHT[0] + left[1] * LIGHT[1]) * aside * half;
    for (const [k, sign] of [1, -1].entries()) {
      const reach = lit + sign * (half * part + more);
      entryAt(sides, k).push([at[0] + reach * left[0], at[1] + reach * left[1]]);
    }
  });
  return [...sides[0], ...sides[1].reverse()];
}

/** @param wall mm */
export function paintTube(ink: Ink, tube: Tube, tones: Round, wall: number): void {
  const own = tube.fades ? scratch(ink) : ink;
  const whole = line(tube.line);
  trace(own, bandOf(whole, tube, 1, 0, wall), true);
  own.fillStyle = tones.wall;
  own.fill();
  for (let k = 0; k < BANDS; k++) {
    const depth = k / (BANDS - 1);
    trace(own, bandOf(whole, tube, 1 - 0.86 * depth, ASIDE * depth, 0), true);
    own.fillStyle =
      depth < 0.6
        ? mix(tones.edge, tones.body, depth / 0.6)
        : mix(tones.body, tones.light, (depth - 0.6) / 0.4);
    own.fill();
  }
  if (own !== ink) {
    fadeEnd(own, tube);
    laidOver(ink, own);
  }
}

/** A canvas of the same size and place. */
export function scratch(ink: Ink): Ink {
  const { width, height } = ink.canvas;
  const canvas = DOMAdapter.get().createCanvas(width, height) as HTMLCanvasElement;
  const own = present(canvas.getContext("2d"));
  own.setTransform(ink.getTransform());
  own.lineJoin = "round";
  own.lineCap = "round";
  return own;
}

export function laidOver(ink: Ink, own: Ink): void {
  ink.save();
  ink.setTransform(1, 0, 0, 1, 0, 0);
  ink.drawImage(own.canvas, 0, 0);
  ink.restore();
}

/** A vessel that goes on out of the picture clears on its way. */
function fadeEnd(ink: Ink, { line: points, fades, over = 0.42 }: Tube): void {
  const whole = line(points);
  const [near, far] = fades === "end" ? [1 - over, 1] : [over, 0];
  const [a, b] = [spotAt(whole, near).at, spotAt(whole, far).at];
  const fall = ink.createLinearGradient(a[0], a[1], b[0], b[1]);
  fall.addColorStop(0, "rgba(0,0,0,0)");
  fall.addColorStop(1, "rgba(0,0,0,1)");
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  ink.fillStyle = fall;
  const { a: scale, e, f } = ink.getTransform();
  ink.fillRect(
    -e / scale,
    (f - ink.canvas.height) / scale,
    ink.canvas.width / scale,
    ink.canvas.height / scale,
  );
  ink.restore();
}
