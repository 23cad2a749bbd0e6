/** Whether a loss may be read from a field: what enters less what leaves has to be what the flow turns into heat. */
import type { FieldReadings } from "./flow-field.ts";

/** % of the loss by which the two may differ. */
export const MOST_OPEN = 10;

/** "settling": the flow does not repeat itself yet; "open": it does, and its energy does not balance. Neither tells a loss. */
export type EnergyBook = "closed" | "settling" | "open";

export function energyBook({
  settled,
  auditPercent,
}: Pick<FieldReadings, "settled" | "auditPercent">): EnergyBook {
  if (!settled) return "settling";
  return Math.abs(auditPercent) <= MOST_OPEN ? "closed" : "open";
}
