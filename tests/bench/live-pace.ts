/**
 * Seconds of blood that one core computes in a second, over a whole cycle of each pathway at rest, with an advection in each step of sound and in
 * every third: `npx tsx tests/bench/live-pace.ts`, some minutes. Both take turns in short slices, of which in each twelfth of the repeat
 * the fastest count (the quickest of twelve), so that other work on the machine does not. Readings are left out.
 */
import { boundaryConditions } from "../../src/chain/field-boundary.ts";
import { fluidOf } from "../../src/chain/fluid.ts";
import { RUNGS } from "../../src/chain/grid-ladder.ts";
import { ALONE } from "../../src/chain/pane-set.ts";
import { entryAt } from "../../src/sim/checked/present.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { buildField, type FieldSession } from "../../src/sim/flow-field/index.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { PATHWAY_STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

const PARTS = 12;
/** ms of a slice */
const SLICE = 4;

/** s of wall clock for a second of blood over the coming `seconds` of blood */
function cost(field: FieldSession, seconds: number): number {
  const { solver, drive } = field.live();
  const costs: number[] = [];
  const until = solver.time + seconds;
  for (let steps = 5; solver.time < until; ) {
    const [began, from] = [performance.now(), solver.time];
    solver.advance(steps, drive);
    const spent = performance.now() - began;
    costs.push(spent / 1000 / (solver.time - from));
    steps = Math.max(3, Math.min(50, Math.round((steps * SLICE) / spent)));
  }
  return entryAt(
    costs.sort((a, b) => a - b),
    Math.floor(costs.length / 12),
  );
}

for (const stage of PATHWAY_STAGES) {
  const request = { ...START.request, stage };
  const circulation = solve(request);
  const geometry = pathwayGeometry(request)!;
  const boundary = boundaryConditions(circulation, circulation, false);
  for (const cellsAcross of RUNGS) {
    const runs = ([1, 3] as const).map((soundSteps) => {
      const field = buildField(geometry, fluidOf(request), {
        ...{ ...ALONE.lead, soundSteps: ALONE.soundSteps },
        depth: "round",
      });
      field.setBoundary(boundary);
      field.reshape(geometry, { cellsAcross, soundSteps });
      return { field, sum: 0 };
    });
    for (let part = 0; part < PARTS; part++)
      for (const run of runs) run.sum += cost(run.field, boundary.period / PARTS);
    const [single, shared] = runs.map(({ sum }) => PARTS / sum) as [number, number];
    console.log(
      `${stage.padEnd(15)} ${cellsAcross} cells: ${single.toFixed(2)} and ${shared.toFixed(2)} s, ${(shared / single).toFixed(2)} times`,
    );
  }
}
