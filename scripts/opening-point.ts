/** The periodic state of the scene that the kit opens with, solved when the kit is built: its page confirms an answer instead of searching for it, and blood flows in meanwhile. */
import { boundaryConditions } from "../src/chain/field-boundary.ts";
import type { StoredInflow } from "../src/chain/opening-start.ts";
import { solve } from "../src/sim/circulation/solve.ts";
import { unpack } from "../src/sim/circulation/warm-start.ts";
import { START } from "../src/state/scene-state.ts";

/** Figures kept of each number of the point: the search goes on from there to its own tolerance. */
const FIGURES = 7;
/** The same of what flows in, which is soon replaced by the answer's own. */
const INFLOW_FIGURES = 4;

const rounded = (values: ArrayLike<number>, figures: number): readonly number[] =>
  Array.from(values, (value) => Number(value.toPrecision(figures)));

/** `point` in SI, in the order of the solver's point; `inflow`: the conditions at the field's openings from blood time 0 on. */
export function openingPoint(): { readonly point: readonly number[]; readonly inflow: StoredInflow } {
  const answer = solve(START.request);
  const found = unpack(answer.state);
  if (!answer.run.converged || !found)
    throw new Error(`the scene that the kit opens with: ${answer.run.reason}`);
  const { period, split, inflow } = boundaryConditions(answer, answer, false);
  const waves = Object.entries(inflow).map(([name, wave]) => [name, rounded(wave, INFLOW_FIGURES)]);
  return {
    point: rounded(found.point, FIGURES),
    inflow: { period, split, inflow: Object.fromEntries(waves) },
  };
}
