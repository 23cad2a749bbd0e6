/** What blood does to a rigid sphere in it: drag against the blood around it, and the pressure gradient across it. */
import { bilinear } from "../flow-field/bilinear.ts";
import type { FieldShape, FlowField } from "../flow-field/flow-field.ts";
import { distanceAt } from "../tracers/tracer-plane.ts";
import { PASCAL_PER_MMHG } from "../units.ts";

/** The flow around a body as the plane has it between two moments. */
export interface Surroundings {
  readonly shape: FieldShape;
  readonly from: FlowField;
  readonly to: FlowField;
  /** 0 = `from`, 1 = `to` */
  readonly blend: number;
}

export interface Blood {
  /** kg/m3; a clot counts as just as dense (common practice, no source: fresh clot 1.06-1.08) */
  readonly density: number;
  /** Pa.s */
  readonly viscosity: number;
}

/** Where a sphere feels the flow: its middle and four points half way out. */
const FEELERS = [
  [0, 0],
  [0.5, 0],
  [-0.5, 0],
  [0, 0.5],
  [0, -0.5],
] as const;

export interface Felt {
  /** m/s: blood around it */
  u: number;
  v: number;
  /** Pa/m */
  gradientX: number;
  gradientY: number;
}

/** Means over the feelers that lie in blood; all nought when none does. Place and diameter in mm; writes into `felt`. */
export function feel(around: Surroundings, x: number, y: number, diameter: number, felt: Felt): Felt {
  const { shape, from, to, blend } = around;
  const { nx, ny, dx, originX, originY } = shape;
  const early = 1 - blend;
  let met = 0;
  felt.u = 0;
  felt.v = 0;
  for (const [across, up] of FEELERS) {
    const px = x + (across * diameter) / 2;
    const py = y + (up * diameter) / 2;
    if (distanceAt(shape, px, py) >= 0) continue;
    const gx = (px - originX) / dx;
    const gy = (py - originY) / dx;
    felt.u += early * bilinear(from.u, nx, gx, gy) + blend * bilinear(to.u, nx, gx, gy);
    felt.v += early * bilinear(from.v, nx, gx, gy) + blend * bilinear(to.v, nx, gx, gy);
    met++;
  }
  if (met > 0) {
    felt.u /= met;
    felt.v /= met;
  }
  const pressure = (px: number, py: number): number | undefined => {
    const gx = (px - originX) / dx;
    const gy = (py - originY) / dx;
    // All four cells in blood: a wall cell's pressure means nothing.
    if (gx < 1 || gy < 1 || gx > nx - 3 || gy > ny - 3 || distanceAt(shape, px, py) > -dx) return undefined;
    return early * bilinear(from.pressure, nx, gx, gy) + blend * bilinear(to.pressure, nx, gx, gy);
  };
  const reach = Math.max(diameter / 4, dx);
  const slope = (ahead: number | undefined, behind: number | undefined): number =>
    ahead === undefined || behind === undefined
      ? 0
      : ((ahead - behind) / (2 * reach)) * 1e3 * PASCAL_PER_MMHG;
  felt.gradientX = slope(pressure(x + reach, y), pressure(x - reach, y));
  felt.gradientY = slope(pressure(x, y + reach), pressure(x, y - reach));
  return felt;
}

/** Drag over Stokes' drag, up to Reynolds 800 (Schiller & Naumann 1933). `slip`: m/s, diameter: m. */
export function dragFactor(slip: number, diameter: number, { density, viscosity }: Blood): number {
  const reynolds = Math.min(800, (density * slip * diameter) / viscosity);
  return 1 + 0.15 * reynolds ** 0.687;
}

/** s: time in which a sphere as dense as blood takes up the blood's velocity, half its own mass of blood moving with it. Diameter in m. */
export const relaxationTime = (slip: number, diameter: number, blood: Blood): number =>
  (1.5 * blood.density * diameter ** 2) / (18 * blood.viscosity * dragFactor(slip, diameter, blood));

/**
 * Velocity (m/s) after `seconds`: drag exactly for a steady blood velocity, and the push -grad p / rho, which for a sphere as dense
 * as blood with its added mass is the acceleration of the blood it displaces (Maxey & Riley 1983). One component at a time.
 * @param gradient grad p / rho, m/s2
 */
export const driven = (
  own: number,
  blood: number,
  gradient: number,
  time: number,
  seconds: number,
): number => {
  const kept = Math.exp(-seconds / time);
  return blood + (own - blood) * kept - gradient * time * (1 - kept);
};
