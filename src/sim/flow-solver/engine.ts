/** Chooses how a solver's steps are done: by the vector kernel where the computer supports it, else by the plain time step. */

import { ARRAYS, type RowSpans, type SolverArrays, viewArrays } from "./array-layout.ts";
import { type Engine, plainEngine } from "./flow-solver.ts";
import { KERNEL_WASM } from "./kernel.wasm.ts";
import { hasVectors } from "./vector-probe.ts";
import { vectorRuns } from "./vector-runs.ts";

/** The part of WebAssembly that is used; sim is compiled without the DOM library that would declare it. */
interface WebAssemblyHost {
  Module: new (bytes: Uint8Array) => object;
  Instance: new (module: object, imports: object) => { readonly exports: Record<string, unknown> };
  Memory: new (size: { initial: number }) => { readonly buffer: ArrayBuffer };
}
const host = (globalThis as { WebAssembly?: WebAssemblyHost }).WebAssembly;

// The compiled module takes plain numbers.
// biome-ignore lint/complexity/useMaxParams: the kernel's own signature
type KernelTimeStep = (
  nx: number,
  ny: number,
  swapped: number,
  dtOverDx: number,
  viscosityOverDx: number,
  soundSpeedSquared: number,
  soundDamping: number,
  upstream: number,
  soundSteps: number,
  part: number,
) => void;

/** Where the compiled module expects arrays, and after them its runs: as in kernel/addresses.ts. */
const BASE = 65536;
const STRIDE = 2097344;
const PAGE = 65536;

/** Names of the kernel's two precisions, which are those of its functions. */
export type Precision = "singles" | "doubles";

/** Whether a grid of `count` cells fits into the vector kernel's memory, and this computer can run it. */
const canVector = (count: number, precision: Precision): boolean =>
  hasVectors() && count * bytesOf(precision) < STRIDE - 2 * PAGE;

const bytesOf = (precision: Precision): number => (precision === "singles" ? 4 : 8);

let compiled: object | undefined;

/**
 * Memory for `count` cells and the time step of the vector kernel.
 * @throws where {@link canVector} is false
 */
export function vectorEngine(count: number, precision: Precision): Engine {
  if (!canVector(count, precision))
    throw new Error(`${count} cells are too many in ${precision}, or no vectors here`);
  const { Memory, Module, Instance } = host!;
  compiled ??= new Module(decodeHex(KERNEL_WASM));
  // Two arrays more hold what the kernel passes from row to row, and its runs.
  const memory = new Memory({ initial: Math.ceil((BASE + (ARRAYS.length + 2) * STRIDE) / PAGE) });
  const { exports } = new Instance(compiled, { env: { memory, abort: () => undefined } });
  const run = exports[precision] as KernelTimeStep;
  const View = precision === "singles" ? Float32Array : Float64Array;
  const arrays = viewArrays((place) => new View(memory.buffer, BASE + place * STRIDE, count));
  const first = arrays.uAhead;
  let laid: RowSpans | undefined;
  return {
    arrays,
    timeStep({ nx, ny }, spans, current: SolverArrays, settings, part) {
      if (laid !== spans) {
        const runs = vectorRuns(nx, ny, current, 16 / View.BYTES_PER_ELEMENT);
        new Int32Array(memory.buffer, BASE + (ARRAYS.length + 1) * STRIDE, runs.length).set(runs);
        laid = spans;
      }
      run(
        nx,
        ny,
        current.uAhead === first ? 0 : 1,
        settings.dtOverDx,
        settings.viscosityOverDx,
        settings.soundSpeedSquared,
        settings.soundDamping,
        settings.upstream,
        settings.soundSteps,
        part,
      );
    },
  };
}

/** Memory and time step for `count` cells: the vector kernel where it can run. */
export const chooseEngine = (count: number, precision: Precision): Engine =>
  canVector(count, precision) ? vectorEngine(count, precision) : plainEngine(count);

const decodeHex = (text: string): Uint8Array =>
  Uint8Array.from({ length: text.length / 2 }, (_, i) => Number.parseInt(text.slice(2 * i, 2 * i + 2), 16));
