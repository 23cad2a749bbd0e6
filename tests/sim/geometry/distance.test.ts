import { expect, test } from "vitest";
import { planeDistance } from "../../../src/sim/geometry/distance.ts";
import { pathwayGeometry } from "../../../src/sim/geometry/pathways/index.ts";
import { PATHWAY_STAGES } from "../../../src/sim/parameters/request.ts";
import { START } from "../../../src/state/scene-state.ts";

test.each(PATHWAY_STAGES)("%s: a shape that is passed over is never the nearest one", (stage) => {
  const { open, bounds } = pathwayGeometry({ ...START.request, stage })!;
  const bare = { solid: [], openings: [] };
  const distance = planeDistance({ ...bare, open }, 0);
  const each = open.map((shape) => planeDistance({ ...bare, open: [shape] }, 0));
  expect(each.length).toBeGreaterThan(1);
  const [left, bottom, right, top] = bounds;
  for (let x = left - 20; x <= right + 20; x += 1.7)
    for (let y = bottom - 20; y <= top + 20; y += 1.7)
      expect(distance(x, y), `${x} ${y}`).toBe(Math.min(...each.map((one) => one(x, y))));
});
