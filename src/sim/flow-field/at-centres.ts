/** A solver's present flow at the centres of its cells, in the units of a picture. */
import type { FlowSolver } from "../flow-solver/flow-solver.ts";
import { toMmHg } from "../units.ts";
import type { FlowField } from "./flow-field.ts";
import { referencePressure } from "./measure.ts";

/**
 * Velocities (m/s) and static pressure (mmHg) at the cell centres, each [ny*nx].
 * @param density kg/m3
 * @param lungs openings whose mean pressure is the zero; absolute when empty
 * @param into arrays to fill where they have the right length
 */
export function atCentres(
  solver: FlowSolver,
  density: number,
  lungs: readonly string[],
  into: readonly Float32Array[] = [],
): Pick<FlowField, "u" | "v" | "pressure"> {
  const { nx, ny } = solver.mesh;
  const { u, v, p, pInverse } = solver.arrays;
  const count = nx * ny;
  const fit = into.filter((array) => array.length === count);
  const across = fit[0] ?? new Float32Array(count);
  const up = fit[1] ?? new Float32Array(count);
  const pressure = fit[2] ?? new Float32Array(count);
  const zero = referencePressure(solver, density, lungs) / density;
  const scale = toMmHg(density);
  for (let k = 0; k < count - nx; k++) {
    across[k] = 0.5 * (u[k]! + u[k + 1]!);
    up[k] = 0.5 * (v[k]! + v[k + nx]!);
    pressure[k] = pInverse[k]! > 0 ? (p[k]! - zero) * scale : 0;
  }
  return { u: across, v: up, pressure };
}
