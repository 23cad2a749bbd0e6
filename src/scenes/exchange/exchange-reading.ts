/** The days after the operation in words. */
import type { Frame } from "../../chain/frame.ts";
import { formatQuantity } from "../../i18n/index.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { ExchangeCourse } from "../../sim/exchange/index.ts";
import type { Reading } from "../circuit/circuit-reading.ts";

/** Message key and arguments (mL/h, mL, days); null while there is no course. */
export function readExchange({ panes }: Frame): Reading | null {
  const exchange = panes[0]?.exchange;
  if (!exchange) return null;
  const last = exchange.days.length - 1;
  return {
    key: "further.reading.exchange",
    args: {
      filtration: entryAt(exchange.filtration, last),
      lymph: entryAt(exchange.lymph, last),
      days: entryAt(exchange.days, last),
      most: Math.max(...exchange.drained),
      drained: exchange.drainedTotal,
      dry: exchange.daysToDry === null ? "no" : "yes",
      dryDay: exchange.daysToDry ?? 0,
    },
  };
}

/** What was drained in all, with its units. */
export const drainedOf = ({ drainedTotal, drainedPerKilogram }: ExchangeCourse) => ({
  total: formatQuantity(drainedTotal, "mL"),
  each: formatQuantity(drainedPerKilogram, "mL/kg"),
});
