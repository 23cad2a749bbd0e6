/** Where a vessel's blood isn't seen: its vessel passes behind another, or shares the root of a tree with one before it. */
import { entryAt } from "../../sim/checked/present.ts";
import { type Distance, lineDistance, outlineDistance } from "../../sim/geometry/distance.ts";
import { placeOn, type Spot } from "../drawing/curve-drawing.ts";
import type { Laid } from "./dots.ts";
import { faceAt } from "./figure-shape.ts";
import type { Vessel } from "./vessel.ts";

const SAMPLES = 64;
/** Plane units within which two ways through a lung are one. */
const ONE = 6;
/** Of what covers a mark, the part of its width that hides all of it. */
const COVERS = 0.52;

/** Rank in depth, the deepest first: as the layers are drawn. */
const depthOf = ({ under, behind, painted }: Vessel): number => (painted ? 0 : under ? 1 : behind ? 2 : 3);

/** Plane units beside what covers it that half a mark needs. */
const BESIDE = 5;

/** As a mark behind the face is seen, and one behind an opened chamber: 0.5 is nothing. */
const THROUGH_FACE = 0.68;

interface Way {
  readonly vessel: Vessel;
  readonly order: number;
  readonly spots: readonly Spot[];
  readonly distance: Distance;
  readonly box: readonly [left: number, top: number, right: number, bottom: number];
}

function wayOf({ vessel, line }: Laid, order: number): Way {
  const at = new Float64Array(4);
  const spots = Array.from({ length: SAMPLES + 1 }, (_, i): Spot => {
    placeOn(line, i / SAMPLES, at);
    return [entryAt(at, 0), entryAt(at, 1)];
  });
  const [x, y] = ([0, 1] as const).map((k) => spots.map((spot) => spot[k])) as [number[], number[]];
  const half = vessel.width;
  return {
    vessel,
    order,
    spots,
    distance: lineDistance(spots),
    box: [Math.min(...x) - half, Math.min(...y) - half, Math.max(...x) + half, Math.max(...y) + half],
  };
}

/** Whether the second is drawn over the first; those that join are drawn as one. */
function isOver(a: Way, b: Way): boolean {
  if (a === b || b.vessel.bed || b.vessel.painted) return false;
  if (a.vessel.joins && a.vessel.joins === b.vessel.joins) return false;
  // A chamber lies before the veins that enter it from behind.
  if (a.vessel.sides && b.vessel.behind) return false;
  const [deep, near] = [depthOf(a.vessel), depthOf(b.vessel)];
  return near > deep || (near === deep && b.order > a.order);
}

/** Whether both are ways through one lung, of which the first's marks give way. */
const isTwin = (a: Way, b: Way): boolean =>
  a.vessel.painted === true &&
  b.vessel.painted === true &&
  a.vessel.flow === b.vessel.flow &&
  a.vessel.blood === b.vessel.blood &&
  a.vessel.width === b.vessel.width &&
  b.order < a.order;

const near = ({ distance, box: [left, top, right, bottom] }: Way, [x, y]: Spot, reach: number): boolean =>
  x >= left && x <= right && y >= top && y <= bottom && distance(x, y) < reach;

/** For each vessel 0..1 along it (0 hidden), or null where all of it is seen. */
export function seenAlong(laid: readonly Laid[]): readonly (Float32Array | null)[] {
  // Joined vessels lie where the first of them does.
  const first = new Map<string, number>();
  const ways = laid.map((each, i) => {
    const { joins } = each.vessel;
    if (joins && !first.has(joins)) first.set(joins, i);
    return wayOf(each, joins ? (first.get(joins) ?? i) : i);
  });
  return ways.map((way) => {
    // Its strands lie far from its middle.
    if (way.vessel.between) return null;
    const over = ways.filter((other) => isOver(way, other));
    const covers = (way.vessel.covers ?? []).map(outlineDistance);
    const twins = ways.filter((other) => isTwin(way, other));
    const seen = Float32Array.from(way.spots, (spot) => {
      const isCovered = covers.some((distance) => distance(...spot) < BESIDE);
      const isHidden =
        over.some((other) => near(other, spot, COVERS * other.vessel.width)) ||
        twins.some((other) => near(other, spot, ONE));
      if (isHidden || isCovered) return 0;
      return way.vessel.bed ? 1 : 1 - (1 - THROUGH_FACE) * faceAt(spot[1]);
    });
    return seen.some((each) => each < 1) ? seen : null;
  });
}

/** @param fraction 0..1 along the vessel */
export function seenAt(seen: Float32Array | null | undefined, fraction: number): number {
  if (!seen) return 1;
  const at = Math.min(SAMPLES - 1e-6, Math.max(0, fraction * SAMPLES));
  const i = Math.floor(at);
  // A mark is gone before the edge that hides it cuts it.
  return Math.max(0, 2 * (entryAt(seen, i) + (entryAt(seen, i + 1) - entryAt(seen, i)) * (at - i)) - 1);
}
