/** Which vectors of cells the kernel visits, and which of those need no coefficients of their own. */
import type { Reals, SolverArrays } from "./array-layout.ts";

/** A run of vectors in one row: cells first to last - 1. */
interface Run {
  readonly first: number;
  last: number;
  /** all its cells look the same, so that one number serves for all areas and links */
  readonly alike: boolean;
}

/** A cell and its north and east sides look like those of an open plane of one depth. */
const isOpen = (a: SolverArrays, k: number, nx: number): boolean => {
  const depth = a.westArea[k]!;
  const n = k + nx;
  return (
    depth > 0 &&
    a.uInverse[k]! > 0 &&
    a.uInverse[k] === a.vInverse[k] &&
    a.uInverse[k] === a.pInverse[k] &&
    a.uFriction[k] === a.vFriction[k] &&
    a.westArea[k + 1] === depth &&
    a.westArea[k - nx + 1] === depth &&
    a.southArea[k] === depth &&
    a.southArea[n] === depth &&
    a.southArea[n - 1] === depth &&
    a.uThroughCell[k] === depth &&
    a.uThroughCorner[n] === depth &&
    a.vThroughCell[k] === depth &&
    a.vThroughCorner[k + 1] === depth &&
    a.uSmoothCell[k] === 1 &&
    a.uSmoothCorner[n] === 1 &&
    a.vSmoothCell[k] === 1 &&
    a.vSmoothCorner[k + 1] === 1 &&
    a.uBeyond[k] === 0 &&
    a.vBeyond[k] === 0 &&
    a.uStep[k] === 0 &&
    a.vStep[k] === 0
  );
};

const same = (array: Reals, k: number, other: number): boolean => array[k] === array[other];

/** Nothing is solved in the cell, and the row above takes nothing through it. */
const isIdle = (a: SolverArrays, k: number, nx: number): boolean =>
  a.uInverse[k] === 0 &&
  a.vInverse[k] === 0 &&
  a.pInverse[k] === 0 &&
  a.uInverse[k + nx] === 0 &&
  a.vInverse[k + nx] === 0;

/** True for every cell of the vector that begins at `k`. */
function every(k: number, lanes: number, holds: (cell: number) => boolean): boolean {
  for (let lane = 0; lane < lanes; lane++) if (!holds(k + lane)) return false;
  return true;
}

function runsOf(a: SolverArrays, nx: number, start: number, lanes: number): readonly Run[] {
  const runs: Run[] = [];
  const likeCell = (model: number) => (k: number) =>
    isOpen(a, k, nx) &&
    same(a.westArea, k, model) &&
    same(a.uFriction, k, model) &&
    same(a.uInverse, k, model);
  for (let i = 0; i < nx; i += lanes) {
    const k = start + i;
    if (every(k, lanes, (cell) => isIdle(a, cell, nx))) continue;
    const alike = every(k, lanes, likeCell(k));
    const run = runs[runs.length - 1];
    const goesOn = run?.last === i && run.alike === alike && (!alike || likeCell(start + run.first)(k));
    if (goesOn) run.last = i + lanes;
    else runs.push({ first: i, last: i + lanes, alike });
  }
  return runs;
}

/**
 * For each row from the third to the last but two: the number of its runs, then each run's first cell and its last + 1, which is negative
 * where all its cells are alike (places in the row, dimensionless).
 * @param lanes cells in a vector
 */
export function vectorRuns(nx: number, ny: number, a: SolverArrays, lanes: number): Int32Array {
  const all: number[] = [];
  for (let j = 2; j < ny - 2; j++) {
    const runs = runsOf(a, nx, j * nx, lanes);
    all.push(runs.length);
    for (const { first, last, alike } of runs) all.push(first, alike ? -last : last);
  }
  return Int32Array.from(all);
}
