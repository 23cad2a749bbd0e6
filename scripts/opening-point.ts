/** The periodic state of the scene that the kit opens with, solved when the kit is built, so that its page confirms an answer instead of searching for it. */
import { solve } from "../src/sim/circulation/solve.ts";
import { unpack } from "../src/sim/circulation/warm-start.ts";
import { START } from "../src/state/scene-state.ts";

/** Figures kept of each number: the search goes on from there to its own tolerance. */
const FIGURES = 7;

/** SI, in the order of the solver's point. */
export function openingPoint(): readonly number[] {
  const { run, state } = solve(START.request);
  const found = unpack(state);
  if (!run.converged || !found) throw new Error(`the scene that the kit opens with: ${run.reason}`);
  return [...found.point].map((value) => Number(value.toPrecision(FIGURES)));
}
