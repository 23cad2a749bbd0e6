/**
 * A hinged leaflet of a venous valve: a stiff plate that turns about its foot in the vein's through-flow. Two of them face each other;
 * by symmetry one is enough. One degree of freedom, so no contact solver: the stops are the pocket's wall and the other leaflet.
 */
import type { Blood } from "./forces.ts";

/** Size of a valve with two equal leaflets. */
export interface ValveSize {
  /** m: half the vein's width at the hinge */
  readonly halfWidth: number;
  /** m, more than `halfWidth`: shorter leaflets would not meet */
  readonly length: number;
}

/** Position and motion of a leaflet. */
export interface LeafletState {
  /** radians from the vein's wall, pointing downstream; grows as it closes */
  readonly angle: number;
  /** radians/s */
  readonly turning: number;
}

/** radians: a leaflet is never flat in its pocket, so that blood flowing back gets behind it (common practice, no source) */
const WIDEST = 0.2;
/** Drag coefficient of a flat plate across the stream (Hoerner 1965). */
const PLATE_DRAG = 2;
/** 1/s2: recoil towards closed, chosen for teaching: alone it closes a leaflet in about 0.4 s, as long as closing takes at rest (Lurie 2003: 0.41 s) */
const RECOIL = 60;
/** Points along the plate at which drag is summed, and s of one step */
const SLICES = 8;
const STEP = 5e-4;

/** radians: where the two tips meet */
export const closedAngle = ({ halfWidth, length }: ValveSize): number =>
  Math.asin(Math.min(1, halfWidth / length));

/** Dimensionless: 0 closed, 1 as wide as the pocket allows. */
export function openness(valve: ValveSize, { angle }: LeafletState): number {
  const shut = closedAngle(valve);
  return (shut - angle) / (shut - WIDEST);
}

/**
 * The leaflet after `seconds`.
 * Inertia is that of the blood moved with it: 9 pi rho L^4 / 128 for a plate about its edge (Newman 1977); the leaflet's own is small beside it.
 * @param velocity m/s, mean over the vein, towards the heart positive
 */
export function swing(
  valve: ValveSize,
  state: LeafletState,
  velocity: number,
  seconds: number,
  { density }: Blood,
): LeafletState {
  const { length } = valve;
  const shut = closedAngle(valve);
  const inertia = (9 * Math.PI * density * length ** 4) / 128;
  let { angle, turning } = state;
  for (let left = seconds; left > 1e-12; left -= STEP) {
    const step = Math.min(STEP, left);
    let torque = 0;
    let resistance = 0;
    for (let n = 0; n < SLICES; n++) {
      const arm = ((n + 0.5) / SLICES) * length;
      // Across the plate, opening positive.
      const across = velocity * Math.sin(angle) + turning * arm;
      const drag = (0.5 * density * PLATE_DRAG * Math.abs(across) * length) / SLICES;
      torque += drag * velocity * Math.sin(angle) * arm;
      resistance += drag * arm * arm;
    }
    // Drag against the turning is taken at the step's end: stable however hard the blood holds the plate.
    const pull = -torque / inertia + RECOIL * (shut - angle);
    turning = (turning + step * pull) / (1 + (step * resistance) / inertia);
    angle += step * turning;
    if (angle > shut || angle < WIDEST) {
      angle = Math.min(shut, Math.max(WIDEST, angle));
      turning = 0;
    }
  }
  return { angle, turning };
}
