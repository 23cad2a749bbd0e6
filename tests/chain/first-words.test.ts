/** What is said to a worker in its name arrives as it was said. */
import { expect, test } from "vitest";
import { asName, fromName } from "../../src/chain/first-words.ts";
import { fluidOf } from "../../src/chain/fluid.ts";
import { openingForeseen, openingStart } from "../../src/chain/opening-start.ts";
import { ALONE } from "../../src/chain/pane-set.ts";
import type { ToCirculation, ToField } from "../../src/chain/worker-messages.ts";
import { present } from "../../src/sim/checked/present.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { PATHWAY_STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

test("a question and the orders of every pathway's field arrive as they were said", () => {
  const from = present(openingStart(START.request));
  const question: ToCirculation = { kind: "solve", id: 1, request: START.request, from };
  expect(fromName(asName([question]))).toStrictEqual([question]);
  for (const stage of PATHWAY_STAGES) {
    const request = { ...START.request, stage };
    const geometry = present(pathwayGeometry(request));
    const orders: ToField[] = [
      { kind: "build", shapeId: 1, geometry, fluid: fluidOf(request), ...ALONE },
      { kind: "run", rate: 0, seen: 0 },
      { kind: "boundary", boundary: present(openingForeseen(START.request)).boundary },
    ];
    const name = asName(orders);
    // Nothing in them is lost, as NaN would be; the sign of a zero may be.
    expect(name).not.toContain("null");
    expect(asName(fromName(name))).toBe(name);
    expect(fromName<ToField>(name).at(-1)).toStrictEqual(orders.at(-1));
  }
  expect(fromName("")).toEqual([]);
});
