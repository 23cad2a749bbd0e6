/** Where a vessel's blood isn't seen: its vessel passes behind another, or shares the root of a tree with one before it. */
import { entryAt } from "../../sim/checked/present.ts";
import { outlineDistance } from "../../sim/geometry/distance.ts";
import { placeOn } from "../drawing/curve-drawing.ts";
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
const THROUGH_CHAMBER = 0.75;

interface Way {
  readonly vessel: Vessel;
  readonly order: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly box: readonly [left: number, top: number, right: number, bottom: number];
}

function wayOf({ vessel, line }: Laid, order: number): Way {
  const [x, y, at] = [new Float64Array(SAMPLES + 1), new Float64Array(SAMPLES + 1), new Float64Array(4)];
  for (let i = 0; i <= SAMPLES; i++) {
    placeOn(line, i / SAMPLES, at);
    x[i] = entryAt(at, 0);
    y[i] = entryAt(at, 1);
  }
  const half = vessel.width;
  return {
    vessel,
    order,
    x,
    y,
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
  !a.vessel.faint &&
  a.vessel.flow === b.vessel.flow &&
  a.vessel.blood === b.vessel.blood &&
  a.vessel.width === b.vessel.width &&
  b.order < a.order;

function near({ x, y, box }: Way, px: number, py: number, reach: number): boolean {
  if (px < box[0] || px > box[2] || py < box[1] || py > box[3]) return false;
  // The line is straight between two samples.
  for (let i = 0; i < SAMPLES; i++) {
    const [ax, ay] = [entryAt(x, i), entryAt(y, i)];
    const [dx, dy] = [entryAt(x, i + 1) - ax, entryAt(y, i + 1) - ay];
    const t = Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy || 1)));
    if (Math.hypot(ax + t * dx - px, ay + t * dy - py) < reach) return true;
  }
  return false;
}

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
    const seen = Float32Array.from(way.x, (x, i) => {
      const y = entryAt(way.y, i);
      const isCovered = covers.some((distance) => distance(x, y) < BESIDE);
      const isHidden =
        over.some((other) => near(other, x, y, COVERS * other.vessel.width)) ||
        twins.some((other) => near(other, x, y, ONE));
      if (isHidden || isCovered) return 0;
      if (way.vessel.faint) return THROUGH_CHAMBER;
      return way.vessel.bed ? 1 : 1 - (1 - THROUGH_FACE) * faceAt(y);
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
