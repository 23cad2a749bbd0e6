/** What the scene that the kit opens with begins from until it is solved here: what the same solver found when the kit was built. */
import type { BoundaryConditions } from "../sim/flow-field/flow-field.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import type { Supply } from "../sim/tracers/index.ts";
import { START } from "../state/scene-state.ts";
import type { Foreseen } from "./foreseen.ts";

/** mL/s: to so much each sample of what flows in is kept */
export const INFLOW_STEP = 0.25;

/** As {@link BoundaryConditions}, without leaks; each wave's samples as whole steps from the one before. */
interface StoredInflow extends Pick<BoundaryConditions, "period" | "split"> {
  readonly inflow: Readonly<Record<string, readonly number[]>>;
}

/** Of an answer: what blood is drawn by, and what flows in. */
export interface StoredAnswer extends Pick<Foreseen, "saturations"> {
  readonly hepaticShare: Supply["hepaticShare"];
  readonly inflow: StoredInflow;
}

declare const __OPENING__: { readonly point: readonly number[]; readonly answer: StoredAnswer };
// Named once: each naming is replaced by the whole of it.
const stored = () => __OPENING__;

const OPENING = JSON.stringify(START.request);
const isOpening = (request: CirculationRequest): boolean => JSON.stringify(request) === OPENING;

/** Where the search for its answer begins. Undefined for every other request: those are searched from nothing. */
export const openingStart = (request: CirculationRequest): readonly number[] | undefined =>
  isOpening(request) ? stored().point : undefined;

/** What blood moves and is drawn by, from blood time 0 on; undefined for every other request. */
export function openingForeseen(request: CirculationRequest): Foreseen | undefined {
  if (!isOpening(request)) return undefined;
  const { saturations, hepaticShare, inflow: flows } = stored().answer;
  const { inflow, ...same } = flows;
  const waves = Object.entries(inflow).map(([name, steps]) => {
    let sum = 0;
    const wave = steps.map((step) => {
      sum += step;
      return INFLOW_STEP * sum;
    });
    return [name, Float32Array.from(wave)] as const;
  });
  const means = waves.map(([name, wave]) => [name, mean(wave)] as const);
  return {
    boundary: { ...same, inflow: Object.fromEntries(waves), outflow: {} },
    supply: { inflow: Object.fromEntries(means), hepaticShare },
    saturations,
  };
}

const mean = (wave: Float32Array): number => wave.reduce((sum, flow) => sum + flow, 0) / wave.length;
