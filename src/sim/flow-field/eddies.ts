/** Closed eddies: the blood whose streamline, followed backward, comes from no opening. */
import type { FlowSolver } from "../flow-solver/flow-solver.ts";
import { follow } from "./pathlines.ts";

/** Lines followed in one moment of a live field. */
const LINES = 16;
/** Spreads the lines evenly over the cells, however many moments there are: the golden ratio. */
const SPREAD = 0.6180339887498949;

/** Cells (indices) with blood this side of all openings, every `stride`th in each direction. */
function bloodWithin({ nx, ny, area, beyond }: FlowSolver["mesh"], stride: number): Int32Array {
  const cells: number[] = [];
  for (let j = 2; j < ny - 2; j += stride)
    for (let i = 2; i < nx - 2; i += stride) {
      const k = j * nx + i;
      if (area[k]! > 0 && beyond[k]! < 0) cells.push(k);
    }
  return Int32Array.from(cells);
}

const turns = (solver: FlowSolver, k: number): boolean => follow(solver, { cell: k, x: 0.5, y: 0.5 }, -1) < 0;

/**
 * Fraction (0 to 1) of the blood's area that turns in closed eddies now.
 * @param stride tests every so many cells in each direction, for speed; 1 tests all
 */
export function recirculatingArea(solver: FlowSolver, stride = 1): number {
  const { area } = solver.mesh;
  let all = 0;
  let caught = 0;
  for (const k of bloodWithin(solver.mesh, stride)) {
    all += area[k]!;
    if (turns(solver, k)) caught += area[k]!;
  }
  return all > 0 ? caught / all : 0;
}

/** The same as a mean over time: a few lines at each of many moments, so that no moment costs much. */
export interface EddyTracker {
  /** Follows a few lines in the present flow. */
  sample(): void;
  /** Fraction (0 to 1) since this was last called; 0 without a sample. */
  taken(): number;
}

/** Starts without samples. */
export function trackEddies(solver: FlowSolver): EddyTracker {
  const { area } = solver.mesh;
  const cells = bloodWithin(solver.mesh, 1);
  let place = 0.5;
  let all = 0;
  let caught = 0;
  return {
    sample() {
      for (let n = 0; n < Math.min(LINES, cells.length); n++) {
        place = (place + SPREAD) % 1;
        const k = cells[Math.floor(place * cells.length)]!;
        all += area[k]!;
        if (turns(solver, k)) caught += area[k]!;
      }
    },
    taken() {
      const fraction = all > 0 ? caught / all : 0;
      all = 0;
      caught = 0;
      return fraction;
    },
  };
}
