/** What gpu.test.ts has computed on a GPU, in a process of its own: the loader looks for the driver when a process starts. Prints one line of JSON. */
import { create, globals } from "webgpu";
import { applyBoundary } from "../../../src/sim/flow-field/boundary-conditions.ts";
import { buildMesh } from "../../../src/sim/flow-solver/cut-cell-mesh.ts";
import { vectorEngine } from "../../../src/sim/flow-solver/engine.ts";
import { buildFlowSolver, plainEngine } from "../../../src/sim/flow-solver/flow-solver.ts";
import { openGpu } from "../../../src/sim/flow-solver/gpu/gpu.ts";
import { nextBatch, noteFlow } from "../../../src/sim/flow-solver/step-batch.ts";
import { apart, DRIVE, onGpu, PLANES, solverIn } from "./planes.ts";

const STEPS = 104;
const SILENT = 60_000;

Object.assign(globalThis, globals);
// Collected as rubbish it would take the GPU with it.
const api = create([]);
const open = async () => {
  const adapter = await api.requestAdapter();
  if (!adapter) throw new Error("no GPU, not even in software");
  const device = await adapter.requestDevice();
  return { adapter, device, gpu: await openGpu(device, SILENT) };
};
const singles = (count: number) => vectorEngine(count, "singles");
const { adapter, device, gpu } = await open();

const agreement: Record<string, number> = {};
for (const [name, geometry] of PLANES) {
  const plain = solverIn(geometry, 2, plainEngine);
  plain.advance(STEPS, (time) => applyBoundary(plain, DRIVE, time));
  const there = solverIn(geometry, 2, singles);
  await onGpu(gpu, there, STEPS);
  agreement[name] = apart(plain.arrays, there.arrays);
  // What the openings know comes back too.
  there.openings.forEach(({ target, shift, slowSpeed }, n) => {
    const known = plain.openings[n]!;
    agreement[`${name}, opening ${n}`] = Math.max(
      Math.abs(target - known.target),
      Math.abs(shift - known.shift),
      Math.abs(slowSpeed - known.slowSpeed),
    );
  });
}

/** A velocity of 1 that a slope of pressure far below its rounding pushes 1024 times. */
async function slowPush(): Promise<number> {
  const corners = [
    [0, 0],
    [16, 0],
    [16, 16],
    [0, 16],
  ] as const;
  const geometry = { open: [{ polygon: { points: corners } }], solid: [], openings: [] };
  const choice = { dx: 1, depth: "uniform" } as const;
  const mesh = buildMesh(geometry, choice);
  const plane = { geometry, mesh, choice, rules: [] };
  const solver = buildFlowSolver(plane, { kinematicViscosity: 0 }, 1, singles(mesh.nx * mesh.ny));
  const { arrays } = solver;
  const middle = 10 * mesh.nx + 10;
  arrays.u[middle] = 1;
  for (let k = 0; k < arrays.p.length; k++) arrays.p[k] = arrays.pAhead[k] = -(k % mesh.nx) * 2 ** -27;
  // Only one velocity is free, so nothing but the slope moves it.
  arrays.uInverse.forEach((_, k) => {
    if (k !== middle) arrays.uInverse[k] = 0;
    arrays.vInverse[k] = 0;
  });
  const settings = {
    dtOverDx: 1,
    viscosityOverDx: 0,
    soundSpeedSquared: 0,
    soundSteps: 1,
    soundDamping: 0,
    upstream: 0,
  };
  const still = { settings, soundSpeed: 0, forget: 0, inputs: new Float32Array(0) };
  await gpu.load(solver).run({ ...still, steps: 1024 });
  return arrays.u[middle]!;
}

/** A GPU lost between two batches: the second is refused, and the solver stays as the first left it. */
async function loss() {
  const other = await open();
  const solver = solverIn(PLANES[0]![1], 3, singles);
  const flow = other.gpu.load(solver);
  const batch = () => nextBatch(solver, 8, (time) => applyBoundary(solver, DRIVE, time, noteFlow));
  await flow.run(batch());
  const before = Float32Array.from(solver.arrays.u);
  other.device.destroy();
  const second = batch();
  const said = await flow.run(second).then(
    () => "done",
    (error) => String(error),
  );
  const held = new Set([...solver.openings.flatMap((opening) => [...opening.held.u])]);
  return { said, same: before.every((value, k) => held.has(k) || value === solver.arrays.u[k]) };
}

console.log(
  JSON.stringify({ name: adapter.info.description, agreement, pushed: await slowPush(), loss: await loss() }),
);
device.destroy();
process.exit(0);
