/** A share of the area that turns is said so that it does not depend on how fine a grid the computer manages. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { boundaryConditions } from "../../src/chain/field-boundary.ts";
import { fluidOf } from "../../src/chain/fluid.ts";
import { RUNGS } from "../../src/chain/grid-ladder.ts";
import { ALONE } from "../../src/chain/pane-set.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { buildField } from "../../src/sim/flow-field/index.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { type CirculationRequest, PATHWAY_STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";
import { turningClass } from "../../src/ui/pathway-sentences.ts";

type Stage = (typeof PATHWAY_STAGES)[number];

/** s of blood, some beats after the start */
const SECONDS = 4;

/** The share on a grid, begun as the page begins it. */
function turningOn(
  cellsAcross: number,
  stage: Stage,
  set: CirculationRequest["set"] = {},
  volumeRule = START.request.volumeRule,
): number {
  const request = { ...START.request, stage, volumeRule, set: { ...START.request.set, ...set } };
  const circulation = solve(request);
  const geometry = pathwayGeometry(request)!;
  const { lead, soundSteps } = ALONE;
  const field = buildField(geometry, fluidOf(request), { ...lead, soundSteps, depth: "round" });
  field.setBoundary(boundaryConditions(circulation, circulation, false));
  field.reshape(geometry, { cellsAcross, soundSteps });
  field.advanceSeconds(SECONDS);
  const { recirculatingArea } = field.read().readings;
  field.release();
  return recirculatingArea;
}

const long = process.env.LUNGWARD_LONG === "1";
const grids = long ? RUNGS : RUNGS.slice(0, 2);
const settings: readonly CirculationRequest["set"][] = long
  ? [
      {},
      { metabolicEquivalents: 4 },
      { metabolicEquivalents: 8 },
      { chamberDiameter: 32 },
      { chamberDiameter: 60 },
      { cavalOffset: 8 },
      { cavalOffset: -8 },
    ]
  : [{}];

test(
  "it is of one class on every grid",
  () => {
    for (const stage of PATHWAY_STAGES) {
      const found: number[] = [];
      for (const set of stage === "atriopulmonary" ? settings : settings.slice(0, 1))
        for (const cells of grids) {
          const share = turningOn(cells, stage, set);
          found.push(Math.round(100 * share));
          expect(turningClass(share), `${stage} ${JSON.stringify(set)} ${cells}`).toBe("some");
        }
      console.log(`${stage}: ${Math.min(...found)} to ${Math.max(...found)} %`);
    }
  },
  (long ? 60 : 3) * 60_000,
);

test(
  "the race's own words hold on every grid",
  () => {
    const race = readFileSync("lessons/en/03-pathways.md", "utf8");
    expect(race).toContain(
      "Closed eddies take up about a quarter of the chamber's lumen, and about an eighth of the tunnel's and of the tube's.",
    );
    expect(race).toContain("  volumeRule: hold-output\n  set: { heldOutputIndex: 2.9 }\n");
    expect(race).not.toContain("recirculatingArea");
    for (const stage of PATHWAY_STAGES)
      for (const cells of long ? RUNGS : RUNGS.slice(0, 1)) {
        const whole = stage === "atriopulmonary" ? 4 : 8;
        const said = turningOn(cells, stage, { heldOutputIndex: 2.9 }, "hold-output") * whole;
        expect(said, `${stage} ${cells}`).toBeGreaterThan(0.75);
        expect(said, `${stage} ${cells}`).toBeLessThan(1.25);
      }
  },
  (long ? 60 : 3) * 60_000,
);

test("the classes meet at a tenth, a third and two thirds", () => {
  const parts = [0, 0.09, 0.11, 0.32, 0.34, 0.66, 0.67, 1];
  expect(parts.map(turningClass)).toEqual([
    "hardly",
    "hardly",
    "some",
    "some",
    "much",
    "much",
    "most",
    "most",
  ]);
});
