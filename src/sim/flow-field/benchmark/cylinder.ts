/** Flow past a cylinder in a channel (Schaefer & Turek 1996). */

import type { FlowSolver } from "../../flow-solver/flow-solver.ts";
import type { FlowGeometry } from "../../geometry/geometry.ts";
import { box, opening, type Run, runOf, solve } from "./channel.ts";

/** Coefficients (dimensionless) over 1/2 rho U2 D, U the mean velocity and D the diameter. */
export interface CylinderAnswer extends Run {
  readonly dragCoefficient: number;
  readonly liftCoefficient: number;
  /** Pa, front less back, with the table's density 1 kg/m3 */
  readonly pressureDifference: number;
}

/**
 * Case 2D-1 of Schaefer & Turek (1996): channel 2.2 m x 0.41 m, cylinder of 0.1 m at (0.2, 0.2), mean 0.2 m/s; the viscosity follows from the
 * Reynolds number (20 in the table).
 * @param cells count across the channel's height
 */
export function solveCylinder(reynolds: number, cells: number, enough?: () => boolean): CylinderAnswer {
  const mean = 0.2;
  const geometry: FlowGeometry = {
    open: [box(0, 0, 2200, 410)],
    solid: [{ disc: { centre: [CENTRE, CENTRE], radius: RADIUS } }],
    openings: [
      opening("in", [0, 205], -1, 410, { velocity: mean }),
      opening("out", [2200, 205], 1, 410, { pressure: 0 }),
    ],
  };
  const viscosity = (mean * DIAMETER) / reynolds;
  const settled = solve(geometry, {
    viscosity,
    cellsAcross: cells,
    dx: 410 / cells,
    tolerance: 1e-6,
    accelerated: true,
    enough,
  });
  const wall = wallForces(settled.solver, viscosity);
  const scale = 2 / (mean * mean * DIAMETER);
  return {
    ...runOf(settled),
    dragCoefficient: scale * sum(wall.map(({ x }) => x)),
    liftCoefficient: scale * sum(wall.map(({ y }) => y)),
    pressureDifference:
      stagnationPressure(settled.solver.mesh, wall, -1) - stagnationPressure(settled.solver.mesh, wall, 1),
  };
}

/** mm, as all lengths of a geometry */
const CENTRE = 200;
const RADIUS = 50;
/** m */
const DIAMETER = (2 * RADIUS) / 1000;

/** Force of the blood on the cylinder through one cell and its west and south faces, N per metre of depth; where that cell is. */
interface WallForce {
  readonly row: number;
  /** -1 in front of the middle, 1 behind */
  readonly side: -1 | 1;
  readonly x: number;
  readonly y: number;
}

/** Pressure on the wall piece in each cell, friction on each face beside it, and shear on faces that the wall closes. */
function wallForces({ mesh, arrays: a }: FlowSolver, viscosity: number): WallForce[] {
  const { nx, ny, dx, originX, originY, west, south } = mesh;
  const forces: WallForce[] = [];
  for (let row = 2; row < ny - 2; row++)
    for (let i = 2; i < nx - 2; i++) {
      const k = row * nx + i;
      const aside = originX + i * dx - CENTRE;
      if (Math.hypot(aside, originY + row * dx - CENTRE) >= RADIUS + 4 * dx) continue;
      const x =
        west[k]! > 0
          ? a.u[k]! *
            (a.uFriction[k]! / a.uInverse[k]! +
              shut(west, k + 1, a.uThroughCell[k]!) +
              shut(west, k - 1, a.uThroughCell[k - 1]!) +
              shut(west, k + nx, a.uThroughCorner[k + nx]!) +
              shut(west, k - nx, a.uThroughCorner[k]!))
          : 0;
      const y =
        south[k]! > 0
          ? a.v[k]! *
            (a.vFriction[k]! / a.vInverse[k]! +
              shut(south, k + nx, a.vThroughCell[k]!) +
              shut(south, k - nx, a.vThroughCell[k - nx]!) +
              shut(south, k + 1, a.vThroughCorner[k + 1]!) +
              shut(south, k - 1, a.vThroughCorner[k]!))
          : 0;
      forces.push({
        row,
        side: aside < 0 ? -1 : 1,
        x: (a.p[k]! * (west[k]! - west[k + 1]!) * dx) / 1000 + viscosity * x,
        y: (a.p[k]! * (south[k]! - south[k + nx]!) * dx) / 1000 + viscosity * y,
      });
    }
  return forces;
}

/** A link whose other end the wall has closed. */
const shut = (open: Float64Array, other: number, link: number): number => (open[other] === 0 ? link : 0);

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/**
 * Pressure (Pa) where the wall faces straight into the channel: there friction along it vanishes and the wall bears nothing but pressure. Read from the force on
 * each row of cells, for the pressure in a cut cell is not the wall's: the last face hands the rest over as friction. A cubic through four rows.
 */
function stagnationPressure(
  { dx, originY }: FlowSolver["mesh"],
  wall: readonly WallForce[],
  side: -1 | 1,
): number {
  const middle = (CENTRE - originY) / dx;
  const rows = [-1, 0, 1, 2].map((n) => Math.floor(middle) + n);
  const pressure = (row: number) =>
    (-side * 1000 * sum(wall.filter((each) => each.row === row && each.side === side).map(({ x }) => x))) /
    dx;
  const weight = (row: number) =>
    rows.reduce(
      (product, other) => (other === row ? product : (product * (middle - other)) / (row - other)),
      1,
    );
  return sum(rows.map((row) => weight(row) * pressure(row)));
}
