/**
 * How fast the flow is computed on a GPU, without a browser, and how far it and the vector kernel are from the plain time step's.
 * Run: npx tsx tests/bench/gpu-speed.ts
 */
import { create, globals } from "webgpu";
import { applyBoundary } from "../../src/sim/flow-field/boundary-conditions.ts";
import { plainEngine } from "../../src/sim/flow-solver/flow-solver.ts";
import { openGpu } from "../../src/sim/flow-solver/gpu/gpu.ts";
import { apart, DRIVE, onGpu, PLANES, solverIn } from "../sim/flow-solver/planes.ts";
import { gpuRates, singles } from "./gpu-rates.ts";

Object.assign(globalThis, globals);
// Collected as rubbish it would take the GPU with it.
const api = create([]);
const adapter = await api.requestAdapter({ powerPreference: "high-performance" });
if (!adapter) throw new Error("no GPU is to be had through Vulkan, Metal or Direct3D");
const { vendor, architecture, description } = adapter.info;
console.log(`${vendor} ${architecture} ${description}`);
const gpu = await openGpu(await adapter.requestDevice(), 60_000);
const steps = Number(process.env.LUNGWARD_STEPS ?? 500);
for (const [name, geometry] of PLANES) {
  const plain = solverIn(geometry, 1.4, plainEngine);
  plain.advance(steps, (time) => applyBoundary(plain, DRIVE, time));
  const vectors = solverIn(geometry, 1.4, singles);
  vectors.advance(steps, (time) => applyBoundary(vectors, DRIVE, time));
  const there = solverIn(geometry, 1.4, singles);
  await onGpu(gpu, there, steps);
  const found = [there, vectors].map(({ arrays }) => apart(plain.arrays, arrays).toExponential(1));
  console.log(`${name}: after ${steps} steps the GPU is within ${found[0]}, the vector kernel ${found[1]}`);
}
for await (const line of gpuRates(gpu)) console.log(line);
process.exit(0);
