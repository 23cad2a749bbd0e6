import { expect, test } from "vitest";
import { buildField } from "../../../src/sim/flow-field/index.ts";
import { planeDistance } from "../../../src/sim/geometry/distance.ts";
import { pathwayGeometry } from "../../../src/sim/geometry/pathways/index.ts";
import { CASES } from "../../../src/sim/parameters/request.ts";
import { seededRandom } from "../../../src/sim/random.ts";
import { advance, fill, TracerCloud, tracerPlane } from "../../../src/sim/tracers/index.ts";
import { distanceAt } from "../../../src/sim/tracers/tracer-plane.ts";
import { ORIGINS } from "../../../src/sim/tracers/tracers.ts";

const geometry = pathwayGeometry({
  kind: "circulation",
  stage: "extracardiac",
  body: CASES.caseA,
  volumeRule: "hold-output",
  set: { fenestrationDiameter: 4, cavalOffset: 6 },
})!;

test("no tracer leaves the lumen in 10,000 frames of the computed field, and they part where the veins' blood does", () => {
  const session = buildField(geometry, { density: 1060, viscosity: 3.3 }, { cellsAcross: 8, depth: "round" });
  session.setBoundary({
    period: 0.5,
    inflow: { ivc: Float32Array.of(20), svc: Float32Array.of(16) },
    split: { left: 0.45, right: 0.55 },
    outflow: { fenestration: Float32Array.of(6) },
  });
  session.advanceSeconds(2.5);
  const field = session.read();
  const shape = session.shape();
  session.release();

  const plane = tracerPlane(shape, geometry.openings);
  const random = seededRandom(21);
  const cloud = new TracerCloud(100);
  const inflow = Object.fromEntries(field.readings.openings.map(({ name, flow }) => [name, flow]));
  const supply = { inflow, hepaticShare: 0.5 };
  fill(cloud, plane, 80, supply, random);
  const distance = planeDistance(geometry, 3 * shape.dx);
  const upper = ORIGINS.indexOf("upper");
  let furthest = -Infinity;
  let entered = 0;
  let fromBelow = 0;
  for (let frame = 0; frame < 10_000; frame++) {
    advance(cloud, plane, { from: field, to: field, blend: 0, seconds: 1 / 60, supply }, random);
    for (let n = 0; n < cloud.count; n++) {
      const x = cloud.position[2 * n]!;
      const y = cloud.position[2 * n + 1]!;
      // Only near the grid's own wall need the exact one be asked.
      if (distanceAt(shape, x, y) > -1.5 * shape.dx) furthest = Math.max(furthest, distance(x, y));
      if (cloud.age[n]! < 1 / 60) {
        entered++;
        if (cloud.origin[n] !== upper) fromBelow++;
      }
    }
  }
  expect(furthest).toBeLessThan(0.2 * shape.dx);
  // What enters does so in the proportion of the flows, 20 to 16.
  expect(entered).toBeGreaterThan(3000);
  expect(fromBelow / entered).toBeGreaterThan(0.53);
  expect(fromBelow / entered).toBeLessThan(0.58);
}, 60_000);
