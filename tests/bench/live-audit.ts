/** How soon a live field closes its energy budget after it opens, at rest, in exercise and in strain: `npx tsx tests/bench/live-audit.ts`, some minutes. */
import { boundaryConditions } from "../../src/chain/field-boundary.ts";
import { fluidOf } from "../../src/chain/fluid.ts";
import { RUNGS } from "../../src/chain/grid-ladder.ts";
import { ALONE } from "../../src/chain/pane-set.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { buildField } from "../../src/sim/flow-field/index.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { type CirculationRequest, PATHWAY_STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

/** s of blood time */
const MOMENTS = [2, 4, 6, 8, 12];
/** A chamber that contracts drives blood to and fro, and a plane with rigid walls cannot follow. */
const QUIET = { rhythm: "no-atrial-contraction" } as const;
const STATES: Readonly<Record<string, Partial<CirculationRequest["set"]>>> = {
  rest: {},
  "4 MET": { metabolicEquivalents: 4 },
  "8 MET": { metabolicEquivalents: 8 },
  strain: { breathing: "valsalva" },
};
const chosen = process.env.LUNGWARD_CELLS;

/** As the page does: coarse at first, then on the grid that it begins with, then as its ladder goes. */
function begun(request: CirculationRequest, cellsAcross: number) {
  const circulation = solve(request);
  const geometry = pathwayGeometry(request)!;
  const { lead, soundSteps } = ALONE;
  const field = buildField(geometry, fluidOf(request), {
    ...{ ...lead, soundSteps },
    depth: "round",
  });
  const boundary = boundaryConditions(circulation, circulation, false);
  field.setBoundary(boundary);
  field.reshape(geometry, { cellsAcross: ALONE.cellsAcross, soundSteps });
  const passed = field.advanceSeconds(1);
  const part = field.refine(cellsAcross);
  if (cellsAcross !== ALONE.cellsAcross) while (!part());
  return { field, passed, period: boundary.period };
}

for (const cellsAcross of chosen ? [Number(chosen)] : RUNGS) {
  console.log(
    `${cellsAcross} cells across; energy audit in %, area that turns in %, after ${MOMENTS.join(", ")} s`,
  );
  for (const stage of PATHWAY_STAGES)
    for (const [name, set] of Object.entries(STATES)) {
      const quiet = stage === "atriopulmonary" ? QUIET : {};
      const request = { ...START.request, stage, set: { ...START.request.set, ...quiet, ...set } };
      const { field, passed, period } = begun(request, cellsAcross);
      let now = passed;
      const row = MOMENTS.map((until) => {
        now += field.advanceSeconds(until - now);
        const { auditPercent, recirculatingArea, settled } = field.read().readings;
        const said = `${auditPercent.toFixed(1)} ${(100 * recirculatingArea).toFixed(0)}${settled ? " settled" : ""}`;
        return said.padStart(16);
      });
      console.log(stage.padEnd(16), name.padEnd(8), period.toFixed(2), "s", row.join(" "));
      field.release();
    }
}
