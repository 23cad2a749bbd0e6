/**
 * Beyond a hole in the pathway's wall: tracers leave through it as a round free jet. It starts with the orifice law's speed Q / (Cd A)
 * across the contracted stream, keeps its momentum, and widens in proportion to distance (half-width 0.094 of it: Hussein, Capp & George,
 * J Fluid Mech 258:31, 1994), so that its centre slows as 1 / distance and surrounding blood is drawn in.
 */
import type { Point } from "../geometry/geometry.ts";
import type { RandomSource } from "../random.ts";
import { layTrails, place, remove, TracerCloud } from "./tracer-cloud.ts";

/** Where a jet leaves the pathway. */
export interface Hole {
  /** mm: middle of its outer end, and the unit vector out of the pathway */
  readonly centre: Point;
  readonly normal: Point;
  /** mm, of the stream where it is narrowest */
  readonly stream: number;
  /** mm after which the jet has met the far wall */
  readonly reach: number;
}

/** The tracers of one jet. */
export interface Jet {
  readonly tracers: TracerCloud;
  /** [capacity] fraction of a tracer's blood that still comes from the pathway, 1 to 0 */
  readonly undiluted: Float32Array;
  /** Another hole, or none: tracers under way are dropped. */
  lay(hole: Hole | null): void;
  /** Tracer `n` of `from` leaves, `across` mm from the middle, at the jet's `speed` (m/s), with `left` s of the step to go. */
  take(from: TracerCloud, n: number, across: number, speed: number, left: number): void;
  /** Moves by `seconds` the tracers that left in earlier steps. */
  advance(seconds: number): void;
}

/** Half-width (where the speed is half of the middle's) over way. */
const SPREAD = 0.094;
/** Half-width of a bell curve over its deviation. */
const HALF = Math.sqrt(2 * Math.LN2);
/** mm moved between two samples of the speed */
const STRIDE = 1.5;
/** How soon eddies shuffle tracers across the jet, per doubling of its width or so. */
const SHUFFLE = 0.3;
/** Fraction of the reach over which the rest fades into the surrounding blood. */
const FADES = 0.5;

/**
 * A jet without tracers and without a hole.
 * @param capacity count of tracers at most
 * @param trailLength count of points in a trail
 * @param trail s of blood time that a trail spans
 */
export function freeJet(capacity: number, trailLength: number, trail: number, random: RandomSource): Jet {
  const tracers = new TracerCloud(capacity, trailLength, trail);
  const undiluted = new Float32Array(capacity);
  /** mm from the hole */
  const along = new Float32Array(capacity);
  /** deviations of the jet's width, in the plane and towards the eye */
  const aside = new Float32Array(capacity);
  const deep = new Float32Array(capacity);
  /** m/s with which it left the hole */
  const start = new Float32Array(capacity);
  let hole: Hole | null = null;

  const bell = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

  const widthAt = ({ stream }: Hole, way: number) => Math.hypot((HALF * stream) / 2, SPREAD * way);

  const show = (n: number, { centre, normal, reach, stream }: Hole) => {
    const x = along[n]!;
    const width = widthAt(hole!, x);
    const y = (aside[n]! * width) / HALF;
    tracers.position[2 * n] = centre[0] + x * normal[0] - y * normal[1];
    tracers.position[2 * n + 1] = centre[1] + x * normal[1] + y * normal[0];
    const ending = Math.min(1, (reach - x) / (FADES * reach));
    undiluted[n] = ((HALF * stream) / 2 / width) * ending;
  };

  /** False when it has faded. */
  const move = (n: number, at: Hole, seconds: number): boolean => {
    for (let left = seconds; left > 0; ) {
      const width = widthAt(at, along[n]!);
      const middle = (start[n]! * HALF * at.stream) / 2 / width;
      const speed = middle * Math.exp(-(aside[n]! ** 2 + deep[n]! ** 2) / 2);
      if (!(speed > 0)) return false;
      const step = Math.min(left, STRIDE / (1e3 * speed));
      const way = 1e3 * speed * step;
      along[n]! += way;
      // Eddies as wide as the jet: the places across it stay a bell curve.
      const turn = (SHUFFLE * way) / (along[n]! + at.stream / SPREAD);
      const kick = Math.sqrt(2 * turn);
      aside[n] = aside[n]! * (1 - turn) + kick * bell();
      deep[n] = deep[n]! * (1 - turn) + kick * bell();
      tracers.speed[n] = speed;
      left -= step;
      if (along[n]! >= at.reach) return false;
    }
    tracers.age[n]! += seconds;
    show(n, at);
    return true;
  };

  const drop = (n: number) => {
    const last = tracers.count - 1;
    remove(tracers, n);
    for (const array of [undiluted, along, aside, deep, start]) array[n] = array[last]!;
  };

  return {
    tracers,
    undiluted,
    lay(next) {
      hole = next;
      tracers.count = 0;
    },
    take(from, n, across, speed, left) {
      if (!hole || tracers.count >= capacity) return;
      const m = tracers.count++;
      along[m] = 0;
      aside[m] = across / (hole.stream / 2);
      deep[m] = (2 * random() - 1) * Math.sqrt(Math.max(0, 1.5 - aside[m]! ** 2));
      start[m] = speed;
      tracers.origin[m] = from.origin[n]!;
      tracers.dyed[m] = from.dyed[n]!;
      tracers.age[m] = from.age[n]! - left;
      show(m, hole);
      place(tracers, m, tracers.position[2 * m]!, tracers.position[2 * m + 1]!);
      if (!move(m, hole, left)) drop(m);
    },
    advance(seconds) {
      if (!hole) return;
      layTrails(tracers, seconds);
      for (let n = tracers.count - 1; n >= 0; n--) if (!move(n, hole, seconds)) drop(n);
    },
  };
}

/** Distance (mm) from a point (mm) in a direction to the last crossing of the outline; undefined where there is no crossing. */
export function farWall(outline: readonly Point[], from: Point, along: Point): number | undefined {
  let farthest: number | undefined;
  outline.forEach(([x0, y0], i) => {
    const [x1, y1] = outline[(i + 1) % outline.length]!;
    const across = (x: number, y: number) => (y - from[1]) * along[0] - (x - from[0]) * along[1];
    const [a, b] = [across(x0, y0), across(x1, y1)];
    if (a > 0 === b > 0) return;
    const share = a / (a - b);
    const way = (x0 + share * (x1 - x0) - from[0]) * along[0] + (y0 + share * (y1 - y0) - from[1]) * along[1];
    if (way > 0) farthest = Math.max(farthest ?? 0, way);
  });
  return farthest;
}
