/** Steps that are to run together elsewhere: what the openings are given in each of them. */
import type { StepSettings } from "./array-layout.ts";
import type { FlowSolver } from "./flow-solver.ts";
import type { SolverOpening } from "./openings.ts";

/** What a computer elsewhere is told, dimensionless unless said. */
export interface StepBatch {
  /** count */
  readonly steps: number;
  readonly settings: StepSettings;
  /** m/s: the artificial speed of sound */
  readonly soundSpeed: number;
  /** fraction of an opening's slow mean that is renewed in one step */
  readonly forget: number;
  /** [steps * openings] a given velocity's flow into the blood (solver units), a pressure outlet's wanted speed outward (m/s) or 0 */
  readonly inputs: Float32Array;
}

/** Notes the `flow` (m/s times cells times mm, into the blood) that a computer elsewhere is to hold. */
export function noteFlow(opening: SolverOpening, flow: number): void {
  opening.flow = flow;
}

/** The solver's next `steps`; `before` sets openings' flows (by {@link noteFlow}) and targets each step (s). */
export function nextBatch(solver: FlowSolver, steps: number, before: (time: number) => void): StepBatch {
  solver.lookAgain();
  const { openings, settings, time, step } = solver;
  const inputs = new Float32Array(steps * openings.length);
  for (let n = 0; n < steps; n++) {
    before(time + n * step);
    openings.forEach(({ rule, flow, wanted }, place) => {
      inputs[n * openings.length + place] = rule === "velocity" ? flow : (wanted ?? 0);
    });
  }
  return { steps, settings, inputs, ...solver.outletRates() };
}
