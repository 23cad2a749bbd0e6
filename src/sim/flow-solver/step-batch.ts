/** Steps that are to run together elsewhere: what the openings are given in each of them. */
import type { StepSettings } from "./array-layout.ts";
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

/** What an opening is given at this moment: a flow (m/s times cells times mm) or a speed (m/s). */
export const inputOf = ({ rule, flow, wanted }: SolverOpening): number =>
  rule === "velocity" ? flow : (wanted ?? 0);
