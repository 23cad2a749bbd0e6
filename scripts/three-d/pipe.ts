/** A straight round pipe, where the answer is known: Hagen-Poiseuille. */
import { BLOOD_DENSITY, bloodViscosity } from "../../src/sim/body/blood.ts";
import type { Job } from "./jobs.ts";

/** mm; Reynolds number of the mean speed */
export const PIPE = { diameter: 10.5, length: 40, reynolds: 500, across: [21, 42] } as const;

const viscosity = bloodViscosity(14);

/** mL/s */
export const pipeFlow = (reynolds: number, diameter: number): number =>
  ((Math.PI / 4) * reynolds * viscosity * diameter * 1e3) / BLOOD_DENSITY;

/** Pa over a length (mm) at a flow (mL/s) */
export const pipeDrop = (flow: number, diameter: number, length: number): number =>
  (128 * viscosity * length * flow * 1e3) / (Math.PI * diameter ** 4);

export const pipeName = (across: number): string => `pipe-grid-${across}`;

export function pipeJobs(): Job[] {
  const flow = pipeFlow(PIPE.reynolds, PIPE.diameter);
  return PIPE.across.map((across) => ({
    body: "pipe",
    name: pipeName(across),
    keys: {
      ivc: flow,
      right: flow,
      dx: PIPE.diameter / across,
      nu: viscosity / BLOOD_DENSITY,
      rho: BLOOD_DENSITY,
    },
    cost: (across / 30) ** 4,
  }));
}
