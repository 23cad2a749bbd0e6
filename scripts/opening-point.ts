/** The periodic state of the scene that the kit opens with, solved when the kit is built: its page confirms an answer instead of searching for it, and blood flows in meanwhile. */
import { boundaryConditions } from "../src/chain/field-boundary.ts";
import { INFLOW_STEP, type StoredAnswer } from "../src/chain/opening-start.ts";
import { hepaticShareOf } from "../src/chain/supply.ts";
import { unpack } from "../src/sim/circulation/search/warm-start.ts";
import { solve } from "../src/sim/circulation/solve.ts";
import { START } from "../src/state/scene-state.ts";

/** Figures kept of each number of the point: the search goes on from there to its own tolerance. */
const FIGURES = 7;

/** Every second sample in whole steps, each as its difference from the one before: so they weigh a fifth. */
const packed = (wave: Float32Array): readonly number[] =>
  [...wave.filter((_, i) => i % 2 === 0)]
    .map((value) => Math.round(value / INFLOW_STEP))
    .map((step, i, all) => step - (all[i - 1] ?? 0));

/** `point` in SI, in the order of the solver's point; `answer`: what blood moves and is drawn by from blood time 0 on. */
export function openingPoint(): { readonly point: readonly number[]; readonly answer: StoredAnswer } {
  const answer = solve(START.request);
  const found = unpack(answer.state);
  if (!answer.run.converged || !found)
    throw new Error(`the scene that the kit opens with: ${answer.run.reason}`);
  const { period, split, inflow } = boundaryConditions(answer, answer, false);
  const waves = Object.entries(inflow).map(([name, wave]) => [name, packed(wave)]);
  const short = (value: number) => Number(value.toPrecision(FIGURES));
  const shares = Object.entries(split).map(([name, share]) => [name, short(share)]);
  const saturations = Object.entries(answer.saturations).map(([name, value]) => [name, short(value)]);
  return {
    point: [...found.point].map(short),
    answer: {
      saturations: Object.fromEntries(saturations),
      hepaticShare: short(hepaticShareOf(answer)),
      inflow: {
        period: short(period),
        split: Object.fromEntries(shares),
        inflow: Object.fromEntries(waves),
      },
    },
  };
}
