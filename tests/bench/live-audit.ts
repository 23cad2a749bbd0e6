/** How soon a live field closes its energy budget after it opens, at rest, in exercise and in strain: `npx tsx tests/bench/live-audit.ts`, some minutes. */
import { boundaryConditions } from "../../src/chain/field-boundary.ts";
import { fluidOf } from "../../src/chain/fluid.ts";
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
const cellsAcross = Number(process.env.LUNGWARD_CELLS ?? ALONE.cellsAcross);

console.log(`${cellsAcross} cells across; energy audit in % after ${MOMENTS.join(", ")} s`);
for (const stage of PATHWAY_STAGES)
  for (const [name, set] of Object.entries(STATES)) {
    const quiet = stage === "atriopulmonary" ? QUIET : {};
    const request = { ...START.request, stage, set: { ...START.request.set, ...quiet, ...set } };
    const circulation = solve(request);
    const geometry = pathwayGeometry(request)!;
    // As the page does: coarse at first, then as fine as is asked.
    const { lead } = ALONE;
    const field = buildField(geometry, fluidOf(request), {
      ...ALONE,
      cellsAcross: lead.cellsAcross,
      depth: "round",
    });
    const boundary = boundaryConditions(circulation, circulation, false);
    field.setBoundary(boundary);
    field.reshape(geometry, { ...ALONE, cellsAcross });
    let now = 0;
    const row = MOMENTS.map((until) => {
      now += field.advanceSeconds(until - now);
      const { auditPercent, settled } = field.read().readings;
      return `${auditPercent.toFixed(1)}${settled ? " settled" : ""}`.padStart(14);
    });
    console.log(stage.padEnd(16), name.padEnd(8), boundary.period.toFixed(2), "s", row.join(" "));
    field.release();
  }
