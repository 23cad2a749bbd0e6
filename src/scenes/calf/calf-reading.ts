/** The calf in words. */
import type { Frame } from "../../chain/frame.ts";
import type { Reading } from "../circuit/circuit-reading.ts";
import { meanOf } from "../drawing/trace-clock.ts";
import { legTraces } from "./blood-column.ts";
import { squeezes } from "./squeezes.ts";
import { hardestOf } from "./vein.ts";

/** Message key and arguments (mmHg, L/min, 1/min); null while nothing is solved. */
export function readCalf(frame: Frame): Reading | null {
  const circulation = frame.panes[0]?.circulation;
  const legs = circulation && legTraces(circulation.traces);
  if (!circulation || !legs) return null;
  const { traces } = circulation;
  const most = hardestOf(traces);
  const flow = meanOf(traces, legs.out);
  if (most === 0) return { key: "further.reading.calfRest", args: { flow } };
  return {
    key: "further.reading.calf",
    args: {
      flow,
      pressure: most,
      flowMost: legs.out.reduce((a, b) => Math.max(a, b), 0),
      perMinute: Math.round((squeezes(traces).length * 60) / traces.period),
    },
  };
}
