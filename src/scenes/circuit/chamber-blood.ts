/** Blood that fills a chamber: its marks lie evenly over all of it, between the two sides along which it runs. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { type Curve, curve, placeOn, type Spot } from "../drawing/curve-drawing.ts";

export interface Cavity {
  readonly sides: readonly [Curve, Curve];
  /** plane units squared */
  readonly area: number;
  /** the part of the area that lies before each of evenly spaced cross lines */
  readonly before: Float64Array;
}

const STRIPS = 48;
/** Part of the way from side to side that marks keep to: half a mark's room at either. */
const KEPT = 0.88;

const [one, other] = [new Float64Array(4), new Float64Array(4)];

export function cavity(sides: readonly [readonly Spot[], readonly Spot[]]): Cavity {
  const lines = [curve(sides[0]), curve(sides[1])] as const;
  const before = new Float64Array(STRIPS + 1);
  for (let i = 0; i < STRIPS; i++) {
    const [ax, ay, bx, by] = across(lines, i / STRIPS);
    const [dx, dy, cx, cy] = across(lines, (i + 1) / STRIPS);
    // Half the cross product of the strip's diagonals.
    before[i + 1] = entryAt(before, i) + Math.abs((cx - ax) * (dy - by) - (cy - ay) * (dx - bx)) / 2;
  }
  const area = lastOf(before);
  return { sides: lines, area, before: before.map((each) => each / area) };
}

function across([a, b]: Cavity["sides"], along: number): readonly [number, number, number, number] {
  placeOn(a, along, one);
  placeOn(b, along, other);
  return [entryAt(one, 0), entryAt(one, 1), entryAt(other, 0), entryAt(other, 1)];
}

/** The middle way through it. */
export const middleOf = ([a, b]: readonly [readonly Spot[], readonly Spot[]]): readonly Spot[] => {
  const lines = [curve(a), curve(b)] as const;
  return Array.from({ length: 9 }, (_, i): Spot => {
    const [ax, ay, bx, by] = across(lines, i / 8);
    return [(ax + bx) / 2, (ay + by) / 2];
  });
};

/**
 * With the part `passed` of the area behind it, `side` (-1..1) across: x, y, tangent, part of the length, and how much
 * faster blood goes here than on the mean along a way of `length`, into `out`.
 */
export function placeInCavity(
  { sides, before }: Cavity,
  passed: number,
  side: number,
  length: number,
  out: Float64Array,
): void {
  let i = 0;
  while (i < STRIPS - 1 && entryAt(before, i + 1) <= passed) i++;
  const strip = entryAt(before, i + 1) - entryAt(before, i);
  const along = (i + (passed - entryAt(before, i)) / strip) / STRIPS;
  const [ax, ay, bx, by] = across(sides, along);
  const [a, b] = [sides[0].length, sides[1].length];
  // The longer side, round a bend, has as many more marks.
  const even = ((0.5 + 0.5 * KEPT * side) * (a + b)) / 2;
  const part = (2 * even) / (a + Math.sqrt(a * a + 2 * (b - a) * even));
  const [dx, dy] = [2, 3].map((k) => entryAt(one, k) * a * (1 - part) + entryAt(other, k) * b * part) as [
    number,
    number,
  ];
  const step = Math.hypot(dx, dy) || 1;
  out[0] = ax + (bx - ax) * part;
  out[1] = ay + (by - ay) * part;
  out[2] = dx / step;
  out[3] = dy / step;
  out[4] = along;
  out[5] = step / (STRIPS * strip * length);
}

/** Steps that are tried, and moments at which their marks are looked at. */
const TRIED = 61;
const MOMENTS = 6;
/** Widths in a mark's length where blood is fast: one behind another needs as much more room. */
const LONG = 2.2;

/** Part of the way across by which each of `count` marks lies beside the one before, so that the nearest two lie farthest apart. */
export function evenStep(chamber: Cavity, count: number): number {
  const out = new Float64Array(6);
  let [best, widest] = [0, 0];
  for (let j = 1; j < TRIED; j++) {
    let nearest = Number.POSITIVE_INFINITY;
    for (let moment = 0; moment < MOMENTS && nearest > widest; moment++) {
      const marks = Array.from({ length: count }, (_, k) => {
        const passed = ((k + 0.5) / count + moment / MOMENTS) % 1;
        placeInCavity(chamber, passed, sideOf(k, j / TRIED), 1, out);
        return [entryAt(out, 0), entryAt(out, 1), entryAt(out, 2), entryAt(out, 3)] as const;
      });
      marks.forEach(([x, y, tx, ty], i) => {
        for (const [ox, oy] of marks.slice(i + 1)) {
          const [dx, dy] = [ox - x, oy - y];
          nearest = Math.min(nearest, Math.hypot((dx * tx + dy * ty) / LONG, dx * ty - dy * tx));
        }
      });
    }
    if (nearest > widest) [best, widest] = [j / TRIED, nearest];
  }
  return best;
}

/** -1..1 across: where the mark with this number lies. */
export const sideOf = (number: number, step: number): number => 2 * (((number + 1) * step) % 1) - 1;
