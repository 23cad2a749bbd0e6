/** Transfers the flow of one solver to another with new walls, so that nothing jumps when a handle is dragged. */

import type { Reals } from "../flow-solver/array-layout.ts";
import type { CutCellMesh } from "../flow-solver/cut-cell-mesh.ts";
import type { FlowSolver } from "../flow-solver/flow-solver.ts";
import { bilinear } from "./bilinear.ts";

/** Bilinear sample of an array whose entry (0,0) lies at (originX, originY), mm; 0 outside. */
function sampler(mesh: CutCellMesh, values: Reals, shiftX: number, shiftY: number) {
  const { nx, ny, dx, originX, originY } = mesh;
  return (x: number, y: number): number => {
    const fx = (x - originX) / dx - shiftX;
    const fy = (y - originY) / dx - shiftY;
    return fx >= 0 && fy >= 0 && fx < nx - 1 && fy < ny - 1 ? bilinear(values, nx, fx, fy) : 0;
  };
}

/** Values at the cell centres of one mesh, at those of another. */
export function resample(from: CutCellMesh, to: CutCellMesh, values: Reals): Float32Array {
  const at = sampler(from, values, 0, 0);
  return Float32Array.from({ length: to.nx * to.ny }, (_, k) =>
    at(to.originX + (k % to.nx) * to.dx, to.originY + Math.floor(k / to.nx) * to.dx),
  );
}

/** Interpolates velocities and pressures of `from` to every free face and cell of `to`, in solver units; openings keep their pressure by name. */
export function remap(from: FlowSolver, to: FlowSolver): void {
  const { nx, ny, dx, originX, originY } = to.mesh;
  const a = to.arrays;
  const u = sampler(from.mesh, from.arrays.u, -0.5, 0);
  const v = sampler(from.mesh, from.arrays.v, 0, -0.5);
  const p = sampler(from.mesh, from.arrays.p, 0, 0);
  for (let j = 1; j < ny - 1; j++)
    for (let i = 1; i < nx - 1; i++) {
      const k = j * nx + i;
      const x = originX + i * dx;
      const y = originY + j * dx;
      if (a.uInverse[k]! > 0) a.u[k] = a.uAhead[k] = a.uNext[k] = u(x - 0.5 * dx, y);
      if (a.vInverse[k]! > 0) a.v[k] = a.vAhead[k] = a.vNext[k] = v(x, y - 0.5 * dx);
      if (a.pInverse[k]! > 0) a.p[k] = a.pAhead[k] = p(x, y);
    }
  for (const opening of to.openings) {
    const old = from.openings.find((other) => other.opening.name === opening.opening.name);
    if (!old || old.rule !== opening.rule) continue;
    opening.slowSpeed = old.slowSpeed;
    opening.shift = old.shift;
    opening.wanted = old.wanted;
    if (old.wanted !== undefined) opening.target = old.target;
  }
}
