/** The breath in words. */
import type { Frame } from "../../chain/frame.ts";
import { wordSetting } from "../../sim/parameters/parameters.ts";
import type { Reading } from "../circuit/circuit-reading.ts";
import { meanOf } from "../drawing/trace-clock.ts";

const greatest = (values: Float64Array): number =>
  values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
const least = (values: Float64Array): number =>
  values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);

/** Message key and arguments (mmHg, L/min); null while nothing is solved or the traces lack the chest's pressure. */
export function readBreathing(frame: Frame): Reading | null {
  const circulation = frame.panes[0]?.circulation;
  const { pleural } = circulation?.traces.pressures ?? {};
  const { ivc, pulmonary } = circulation?.traces.flows ?? {};
  if (!circulation || !pleural || !ivc || !pulmonary) return null;
  return {
    key: "further.reading.breathing",
    args: {
      breathing: wordSetting(circulation.request, "breathing"),
      lowest: least(pleural),
      highest: greatest(pleural),
      ivcLeast: least(ivc),
      ivcMost: greatest(ivc),
      ivcMean: meanOf(circulation.traces, ivc),
      lungs: meanOf(circulation.traces, pulmonary),
      output: circulation.flows.systemic,
    },
  };
}
