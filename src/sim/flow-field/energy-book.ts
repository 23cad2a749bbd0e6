/** Whether a loss may be read from a field: what enters less what leaves has to be what the flow turns into heat. */
import type { FieldReadings } from "./flow-field.ts";

/** % of the loss by which the two may differ. */
export const MAX_OPEN = 10;

/** "settling": the flow does not repeat itself yet; "open": it does, and its energy does not balance. Neither tells a loss. */
export type EnergyBudget = "closed" | "settling" | "open";

export function energyBudget({
  settled,
  auditPercent,
}: Pick<FieldReadings, "settled" | "auditPercent">): EnergyBudget {
  if (!settled) return "settling";
  return Math.abs(auditPercent) <= MAX_OPEN ? "closed" : "open";
}
