/** How a solver lies in a GPU's memory: its changing and its fixed arrays one after the other, and the tiles that hold blood. */
import type { SolverArrays } from "../array-layout.ts";
import type { CutCellMesh } from "../cut-cell-mesh.ts";
import type { SolverOpening } from "../openings.ts";

/** Arrays that change, [ny*nx] each; the first three are read back. */
export const FLOW = ["u", "v", "p", "pAhead", "uLow", "vLow", "uAhead", "vAhead"] as const;
/** How many of them come back after each batch. */
export const READ_BACK = 3;

const NUMBERS = [
  "westArea",
  "southArea",
  "uInverse",
  "vInverse",
  "pInverse",
  "uThroughCell",
  "uThroughCorner",
  "vThroughCell",
  "vThroughCorner",
  "uFriction",
  "vFriction",
  "uStep",
  "vStep",
] as const;
/** Arrays that stay; `flags` packs what is 0, 1 or 2. */
export const COEFFICIENTS = [...NUMBERS, "flags"] as const;

/** All changing arrays (SI units, as in array-layout.ts) as they are now, `count` cells each. */
export function packFlow(a: SolverArrays, count: number): Float32Array {
  const flow = new Float32Array(FLOW.length * count);
  FLOW.forEach((name, place) => {
    flow.set(a[name], place * count);
  });
  return flow;
}

/** All fixed arrays (units of array-layout.ts: cells and mm), `count` cells each. */
export function packCoefficients(a: SolverArrays, count: number): Float32Array {
  const fixed = new Float32Array(COEFFICIENTS.length * count);
  NUMBERS.forEach((name, place) => {
    fixed.set(a[name], place * count);
  });
  for (let k = 0; k < count; k++)
    fixed[NUMBERS.length * count + k] =
      a.uSmoothCell[k]! +
      2 * a.uSmoothCorner[k]! +
      4 * a.vSmoothCell[k]! +
      8 * a.vSmoothCorner[k]! +
      16 * a.uBeyond[k]! +
      64 * a.vBeyond[k]!;
  return fixed;
}

/** First cells (index) of the tiles, `side` cells wide, in which anything is solved or held. */
export function activeTiles(
  { nx, ny }: CutCellMesh,
  a: SolverArrays,
  openings: readonly SolverOpening[],
  side: number,
): Uint32Array {
  const wide = Math.ceil(nx / side);
  const active = new Set<number>();
  const mark = (k: number) =>
    active.add(Math.floor(Math.floor(k / nx) / side) * wide + Math.floor((k % nx) / side));
  for (let k = 0; k < nx * ny; k++)
    if (a.uInverse[k]! > 0 || a.vInverse[k]! > 0 || a.pInverse[k]! > 0) mark(k);
  for (const { held, cells } of openings) for (const list of [held.u, held.v, cells]) list.forEach(mark);
  return Uint32Array.from(
    [...active].sort((one, other) => one - other),
    (tile) => Math.floor(tile / wide) * side * nx + (tile % wide) * side,
  );
}
