/** The flow at cell centres, and how fast blood there turns and slows down on its way. */
import type { FlowSolver } from "../../src/sim/flow-solver/flow-solver.ts";

export interface AtCells {
  /** [ny*nx] 1 where blood is solved */
  readonly inside: Uint8Array;
  /** [..] the cells of `inside` */
  readonly cells: Int32Array;
  /** m/s [ny*nx] */
  readonly speed: Float64Array;
  /** 1/s [ny*nx]: speed over the radius of the line of flow */
  readonly turning: Float64Array;
  /** 1/s [ny*nx]: loss of speed along the line of flow over the speed; 0 where it gains */
  readonly slowing: Float64Array;
  look(): void;
}

/** Speeds below this part of the fastest blood's count as this part: nothing is divided by a speed of nothing. */
const MIN_PART = 0.05;

export function atCells(solver: FlowSolver): AtCells {
  const { arrays: a } = solver;
  const { nx, ny, dx, beyond, area } = solver.mesh;
  const fresh = () => new Float64Array(nx * ny);
  const [u, v, speed, turning, slowing] = [fresh(), fresh(), fresh(), fresh(), fresh()];
  const inside = Uint8Array.from(area, (part, k) => (part > 0 && beyond[k]! < 0 ? 1 : 0));
  const wet = Int32Array.from(area.keys()).filter((k) => area[k]! > 0 && k >= nx && k < (ny - 1) * nx);
  const cells = wet.filter((k) => inside[k]);
  // Where a wall cuts a cell, the mean of its faces is no velocity to take slopes from.
  const isWhole = (k: number) => area[k]! > 0.999;
  const clear = cells.filter((k) => [k, k - 1, k + 1, k - nx, k + nx].every(isWhole));
  return {
    inside,
    cells,
    speed,
    turning,
    slowing,
    look() {
      for (const k of wet) {
        u[k] = 0.5 * (a.u[k]! + a.u[k + 1]!);
        v[k] = 0.5 * (a.v[k]! + a.v[k + nx]!);
      }
      const least = (MIN_PART * solver.fastest) ** 2;
      for (const k of cells) speed[k] = Math.hypot(u[k]!, v[k]!);
      for (const k of clear) {
        const x = u[k]!;
        const y = v[k]!;
        const ax = x * (u[k + 1]! - u[k - 1]!) + y * (u[k + nx]! - u[k - nx]!);
        const ay = x * (v[k + 1]! - v[k - 1]!) + y * (v[k + nx]! - v[k - nx]!);
        const over = 0.5 / ((x * x + y * y + least) * dx * 1e-3);
        turning[k] = Math.abs(x * ay - y * ax) * over;
        slowing[k] = Math.max(0, -(x * ax + y * ay)) * over;
      }
    },
  };
}
