import type { FieldShape, FlowField } from "../../../src/sim/flow-field/flow-field.ts";
import { planeDistance } from "../../../src/sim/geometry/distance.ts";
import type { FlowGeometry } from "../../../src/sim/geometry/geometry.ts";

/** A grid over the geometry as the field's worker sends it, depth 1. */
export function shapeOf(
  geometry: FlowGeometry,
  bounds: readonly [number, number, number, number],
  dx: number,
): FieldShape {
  const [left, bottom, right, top] = bounds;
  const nx = Math.ceil((right - left) / dx) + 9;
  const ny = Math.ceil((top - bottom) / dx) + 9;
  const originX = left - 4 * dx;
  const originY = bottom - 4 * dx;
  const gap = planeDistance(geometry, 3 * dx);
  const distance = new Float32Array(nx * ny);
  for (let j = 0, k = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++, k++) distance[k] = gap(originX + i * dx, originY + j * dx);
  }
  return { nx, ny, dx, originX, originY, distance, depth: new Float32Array(nx * ny).fill(1) };
}

/** A field from a rule (m/s at mm), still in the wall as a flow solver has it. */
export function fieldOf(
  shape: FieldShape,
  rule: (x: number, y: number) => readonly [number, number],
): FlowField {
  const { nx, ny, dx, originX, originY, distance } = shape;
  const u = new Float32Array(nx * ny);
  const v = new Float32Array(nx * ny);
  for (let j = 0, k = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++, k++) {
      if (distance[k]! >= 0) continue;
      [u[k], v[k]] = rule(originX + i * dx, originY + j * dx);
    }
  }
  const readings = {
    openings: [],
    powerLoss: 0,
    dissipation: 0,
    auditPercent: 0,
    massBalancePercent: 0,
    shares: {},
    recirculatingArea: 0,
    settled: true,
    pace: 1,
    cellUpdatesPerSecond: 0,
  };
  return { shapeId: 0, time: 0, u, v, pressure: new Float32Array(nx * ny), readings };
}
