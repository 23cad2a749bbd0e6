/** Whether a loss may be read from a field: power in minus power out must equal what the flow turns into heat. */
import type { FieldReadings } from "./flow-field.ts";

/** % of the loss by which the two may differ. */
export const MAX_OPEN = 10;

/** "settling": the flow does not repeat itself yet; "open": it does, but its energy does not balance. In neither case is a loss shown. */
export type EnergyBudget = "closed" | "settling" | "open";

/** Judges the readings: `auditPercent` is in % of the loss, at most {@link MAX_OPEN} when closed. */
export function energyBudget({
  settled,
  auditPercent,
}: Pick<FieldReadings, "settled" | "auditPercent">): EnergyBudget {
  if (!settled) return "settling";
  return Math.abs(auditPercent) <= MAX_OPEN ? "closed" : "open";
}
