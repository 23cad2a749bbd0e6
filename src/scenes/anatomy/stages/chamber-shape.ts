/** Where things lie in a right atrium that is the pathway itself. */
import { entryAt, present } from "../../../sim/checked/present.ts";
import type { ChestFrame, Point } from "../../../sim/geometry/geometry.ts";
import type { Outlines } from "../painted-sheet.ts";

export type Loops = NonNullable<Outlines["lumen"]>;

/** Where its septum is cut: degrees from the patient's left up to the middle of the patch, and to either of its ends. */
export const SEPTUM = { at: -1, half: 11 } as const;

/** A place on its oval by degrees from the patient's left, anticlockwise, `out` mm beyond it. */
export const onOval =
  ([a, b]: Point) =>
  (degrees: number, out = 0): Point => {
    const turn = (degrees * Math.PI) / 180;
    return [(a + out) * Math.cos(turn), (b + out) * Math.sin(turn)];
  };

/** A place by parts of half the width and half the height. */
export const placesIn =
  ([a, b]: Point) =>
  (x: number, y: number): Point => [a * x, b * y];

/** Points to either side over which the lumen's edge is rounded. */
const INNER = 2;

/** The line's points, each the mean of those around it. @param reach points to either side */
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

/** Parts of its size above the chamber's middle, and beyond its oval, from where on a place lies in an artery. */
const ABOVE = 0.3;
const BEYOND = 0.01;

export type Chambered = ChestFrame & { readonly chamber: Point };

/** The lumen's own edge. */
export const edgesOf = (lumen: Loops): readonly (readonly Point[])[] =>
  lumen.map((loop) => rounded(loop, INNER));

/** Whether a place on it is an artery's. */
export function arterial({ chamber: [a, b], scale: s, svc }: Chambered): (place: Point) => boolean {
  // The upper vein leans above the chamber.
  const aside = (y: number) => svc.width / 2 + 2 * s + (y > b ? Math.abs(svc.centre[0]) : 0);
  return ([x, y]) => y > ABOVE * b && Math.abs(x) > aside(y) && Math.hypot(x / a, y / b) > 1 + BEYOND;
}

interface Mouth {
  /** mm, where the chamber's edge ends below and above the artery */
  readonly low: Point;
  readonly high: Point;
}

/** Where a pulmonary artery leaves the chamber. */
export function mouthOf(frame: Chambered, side: "left" | "right", lumen: Loops): Mouth {
  const inArtery = arterial(frame);
  const sign = side === "left" ? 1 : -1;
  const ends = edgesOf(lumen).flatMap((edge) => {
    const here = edge.map((place) => sign * place[0] > 0 && inArtery(place));
    return edge.filter((_, i) => !here[i] && (here[(i + 1) % here.length] || here.at(i - 1)));
  });
  const [low, high] = ends.sort((one, other) => one[1] - other[1]);
  return { low: present(low), high: present(high) };
}

/** Part of the way between their lower edges by which the seam arches up as the roof does, seen a little from above. */
const ARCH = 0.06;
/** and by which the front edge hangs before the artery, between their upper edges */
const HANGS = -0.03;
/** Both pulmonary arteries are one vessel behind the roof, opened along its underside and sewn to that from shoulder to shoulder. */
export function connectionOf(frame: Chambered, lumen: Loops) {
  const [right, left] = [mouthOf(frame, "right", lumen), mouthOf(frame, "left", lumen)];
  return {
    right,
    left,
    /** where both meet behind, and the roof's edge in front */
    seam: bowed(right.low, left.low, ARCH),
    lip: bowed(right.high, left.high, HANGS),
  };
}

/** @param part of the way between them */
function bowed(from: Point, to: Point, part: number): readonly Point[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  return Array.from({ length: 49 }, (_, i): Point => {
    const bow = part * Math.sin((Math.PI * i) / 48) ** 0.8;
    return [from[0] + (dx * i) / 48 - bow * dy, from[1] + (dy * i) / 48 + bow * dx];
  });
}

/** mm of a 5-year-old over which its muscle grows thin on the veins */
const SLEEVE = 9;

/** How far its muscle has thinned on a vein at a place on its edge: 1 where it ends, and beyond. */
export function sleeveOf({ chamber: [, b], scale }: Chambered): (point: Point) => number {
  return ([, y]) => Math.min(1, Math.max(0, Math.abs(y) - 0.97 * b) / (SLEEVE * scale));
}
