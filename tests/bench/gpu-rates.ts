/** Cell updates a second of the whole step, openings and reading back included, on a GPU and by the vector kernel on one core. */
import { applyBoundary } from "../../src/sim/flow-field/boundary-conditions.ts";
import { vectorEngine } from "../../src/sim/flow-solver/engine.ts";
import type { FlowSolver } from "../../src/sim/flow-solver/flow-solver.ts";
import type { Gpu } from "../../src/sim/flow-solver/gpu/gpu.ts";
import { nextBatch, noteFlow } from "../../src/sim/flow-solver/step-batch.ts";
import { DRIVE, PLANES, solverIn } from "../sim/flow-solver/planes.ts";

const ACROSS = [12, 16, 24, 32, 48];
/** Steps in one batch: what a 192nd of a breath takes at 24 cells, and four of them. */
const BATCHES = [100, 200, 800];
const SECONDS = 0.6;
export const singles = (count: number) => vectorEngine(count, "singles");

async function gpuRate(gpu: Gpu, solver: FlowSolver, steps: number): Promise<number> {
  const flow = gpu.load(solver);
  const batch = async () => {
    const next = nextBatch(solver, steps, (time) => applyBoundary(solver, DRIVE, time, noteFlow));
    await flow.run(next);
    solver.passed(steps);
  };
  await batch();
  const began = performance.now();
  let done = 0;
  while (performance.now() - began < 1e3 * SECONDS) {
    await batch();
    done += steps;
  }
  const rate = (solver.cells * done * 1e3) / (performance.now() - began);
  flow.release();
  return rate;
}

/** Of many slices the fastest counts. */
function vectorRate(solver: FlowSolver): number {
  const began = performance.now();
  let least = Number.POSITIVE_INFINITY;
  while (performance.now() - began < 1e3 * SECONDS) {
    const from = performance.now();
    solver.advance(20, (time) => applyBoundary(solver, DRIVE, time));
    least = Math.min(least, performance.now() - from);
  }
  return (solver.cells * 20 * 1e3) / least;
}

const million = (rate: number) => (rate / 1e6).toFixed(1).padStart(8);

/** A line for each grid, as it is measured. */
export async function* gpuRates(gpu: Gpu): AsyncGenerator<string> {
  yield "cells across, cells, million cell updates a second: vector kernel, GPU in batches; real speed";
  const [, geometry] = PLANES[3]!;
  const veins = geometry.openings.filter(({ name }) => name !== "fenestration");
  const narrowest = Math.min(...veins.map(({ width }) => width));
  for (const across of ACROSS) {
    const solver = solverIn(geometry, narrowest / across, singles);
    const onCore = vectorRate(solver);
    const rates: number[] = [];
    for (const batch of BATCHES) rates.push(await gpuRate(gpu, solver, batch));
    const real = (rates[0]! * solver.step) / solver.cells;
    yield `${String(across).padStart(3)} ${String(solver.cells).padStart(7)} ${million(onCore)} ${rates.map(million).join(" ")}  ${(rates[0]! / onCore).toFixed(1)} times; ${real.toFixed(1)} s of blood in a second, ${((onCore * solver.step) / solver.cells).toFixed(2)} on the core`;
  }
}
