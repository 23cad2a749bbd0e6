import { expect, test } from "vitest";
import type { BoundaryConditions } from "../../../src/sim/flow-field/flow-field.ts";
import { buildField } from "../../../src/sim/flow-field/index.ts";
import { crossing } from "./planes.ts";

const fluid = { density: 1060, viscosity: 3.5 };
const boundary: BoundaryConditions = {
  period: 0.4,
  inflow: { lower: Float32Array.from([18, 24, 18, 12]), upper: Float32Array.from([10, 10, 10, 10]) },
  split: { left: 0.4, right: 0.6 },
  outflow: {},
};

test("maps are means over a whole period of the boundary conditions, replaced period by period and not with the beat", () => {
  const session = buildField(crossing(), fluid, { cellsAcross: 8, depth: "round" });
  session.setBoundary(boundary);
  session.advanceSeconds(2.01);
  expect(session.takeMeans()).toBeDefined();
  const samples = 40;
  const first = session.read();
  const own = { speed: new Float64Array(first.u.length), pressure: new Float64Array(first.u.length) };
  let swing = 0;
  for (let n = 0; n < samples; n++) {
    session.advanceSeconds(boundary.period / samples);
    const { u, v, pressure } = session.read();
    for (let k = 0; k < u.length; k++) {
      const speed = Math.hypot(u[k]!, v[k]!);
      own.speed[k]! += speed / samples;
      own.pressure[k]! += pressure[k]! / samples;
      swing = Math.max(swing, Math.abs(speed - Math.hypot(first.u[k]!, first.v[k]!)));
    }
    if (n < samples / 2) expect(session.takeMeans()).toBeUndefined();
  }
  const means = session.takeMeans()!;
  const off = (name: keyof typeof own) =>
    Math.max(...means[name].map((value, k) => Math.abs(value - own[name][k]!)));
  expect(swing).toBeGreaterThan(0.05);
  expect(off("speed")).toBeLessThan(0.1 * swing);
  expect(off("pressure")).toBeLessThan(0.03);
});

test("readings count from the lungs' pressure also where the drive changes no opening's rule", () => {
  const session = buildField(crossing(), fluid, { cellsAcross: 8, depth: "round" });
  session.setBoundary(boundary);
  session.advanceSeconds(1.3);
  const { openings } = session.read().readings;
  const lungs = openings.filter(({ name }) => name in boundary.split);
  expect(lungs).toHaveLength(2);
  expect(Math.abs(lungs.reduce((sum, { pressure }) => sum + pressure, 0))).toBeLessThan(1e-6);
});
