/** What the scene that the kit opens with begins from until it is solved here: what the same solver found when the kit was built. */
import type { BoundaryConditions } from "../sim/flow-field/flow-field.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import { START } from "../state/scene-state.ts";

/** mL/s: to so much each sample of what flows in is kept */
export const INFLOW_STEP = 0.25;

/** As {@link BoundaryConditions}, without leaks; each wave's samples as whole steps from the one before. */
export interface StoredInflow extends Pick<BoundaryConditions, "period" | "split"> {
  readonly inflow: Readonly<Record<string, readonly number[]>>;
}

declare const __OPENING__: { readonly point: readonly number[]; readonly inflow: StoredInflow };
// Named once: each naming is replaced by the whole of it.
const stored = () => __OPENING__;

const OPENING = JSON.stringify(START.request);
const isOpening = (request: CirculationRequest): boolean => JSON.stringify(request) === OPENING;

/** Where the search for its answer begins. Undefined for every other request: those are searched from nothing. */
export const openingStart = (request: CirculationRequest): readonly number[] | undefined =>
  isOpening(request) ? stored().point : undefined;

/** What flows in from blood time 0 on; undefined for every other request. */
export function openingInflow(request: CirculationRequest): BoundaryConditions | undefined {
  if (!isOpening(request)) return undefined;
  const { inflow, ...same } = stored().inflow;
  const waves = Object.entries(inflow).map(([name, steps]) => {
    let sum = 0;
    const wave = steps.map((step) => {
      sum += step;
      return INFLOW_STEP * sum;
    });
    return [name, Float32Array.from(wave)];
  });
  return { ...same, inflow: Object.fromEntries(waves), outflow: {} };
}
