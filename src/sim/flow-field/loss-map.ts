/** Where the flow turns energy into heat, cell by cell: the map behind the single loss of the readings. */
import type { FieldGrid, FlowField } from "./flow-field.ts";

/** Drag of the front and back wall over the plane's own shear: 20 nu u / D2 (docs/model.md, depth). */
const DRAG = 20;

/** The cells (indices) whose middle lies in the blood. */
export function bloodCells({
  nx,
  ny,
  distance,
}: FieldGrid & { readonly distance: ArrayLike<number> }): Int32Array {
  const cells: number[] = [];
  for (let j = 1; j < ny - 1; j++)
    for (let i = 1; i < nx - 1; i++) if (distance[j * nx + i]! < 0) cells.push(j * nx + i);
  return Int32Array.from(cells);
}

/**
 * W/m3 [ny*nx]: viscous dissipation 2 mu e:e by central differences, and the drag of the front and back walls.
 * @param shape how deep the plane is (mm)
 * @param viscosity Pa.s
 * @param cells where it is wanted, see {@link bloodCells}; 0 elsewhere
 */
export function lossMap(
  shape: FieldGrid & { readonly depth: ArrayLike<number> },
  field: Pick<FlowField, "u" | "v">,
  viscosity: number,
  cells: Int32Array,
): Float32Array {
  const { nx, ny, dx, depth } = shape;
  const { u, v } = field;
  const perMetre = 1 / (2 * dx * 1e-3);
  const loss = new Float32Array(nx * ny);
  for (let n = 0; n < cells.length; n++) {
    const k = cells[n]!;
    const ux = (u[k + 1]! - u[k - 1]!) * perMetre;
    const uy = (u[k + nx]! - u[k - nx]!) * perMetre;
    const vx = (v[k + 1]! - v[k - 1]!) * perMetre;
    const vy = (v[k + nx]! - v[k - nx]!) * perMetre;
    const width = (4 / Math.PI) * depth[k]! * 1e-3;
    const drag = width > 0 ? (DRAG * (u[k]! ** 2 + v[k]! ** 2)) / width ** 2 : 0;
    loss[k] = viscosity * (2 * ux * ux + 2 * vy * vy + (uy + vx) ** 2 + drag);
  }
  return loss;
}
