import { describe, expect, it } from "vitest";
import type { FieldReadings, FieldShape, FlowField } from "../../src/sim/flow-field/flow-field.ts";
import { bloodCells, lossMap } from "../../src/sim/flow-field/loss-map.ts";
import { sampleVelocity, streamlines } from "../../src/sim/flow-field/streamlines.ts";

const nx = 121;
const ny = 61;
const dx = 0.5;
const at = (k: number): [number, number] => [(k % nx) * dx - 30, Math.floor(k / nx) * dx - 15];
const grid = { nx, ny, dx, originX: -30, originY: -15 };
const array = (value: (x: number, y: number) => number) =>
  Float32Array.from({ length: nx * ny }, (_, k) => value(...at(k)));
const flow = (u: Float32Array, v: Float32Array): FlowField => ({
  shapeId: 1,
  time: 0,
  u,
  v,
  pressure: new Float32Array(nx * ny),
  readings: {} as FieldReadings,
});

/** A straight channel 20 mm wide, 0.3 m/s in its middle, blowing to the right. */
const channel: FieldShape = { ...grid, distance: array((_, y) => Math.abs(y) - 10), depth: array(() => 1e6) };
const poiseuille = flow(
  array((_, y) => (Math.abs(y) < 10 ? 0.3 * (1 - (y / 10) ** 2) : 0)),
  new Float32Array(nx * ny),
);

describe("streamlines", () => {
  it("run straight along a straight channel, inside it, with the flow, and apart", () => {
    const lines = streamlines(channel, poiseuille, 4);
    expect(lines.length).toBeGreaterThanOrEqual(3);
    for (const { points } of lines) {
      for (let i = 2; i < points.length; i += 2) {
        expect(points[i]!).toBeGreaterThan(points[i - 2]!);
        expect(points[i + 1]!).toBeCloseTo(points[1]!, 6);
        expect(Math.abs(points[i + 1]!)).toBeLessThan(10);
      }
    }
    const heights = lines.map(({ points }) => points[1]!).sort((a, b) => a - b);
    for (let i = 1; i < heights.length; i++) expect(heights[i]! - heights[i - 1]!).toBeGreaterThan(1);
  });

  it("stay on their circle in a swirl to two hundredths of its radius", () => {
    const round: FieldShape = {
      ...grid,
      distance: array((x, y) => Math.hypot(x, y) - 12),
      depth: array(() => 10),
    };
    const swirl = flow(
      array((_, y) => -0.02 * y),
      array((x) => 0.02 * x),
    );
    const lines = streamlines(round, swirl, 4);
    expect(lines.length).toBeGreaterThan(1);
    for (const { points } of lines) {
      const radius = Math.hypot(points[0]!, points[1]!);
      for (let i = 0; i < points.length; i += 2) {
        expect(Math.abs(Math.hypot(points[i]!, points[i + 1]!) / radius - 1)).toBeLessThan(0.02);
      }
    }
  });

  it("end after three turns in an eddy that draws them in", () => {
    const round: FieldShape = {
      ...grid,
      distance: array((x, y) => Math.hypot(x, y) - 12),
      depth: array(() => 10),
    };
    const sink = flow(
      array((x, y) => -0.02 * y - 0.0004 * x),
      array((x, y) => 0.02 * x - 0.0004 * y),
    );
    for (const { points } of streamlines(round, sink, 4)) {
      const angles = Array.from({ length: points.length / 2 }, (_, k) =>
        Math.atan2(points[2 * k + 1]!, points[2 * k]!),
      );
      const turned = angles.slice(1).reduce((sum, angle, k) => sum + Math.sin(angle - angles[k]!), 0);
      expect(Math.abs(turned)).toBeLessThan(6.3 * Math.PI);
    }
  });

  it("read no velocity in the wall or off the grid", () => {
    expect(sampleVelocity(channel, poiseuille, 0, 12)).toEqual([0, 0]);
    expect(sampleVelocity(channel, poiseuille, 500, 0)).toEqual([0, 0]);
    expect(sampleVelocity(channel, poiseuille, 3.3, 0)[0]).toBeCloseTo(0.3, 3);
  });
});

describe("the loss map", () => {
  it("is mu (du/dy)2 in a plane channel", () => {
    const loss = lossMap(channel, poiseuille, 3.5e-3, bloodCells(channel));
    for (const y of [-8, -4, 3, 7]) {
      const k = Math.round((y + 15) / dx) * nx + 60;
      const shear = (2 * 0.3 * y) / 10 / 0.01;
      expect(loss[k]! / (3.5e-3 * shear * shear)).toBeCloseTo(1, 2);
    }
  });

  it("adds the drag of front and back, 20 mu u2/D2, where the lumen is round", () => {
    const uniform = flow(
      array(() => 0.2),
      new Float32Array(nx * ny),
    );
    const round = { ...channel, depth: array(() => (Math.PI * 20) / 4) };
    const loss = lossMap(round, uniform, 3.5e-3, bloodCells(round));
    expect(loss[30 * nx + 60]!).toBeCloseTo((20 * 3.5e-3 * 0.04) / 0.02 ** 2, 3);
  });
});
