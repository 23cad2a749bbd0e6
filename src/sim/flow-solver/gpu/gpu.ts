/** A GPU that runs solvers' steps, many in one go, and brings their flow back into their own arrays. */
import type { FlowSolver } from "../flow-solver.ts";
import { type GpuSolver, loadSolver } from "./gpu-solver.ts";
import type { GpuDevice, GpuPipeline } from "./host.ts";
import { OPENINGS_WGSL } from "./openings-wgsl.ts";
import { STEP_WGSL } from "./step-wgsl.ts";

/** A GPU that computes for any number of solvers. */
export interface Gpu {
  /** Brings a solver's present flow onto the GPU. */
  load(solver: FlowSolver): GpuSolver;
}

/**
 * Makes a device ready for solvers; refused where it does not understand the kernel.
 * @param silent ms after which a GPU that has not answered counts as lost: less than a page waits for a word of its worker
 */
export async function openGpu(device: GpuDevice, silent = 1000): Promise<Gpu> {
  const pipeline = (code: string, entryPoint: string): Promise<GpuPipeline> =>
    device.createComputePipelineAsync({
      layout: "auto",
      compute: { module: device.createShaderModule({ code }), entryPoint },
    });
  const [step, openings] = await Promise.all([
    pipeline(STEP_WGSL, "step"),
    pipeline(OPENINGS_WGSL, "openings"),
  ]);
  let lost = "";
  const ended = device.lost.then(({ message }) => {
    lost ||= message || "lost";
  });
  // A faulty command is not refused where it is given: the GPU goes on without it.
  device.addEventListener("uncapturederror", ({ error }) => {
    lost ||= error.message;
  });

  async function answered(work: Promise<void>): Promise<void> {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const patience = new Promise<void>((resolve) => {
      timer = setTimeout(() => {
        lost ||= "no answer";
        resolve();
      }, silent);
    });
    await Promise.race([work, ended, patience]);
    clearTimeout(timer);
    if (lost) throw new Error(`GPU: ${lost}`);
  }

  return { load: (solver) => loadSolver({ device, step, openings, answered }, solver) };
}
