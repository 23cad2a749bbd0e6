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
    solid: [{ disc: { centre: [200, 200], radius: 50 } }],
    openings: [
      opening("in", [0, 205], -1, 410, { velocity: mean }),
      opening("out", [2200, 205], 1, 410, { pressure: 0 }),
    ],
  };
  const viscosity = (mean * 0.1) / reynolds;
  const settled = solve(geometry, {
    viscosity,
    cellsAcross: cells,
    dx: 410 / cells,
    tolerance: 1e-6,
    enough,
  });
  const { mesh, arrays } = settled.solver;
  const { nx, ny, dx, originX, originY, west, south } = mesh;
  let drag = 0;
  let lift = 0;
  const near = (x: number, y: number) => Math.hypot(x - 200, y - 200) < 50 + 4 * dx;
  for (let j = 2; j < ny - 2; j++)
    for (let i = 2; i < nx - 2; i++) {
      const k = j * nx + i;
      if (!near(originX + i * dx, originY + j * dx)) continue;
      // Pressure on the wall piece in the cell, friction on each face beside it, and shear on faces that the wall closes.
      drag += (arrays.p[k]! * (west[k]! - west[k + 1]!) * dx) / 1000;
      lift += (arrays.p[k]! * (south[k]! - south[k + nx]!) * dx) / 1000;
      if (west[k]! > 0)
        drag +=
          viscosity *
          arrays.u[k]! *
          (arrays.uFriction[k]! / arrays.uInverse[k]! +
            shut(west, k + 1, arrays.uThroughCell[k]!) +
            shut(west, k - 1, arrays.uThroughCell[k - 1]!) +
            shut(west, k + nx, arrays.uThroughCorner[k + nx]!) +
            shut(west, k - nx, arrays.uThroughCorner[k]!));
      if (south[k]! > 0)
        lift +=
          viscosity *
          arrays.v[k]! *
          (arrays.vFriction[k]! / arrays.vInverse[k]! +
            shut(south, k + nx, arrays.vThroughCell[k]!) +
            shut(south, k - nx, arrays.vThroughCell[k - nx]!) +
            shut(south, k + 1, arrays.vThroughCorner[k + 1]!) +
            shut(south, k - 1, arrays.vThroughCorner[k]!));
    }
  const scale = 2 / (mean * mean * 0.1);
  return {
    ...runOf(settled),
    dragCoefficient: scale * drag,
    liftCoefficient: scale * lift,
    pressureDifference: wallPressure(settled.solver, 150, -1) - wallPressure(settled.solver, 250, 1),
  };
}

/** A link whose other end the wall has closed. */
const shut = (open: Float64Array, other: number, link: number): number => (open[other] === 0 ? link : 0);

/** Pressure on the cylinder at (x, 200), extrapolated from whole cells further out. */
function wallPressure({ mesh, arrays }: FlowSolver, x: number, outward: 1 | -1): number {
  const { nx, dx, originX, originY } = mesh;
  const sample = (at: number): number => {
    const fx = (at - originX) / dx;
    const fy = (200 - originY) / dx;
    const i = Math.floor(fx);
    const j = Math.floor(fy);
    const [a, b] = [fx - i, fy - j];
    const p = (m: number, n: number) => arrays.p[(j + n) * nx + i + m]!;
    return (1 - b) * ((1 - a) * p(0, 0) + a * p(1, 0)) + b * ((1 - a) * p(0, 1) + a * p(1, 1));
  };
  // Parabola through three points 1, 2 and 3 cells out: the nearest whose neighbours are blood, for the pressure has a cusp there.
  const out = (cells: number) => sample(x + cells * dx * outward);
  return 3 * out(1) - 3 * out(2) + out(3);
}
