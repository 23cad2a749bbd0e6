import { describe, expect, it } from "vitest";
import { boundaryConditions } from "../../src/chain/field-boundary.ts";
import { fluidOf } from "../../src/chain/fluid.ts";
import { FINER, gpuRunner } from "../../src/chain/gpu-runner.ts";
import type { FromField } from "../../src/chain/worker-messages.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { chooseEngine } from "../../src/sim/flow-solver/engine.ts";
import { runFlowSolver } from "../../src/sim/flow-solver/flow-solver.ts";
import type { Gpu } from "../../src/sim/flow-solver/gpu/gpu.ts";
import { holdFlow } from "../../src/sim/flow-solver/openings.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { START } from "../../src/state/scene-state.ts";

const { request } = START;
const circulation = solve(request);
const build = {
  kind: "build",
  geometry: pathwayGeometry(request)!,
  fluid: fluidOf(request),
  cellsAcross: 6,
  soundSteps: 3,
  shapeId: 1,
} as const;

/** A GPU whose steps the processor does with a copy of the flow. `hurt` is called before each batch. */
const standIn = (hurt: (batches: number) => void): Gpu => ({
  load(solver) {
    const { mesh, arrays, openings, settings } = solver;
    // Its kernel works out advection and shear in every step.
    expect(settings.soundSteps).toBe(1);
    const engine = chooseEngine(mesh.nx * mesh.ny, "singles");
    for (const name of Object.keys(arrays) as (keyof typeof arrays)[]) engine.arrays[name].set(arrays[name]);
    const twin = runFlowSolver(
      { ...solver, openings },
      { kinematicViscosity: 3.3e-6 },
      solver.fastest,
      engine,
    );
    let batches = 0;
    return {
      async run({ steps, inputs }, marks = [steps], reached) {
        hurt(++batches);
        let n = 0;
        for (const mark of marks) {
          twin.advance(mark - n, () => {
            openings.forEach((opening, place) => {
              const given = inputs[n * openings.length + place]!;
              if (opening.rule === "velocity") holdFlow(opening, given, engine.arrays);
              else opening.wanted = given;
            });
            n++;
          });
          for (const name of ["u", "v", "p"] as const) arrays[name].set(engine.arrays[name]);
          reached?.(mark);
        }
      },
      release() {},
    };
  },
});

/** A clock that runs by what is asked of it; `cost`: s for each look. */
function begin({
  cost = 0.0005,
  rate = 0.05,
  hurt = () => {},
}: {
  cost?: number;
  rate?: number;
  hurt?: (batches: number) => void;
} = {}) {
  let now = 0;
  const said: FromField[] = [];
  const runner = gpuRunner(
    {
      clock: () => {
        now += cost;
        return now;
      },
      post: (message) => said.push(message),
    },
    standIn(hurt),
  );
  runner.hear(build);
  runner.hear({ kind: "boundary", boundary: boundaryConditions(circulation, circulation, false) });
  runner.hear({ kind: "run", rate });
  return {
    runner,
    now: () => now,
    wait(seconds: number) {
      now += seconds;
    },
    async pass(seconds: number) {
      const end = now + seconds;
      while (now < end) {
        const rest = await runner.work();
        now += rest;
      }
    },
    fates: () => said.flatMap((message) => (message.kind === "gpu" ? [message.status] : [])),
    shapes: () => said.flatMap((message) => (message.kind === "built" ? [message.shape] : [])),
    fields: () => said.flatMap((message) => (message.kind === "field" ? [message.field] : [])),
  };
}

describe("a field on a GPU", () => {
  it("flows on a finer grid", async () => {
    const run = begin();
    await run.pass(1);
    expect(run.fates()).toEqual(["computes"]);
    const [shape] = run.shapes();
    const narrowest = Math.min(...build.geometry.openings.map(({ width }) => width));
    expect(narrowest / shape!.dx).toBeCloseTo(FINER * build.cellsAcross);
    const last = run.fields().pop()!;
    expect(last.time).toBeGreaterThan(0.05);
    expect(Math.max(...last.v)).toBeGreaterThan(0.05);
  });

  it("lost, the processor goes on with the same flow on its own grid", async () => {
    const run = begin({
      hurt: (batches) => {
        if (batches > 20) throw new Error("lost");
      },
    });
    await run.pass(3);
    expect(run.fates()).toEqual(["computes", "lost"]);
    const [fine, coarse] = run.shapes();
    expect(coarse!.dx / fine!.dx).toBeCloseTo(FINER);
    const fields = run.fields();
    const after = fields.findIndex(({ u }) => u.length === coarse!.distance.length);
    const [before, next] = [fields[after - 1]!, fields[after]!];
    expect(next.time).toBeGreaterThan(before.time);
    expect(next.time).toBeLessThan(before.time + 0.1);
    const fastest = ({ v }: { v: Float32Array }) => Math.max(...v);
    expect(fastest(before)).toBeGreaterThan(0.05);
    expect(fastest(next) / fastest(before)).toBeGreaterThan(0.8);
    expect(fields[fields.length - 1]!.time).toBeGreaterThan(next.time);
  });

  it("slower than blood, it leaves the field to the processor after its trial", async () => {
    const run = begin({ cost: 0.05, rate: 1 });
    await run.pass(20);
    expect(run.fates()).toEqual(["computes", "slow"]);
    expect(run.shapes()).toHaveLength(2);
  });

  it("slow only while the page opens, it keeps the field", async () => {
    const run = begin({ rate: 1, hurt: () => run.wait(run.now() < 1.9 ? 0.12 : 0.001) });
    await run.pass(4);
    expect(run.fates()).toEqual(["computes"]);
  });

  it("slow to answer but as fast as is asked, it keeps the field", async () => {
    const run = begin({ cost: 0.035, rate: 0.02 });
    await run.pass(4);
    expect(run.fates()).toEqual(["computes"]);
    expect(run.fields().pop()!.time).toBeGreaterThan(0.06);
  });
});
