import { describe, expect, test } from "vitest";
import type { BoundaryConditions } from "../../../src/sim/flow-field/flow-field.ts";
import { buildField } from "../../../src/sim/flow-field/index.ts";
import type { FlowGeometry } from "../../../src/sim/geometry/geometry.ts";
import { crossing } from "./planes.ts";

const fluid = { density: 1060, viscosity: 3.5 };
const boundary: BoundaryConditions = {
  period: 0.4,
  inflow: { lower: Float32Array.from([18, 24, 18, 12]), upper: Float32Array.from([10, 10, 10, 10]) },
  split: { left: 0.4, right: 0.6 },
  outflow: {},
};

describe("A field session", () => {
  const session = buildField(crossing(), fluid, { cellsAcross: 10, depth: "round" });
  session.setBoundary(boundary);
  session.advanceSeconds(1.7);
  const before = session.read();

  test("carries the drive's flow in and splits what leaves as asked, within 2 % of inflow", () => {
    const flow = Object.fromEntries(before.readings.openings.map(({ name, flow: q }) => [name, q]));
    expect(Math.abs(flow.lower! - 18)).toBeLessThan(0.4);
    expect(Math.abs(flow.upper! - 10)).toBeLessThan(0.1);
    expect(Math.abs(flow.left! + 0.4 * 28)).toBeLessThan(0.6);
    expect(Math.abs(flow.right! + 0.6 * 28)).toBeLessThan(0.6);
    expect(Math.abs(before.readings.massBalancePercent)).toBeLessThan(1);
  });

  test("knows where each inflow goes", () => {
    for (const from of ["lower", "upper"]) {
      const parts = Object.values(before.readings.shares[from]!);
      expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 6);
    }
  });

  test("continues through moved walls: no jump, no lost mass", () => {
    const speedAt = (
      field: typeof before,
      geometry: FlowGeometry,
      grid: ReturnType<typeof session.shape>,
    ) => {
      const [x, y] = geometry.openings[0]!.centre;
      const i = Math.round((x - grid.originX) / grid.dx);
      const j = Math.round((y + 15 - grid.originY) / grid.dx);
      return field.v[j * grid.nx + i]!;
    };
    const was = speedAt(before, crossing(), session.shape());
    const energy = (field: typeof before, { depth }: ReturnType<typeof session.shape>) =>
      field.u.reduce((sum, u, k) => sum + depth[k]! * (u ** 2 + field.v[k]! ** 2), 0);
    const had = energy(before, session.shape());
    session.reshape(crossing(3.7));
    const moved = session.read();
    expect(Math.abs(energy(moved, session.shape()) / had - 1)).toBeLessThan(0.1);
    session.advance(40);
    const after = session.read();
    const inflow = 28;
    const flows = after.readings.openings.map(({ flow }) => flow);
    expect(Math.abs(flows[0]! + flows[1]! - inflow)).toBeLessThan(0.3 * inflow);
    // At once as much leaves as enters.
    expect(Math.abs(flows.reduce((sum, flow) => sum + flow, 0))).toBeLessThan(0.1 * inflow);
    expect(after.shapeId).toBe(before.shapeId + 1);
    expect(Math.abs(speedAt(after, crossing(3.7), session.shape()) - was)).toBeLessThan(0.15 * Math.abs(was));
    session.advanceSeconds(0.9);
    expect(Math.abs(session.read().readings.massBalancePercent)).toBeLessThan(1);
    expect(session.read().u.every(Number.isFinite)).toBe(true);
  });
});

describe("Blood that comes back in through an outlet", () => {
  /** mL/s out through the left: it turns about twice in a period. */
  const back: BoundaryConditions = {
    period: 0.8,
    inflow: { lower: Float32Array.of(12), upper: Float32Array.of(6) },
    split: {},
    outflow: { left: Float32Array.from([8, 8, -6, -6]) },
  };
  const session = buildField(crossing(), fluid, { cellsAcross: 8, depth: "round" });
  session.setBoundary(back);
  session.advanceSeconds(1.6);

  test("follows what is asked both ways, stays finite and loses no mass", () => {
    const flowAt = () => {
      const { nx, dx, originX, originY, depth } = session.shape();
      const { u } = session.read();
      const i = Math.round((-34 - originX) / dx);
      let flow = 0;
      for (let j = 0; j < u.length / nx; j++)
        if (Math.abs(originY + j * dx) < 8) flow -= u[j * nx + i]! * depth[j * nx + i]! * dx;
      return flow;
    };
    const seen: number[] = [];
    for (let n = 0; n < 4; n++) {
      session.advanceSeconds(0.2);
      seen.push(flowAt());
    }
    // At the end of each level and of each change between them.
    [8, -6, -6, 8].forEach((asked, n) => {
      expect(Math.abs(seen[n]! - asked), `${n}`).toBeLessThan(2.5);
    });
    const { readings, u } = session.read();
    expect(u.every(Number.isFinite)).toBe(true);
    expect(Math.abs(readings.massBalancePercent)).toBeLessThan(1);
  });
});
