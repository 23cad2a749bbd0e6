/** One solver in a GPU's memory, and its batches of steps. */
import { entryAt, present } from "../../checked/present.ts";
import type { FlowSolver } from "../flow-solver.ts";
import type { StepBatch } from "../step-batch.ts";
import { type GpuBuffer, type GpuDevice, type GpuPipeline, type Made, USE } from "./host.ts";
import { activeTiles, packCoefficients, packFlow, READ_BACK } from "./layout.ts";
import { packOpenings, packState, STATE_WIDTH, unpackState } from "./pack-openings.ts";
import { TILE } from "./step-wgsl.ts";

/** Most steps in one batch: room for their inputs. */
export const MAX_STEPS = 1024;
/** Most states that one batch brings back. */
export const MAX_MARKS = 8;
/** Steps handed over at a time. */
const CHUNK = 128;
const BYTES = 4;

/** One solver's flow on a GPU. */
export interface GpuSolver {
  /**
   * Runs a batch; the solver's u, v, p and openings then hold its end. Refused where the GPU is lost or silent: they are as before it.
   * @param marks after how many steps the state is brought back, ascending, MAX_MARKS at most, the batch's end the last
   * @param reached hears of each when the solver holds its state
   */
  run(batch: StepBatch, marks?: readonly number[], reached?: (mark: number) => void): Promise<void>;
  release(): void;
}

/** An open GPU. */
export interface OpenGpu {
  readonly device: GpuDevice;
  readonly step: GpuPipeline;
  readonly openings: GpuPipeline;
  /** Waits for the GPU's answer; refused where it is lost or silent. */
  answered(work: Promise<void>): Promise<void>;
}

/** Brings a solver's flow (SI units, cells) onto the GPU. */
export function loadSolver({ device, step, openings, answered }: OpenGpu, solver: FlowSolver): GpuSolver {
  const { mesh, arrays } = solver;
  const count = mesh.nx * mesh.ny;
  const back = READ_BACK * count * BYTES;
  const stateBytes = solver.openings.length * STATE_WIDTH * BYTES;
  const { empty, filled, release } = gpuMemory(device);
  const tiles = activeTiles(mesh, arrays, solver.openings, TILE - 1);
  const tileBuffer = filled(tiles);
  const fixed = filled(packCoefficients(arrays, count));
  const flow = packFlow(arrays, count);
  const copies = [filled(flow), filled(flow)] as const;
  const laid = filled(packOpenings(solver.openings, arrays));
  const state = empty(stateBytes, USE.storage | USE.to | USE.from);
  const inputs = empty(MAX_STEPS * solver.openings.length * BYTES, USE.storage | USE.to);
  const settings = empty(12 * BYTES, USE.uniform | USE.to);
  const slot = back + stateBytes;
  const landing = empty(MAX_MARKS * slot, USE.read | USE.to);
  const group = (of: GpuPipeline, buffers: readonly GpuBuffer[]): Made =>
    device.createBindGroup({
      layout: of.getBindGroupLayout(0),
      entries: buffers.map((buffer, binding) => ({ binding, resource: { buffer } })),
    });
  const groups = ([0, 1] as const).map((from) => ({
    openings: group(openings, [settings, laid, inputs, state, copies[from]]),
    step: group(step, [settings, tileBuffer, fixed, copies[from], copies[1 - from]!]),
  }));
  /** Which copy holds the flow now. */
  let current = 0;

  /** The GPU begins with these steps while the next are put together; those that end at a mark bring the state back into its slot. */
  function submit(steps: number, mark: number | null): void {
    const encoder = device.createCommandEncoder();
    const pass = encoder.beginComputePass();
    for (let n = 0; n < steps; n++) {
      if (solver.openings.length > 0) {
        pass.setPipeline(openings);
        pass.setBindGroup(0, groups[current]!.openings);
        pass.dispatchWorkgroups(solver.openings.length);
      }
      pass.setPipeline(step);
      pass.setBindGroup(0, groups[current]!.step);
      pass.dispatchWorkgroups(tiles.length);
      current = 1 - current;
    }
    pass.end();
    if (mark !== null) {
      encoder.copyBufferToBuffer(copies[current]!, 0, landing, mark * slot, back);
      encoder.copyBufferToBuffer(state, 0, landing, mark * slot + back, stateBytes);
    }
    device.queue.submit([encoder.finish()]);
  }

  function take(came: Float32Array): void {
    [arrays.u, arrays.v, arrays.p].forEach((array, place) => {
      array.set(came.subarray(place * count, (place + 1) * count));
    });
    unpackState(came.subarray(READ_BACK * count), solver.openings);
  }

  return {
    async run(batch, marks = [batch.steps], reached) {
      device.queue.writeBuffer(settings, 0, packSettings(solver, batch));
      device.queue.writeBuffer(inputs, 0, batch.inputs);
      device.queue.writeBuffer(state, 0, packState(solver.openings));
      let done = 0;
      marks.forEach((mark, place) => {
        while (done < mark) {
          const steps = Math.min(mark - done, CHUNK);
          done += steps;
          submit(steps, done === mark ? place : null);
        }
      });
      await answered(landing.mapAsync(USE.read));
      // The processor reads such memory slowly: it is copied in one go.
      const came = new Float32Array(landing.getMappedRange().slice(0, marks.length * slot));
      landing.unmap();
      const states = marks.map((_, place) =>
        came.subarray((place * slot) / BYTES, ((place + 1) * slot) / BYTES),
      );
      if (!staysFinite(present(states.at(-1)))) throw new Error("GPU: the flow did not stay finite");
      states.forEach((each, place) => {
        take(each);
        reached?.(entryAt(marks, place));
      });
    },
    release,
  };
}

/** Every 7th number suffices: a flow that fails does so everywhere within a few steps. */
function staysFinite(came: Float32Array): boolean {
  for (let k = 0; k < came.length; k += 7) if (!Number.isFinite(came[k])) return false;
  return true;
}

/** Buffers that are given back together. */
function gpuMemory(device: GpuDevice) {
  const made: GpuBuffer[] = [];
  const empty = (bytes: number, usage: number): GpuBuffer => {
    const buffer = device.createBuffer({ size: Math.max(16, bytes), usage });
    made.push(buffer);
    return buffer;
  };
  return {
    empty,
    filled(data: Float32Array | Uint32Array): GpuBuffer {
      const buffer = empty(data.byteLength, USE.storage | USE.to | USE.from);
      device.queue.writeBuffer(buffer, 0, data);
      return buffer;
    },
    release() {
      for (const buffer of made) buffer.destroy();
    },
  };
}

/** As `Settings` in step-wgsl.ts. */
function packSettings(
  { mesh, openings }: FlowSolver,
  { settings, soundSpeed, forget }: StepBatch,
): Uint32Array {
  const { dtOverDx, viscosityOverDx, soundSpeedSquared, soundDamping, upstream } = settings;
  const rate = dtOverDx * soundSpeedSquared;
  const words = new Uint32Array(12);
  words.set([mesh.nx, mesh.nx * mesh.ny, openings.length]);
  const reals = [dtOverDx, viscosityOverDx, rate, soundDamping, upstream, soundSpeed, forget];
  new Float32Array(words.buffer).set(reals, 4);
  return words;
}
