/**
 * A steady flow in fewer steps by Anderson's acceleration (J ACM 12:547, 1965): each stretch of time starts from the mix of earlier flows that changes
 * least. Only for flows known to become steady: on the way there the flow is none that blood goes through, and an unstable steady flow is found as well.
 * Many and long flows: their products are kept from stretch to stretch, where the circulation's search makes its few short ones independent each time.
 */
import type { FlowSolver } from "../flow-solver/flow-solver.ts";

/** Flows kept at most, and the bytes that they may take. */
const MAX_KEPT = 40;
const MAX_BYTES = 256e6;
/** Of one stretch for each cell: two velocities and the pressure, at its end and as they changed, in double precision. */
const BYTES_OF_CELL = 2 * 3 * Float64Array.BYTES_PER_ELEMENT;
/** Keeps the mix finite where kept changes are almost alike, over their own size. */
const REGULAR = 1e-12;
/** Relative change in a stretch above which the flow is still finding its shape, and nothing is mixed. */
const BEGIN = 0.01;
/** A stretch that changes the flow this many times more than the least so far forgets what was kept. */
const WORSE = 10;

/** One stretch: the flow at its end, and how it changed. */
interface Stretch {
  readonly end: Float64Array;
  readonly change: Float64Array;
  /** products of this change with that of each stretch kept before it, and with itself last */
  readonly products: number[];
}

/** Advances `solver` by a count of steps, then moves the flow on towards its steady state. Gives the relative change (a fraction) in those steps. */
export function accelerate(solver: FlowSolver): (steps: number) => number {
  const most = Math.max(
    2,
    Math.min(MAX_KEPT, Math.floor(MAX_BYTES / (BYTES_OF_CELL * solver.arrays.u.length))),
  );
  let kept: Stretch[] = [];
  let least = Number.POSITIVE_INFINITY;
  return (steps) => {
    const change = flowOf(solver);
    solver.advance(steps);
    const end = flowOf(solver);
    for (let n = 0; n < end.length; n++) change[n] = end[n]! - change[n]!;
    const size = dot(change, change);
    const moved = Math.sqrt(size / dot(end, end));
    if (size === 0 || !(moved < BEGIN)) return moved;
    if (size > WORSE ** 2 * least) kept = [];
    least = kept.length === 0 ? size : Math.min(least, size);
    if (kept.length === most) {
      kept.shift();
      for (const { products } of kept) products.shift();
    }
    kept.push({ end, change, products: [...kept.map((other) => dot(other.change, change)), size] });
    if (kept.length > 1) setFlow(solver, mix(kept));
    return moved;
  };
}

/** Velocities and pressures one after the other. */
function flowOf({ arrays: { u, v, p } }: FlowSolver): Float64Array {
  const flow = new Float64Array(3 * u.length);
  flow.set(u);
  flow.set(v, u.length);
  flow.set(p, 2 * u.length);
  return flow;
}

function setFlow({ arrays: a }: FlowSolver, flow: Float64Array): void {
  const count = a.u.length;
  for (const each of [a.u, a.uAhead, a.uNext]) each.set(flow.subarray(0, count));
  for (const each of [a.v, a.vAhead, a.vNext]) each.set(flow.subarray(count, 2 * count));
  for (const each of [a.p, a.pAhead]) each.set(flow.subarray(2 * count));
}

/** The ends weighted, by parts that sum to one, so that the same mix of the changes is least. */
function mix(kept: readonly Stretch[]): Float64Array {
  const parts = leastParts(kept.map(({ products }) => products));
  const flow = new Float64Array(kept[0]!.end.length);
  kept.forEach(({ end }, n) => {
    const part = parts[n]!;
    for (let k = 0; k < flow.length; k++) flow[k]! += part * end[k]!;
  });
  return flow;
}

/** Parts that sum to one with the least quadratic form of the symmetric matrix whose lower triangle is given: solved by Gauss-Jordan, rows scaled. */
function leastParts(triangle: readonly (readonly number[])[]): number[] {
  const scales = triangle.map((row, n) => 1 / Math.sqrt(row[n]!));
  const rows = triangle.map((_, n) => [
    ...triangle.map(
      (_, m) =>
        triangle[Math.max(n, m)]![Math.min(n, m)]! * scales[n]! * scales[m]! + (n === m ? REGULAR : 0),
    ),
    scales[n]!,
  ]);
  rows.forEach((pivot, n) => {
    for (const row of rows) {
      if (row === pivot) continue;
      const times = row[n]! / pivot[n]!;
      for (let m = n; m < row.length; m++) row[m]! -= times * pivot[m]!;
    }
  });
  const found = rows.map((row, n) => (scales[n]! * row.at(-1)!) / row[n]!);
  const total = found.reduce((sum, value) => sum + value, 0);
  return found.map((value) => value / total);
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let n = 0; n < a.length; n++) sum += a[n]! * b[n]!;
  return sum;
}
