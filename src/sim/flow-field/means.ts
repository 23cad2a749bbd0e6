/** Means over the window of the readings, cell by cell: what a map of the flow shows, so that it can be compared with means from elsewhere. */
import type { CutCellMesh } from "../flow-solver/cut-cell-mesh.ts";
import type { FlowSolver } from "../flow-solver/flow-solver.ts";
import { atCentres } from "./at-centres.ts";
import { bloodCells, lossMap } from "./loss-map.ts";
import { resample } from "./remap.ts";

/** Arrays [ny*nx]. */
export interface FieldMeans {
  /** count of shapes so far: which FieldShape it belongs to */
  readonly shapeId: number;
  /** m/s, of the magnitude */
  readonly speed: Float32Array;
  /** mmHg static, relative to the mean of the lung-side openings */
  readonly pressure: Float32Array;
  /** W/m3 */
  readonly loss: Float32Array;
}

type Arrays = Omit<FieldMeans, "shapeId">;

/** Means of a grid, for a finer or coarser one of the same flow; `whole`: of a whole window. */
export interface KeptMeans extends Arrays {
  readonly mesh: CutCellMesh;
  readonly whole: boolean;
}

/** Collects samples and publishes their means. */
export interface Means {
  /** Adds the present moment; `lungs`: openings whose mean pressure is the zero. */
  sample(lungs: readonly string[]): void;
  /** The window is over. */
  close(): void;
  /** Begins a window for other boundary conditions; the last means stay until part of it has passed. */
  begin(): void;
  /** New means since they were last taken. */
  take(): Arrays | undefined;
  /** The last, taken or not. */
  kept(): KeptMeans | undefined;
}

/** Samples of an unfinished window after which their mean replaces an earlier one. */
const ENOUGH = 12;

/**
 * @param density kg/m3
 * @param viscosity Pa.s
 * @param before of another grid: shown until there are means of this one
 */
export function trackMeans(
  solver: FlowSolver,
  density: number,
  viscosity: number,
  before?: KeptMeans,
): Means {
  const { mesh } = solver;
  const blood = bloodCells(mesh);
  const moving = movingCells(solver);
  const scratch = [0, 1, 2].map(() => new Float32Array(mesh.nx * mesh.ny));
  const blank = (): Arrays => {
    const array = () => new Float32Array(mesh.nx * mesh.ny);
    return { speed: array(), pressure: array(), loss: array() };
  };
  let sums = blank();
  let count = 0;
  let whole = before?.whole ?? false;
  let latest = before && onMesh(before, mesh);
  let taken = !latest;

  const publish = () => {
    latest = each(sums, (values) => values.map((value) => value / count));
    taken = false;
  };
  const reset = () => {
    sums = blank();
    count = 0;
  };

  return {
    sample(lungs) {
      const moment = atCentres(solver, density, lungs, scratch);
      const loss = lossMap(mesh, moment, viscosity, blood);
      const { u, v, pressure } = moment;
      for (let n = 0; n < moving.length; n++) {
        const k = moving[n]!;
        sums.speed[k]! += Math.sqrt(u[k]! ** 2 + v[k]! ** 2);
        sums.pressure[k]! += pressure[k]!;
        sums.loss[k]! += loss[k]!;
      }
      count++;
      // After the first window it is replaced as a whole: nothing in the map flickers with the beat.
      if (!latest || (!whole && count >= ENOUGH)) publish();
    },
    close() {
      if (count > 0) publish();
      whole = true;
      reset();
    },
    begin() {
      whole = false;
      reset();
    },
    take() {
      if (taken) return undefined;
      taken = true;
      // Whoever takes them may give them away.
      return latest && each(latest, (values) => values.slice());
    },
    kept: () => latest && { ...latest, mesh, whole },
  };
}

const each = (means: Arrays, of: (values: Float32Array) => Float32Array): Arrays => ({
  speed: of(means.speed),
  pressure: of(means.pressure),
  loss: of(means.loss),
});

const onMesh = (before: KeptMeans, to: CutCellMesh): Arrays =>
  each(before, (values) => resample(before.mesh, to, values));

/** Cells (indices) in which anything moves or has a pressure: those in the blood, those that the wall cuts, those beyond openings. */
function movingCells({ mesh: { nx, ny }, arrays, openings }: FlowSolver): Int32Array {
  const { uInverse, vInverse, pInverse } = arrays;
  const [heldAcross, heldUp] = [new Uint8Array(nx * ny), new Uint8Array(nx * ny)];
  for (const { held } of openings) {
    for (const k of held.u) heldAcross[k] = 1;
    for (const k of held.v) heldUp[k] = 1;
  }
  const across = (k: number) => uInverse[k]! > 0 || heldAcross[k] === 1;
  const up = (k: number) => vInverse[k]! > 0 || heldUp[k] === 1;
  const cells: number[] = [];
  for (let k = 0; k < nx * (ny - 1); k++)
    if (pInverse[k]! > 0 || across(k) || across(k + 1) || up(k) || up(k + nx)) cells.push(k);
  return Int32Array.from(cells);
}
