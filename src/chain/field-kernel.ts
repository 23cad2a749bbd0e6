/** How fields are computed here: on a GPU, by the vector kernel, or in plain steps. */
import { hasVectors } from "../sim/flow-solver/vector-probe.ts";
import type { GpuStatus } from "./worker-messages.ts";

/** What is known of a GPU: none, one that the processor only imitates, or what became of it. */
type GpuState = "none" | "software" | GpuStatus;

let gpu: GpuState = "none";
let grids: readonly number[] = [];

export function setGpuState(state: GpuState): void {
  gpu = state;
}

/** Cells across the narrowest opening, for each field that runs. */
export function setGrids(cellsAcross: readonly number[]): void {
  grids = cellsAcross;
}

/** As it is now; `vectors`: the processor has vector instructions. */
export const fieldKernel = (): {
  readonly gpu: GpuState;
  readonly vectors: boolean;
  readonly grids: readonly number[];
} => ({ gpu, vectors: hasVectors(), grids });
