/** The bars that stage and phones show alike. */
import type { ShownResult } from "../../../audience/line-messages.ts";
import { type HallCount, tally } from "../hall/hall.ts";
import { histogramOf } from "./histogram.ts";

/** null until the speaker shows it. @param choices none where a number is asked for freely */
export function shownResult(
  choices: readonly string[],
  count: HallCount,
  truth: string | number | null,
): ShownResult | null {
  if (count.phase !== "shown" && count.phase !== "compared") return null;
  const model = count.phase === "compared" ? truth : null;
  if (choices.length > 0) return { counts: [...tally(choices, count)], edges: [], model };
  const { counts, edges } = histogramOf(count.numbers, typeof model === "number" ? model : null);
  return { counts: [...counts], edges: [...edges], model };
}
