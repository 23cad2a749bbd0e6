/** How fields are computed here: on a graphics chip, by the vector kernel, or in plain steps. */
import { hasVectors } from "../sim/flow-solver/vector-probe.ts";
import type { ChipFate } from "./worker-messages.ts";

/** What is known of a graphics chip: none, one that the processor only imitates, or what became of it. */
type ChipState = "none" | "imitated" | ChipFate;

let chip: ChipState = "none";

export function chipTold(state: ChipState): void {
  chip = state;
}

/** As it is now; `vectors`: the processor has vector instructions. */
export const fieldKernel = (): { readonly chip: ChipState; readonly vectors: boolean } => ({
  chip,
  vectors: hasVectors(),
});
