/** A chain on a clock set by hand, between fake workers; released after each test. */
import { afterEach } from "vitest";
import { type ChainOptions, createChain } from "../../src/chain/chain.ts";
import type { Chain } from "../../src/chain/contract.ts";
import { seededRandom } from "../../src/sim/random.ts";
import { type SceneState, START } from "../../src/state/scene-state.ts";
import { fieldPorts, handClock, solverPorts } from "./fakes.ts";

let chain: Chain | undefined;
afterEach(() => chain?.release());

export function begin(
  start: SceneState = START,
  extra: Pick<ChainOptions, "reducedMotion" | "foresee"> = {},
) {
  const time = handClock();
  const solver = solverPorts();
  const field = fieldPorts();
  const made = createChain(start, {
    clock: time.clock,
    every: time.every,
    random: seededRandom(7),
    startCirculation: solver.start,
    startField: field.start,
    tracers: 300,
    ...extra,
  });
  chain = made;
  return { chain: made, time, solver, field };
}
