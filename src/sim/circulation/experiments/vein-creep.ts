/** Veins give way slowly: emptied ones draw in further over minutes than their elastic walls do at once. Volumes mL. */
import { referenceSet } from "../../body/growth.ts";
import { numberSetting } from "../../parameters/parameters.ts";
import type { CirculationRequest } from "../../parameters/request.ts";
import type { Circulation } from "../answer/answer.ts";

/**
 * What creeps over what an elastic wall gives at once: more (Alexander, Circ Res 1953;1:271, the gut's veins, abstract); and min in which
 * two thirds of it is done: 10 to 60 until it is whole (reverse stress relaxation, textbook, from memory). Sizes are teaching values.
 */
const CREEPS = 1.5;
const MINUTES = 15;

/** mL by which veins have drawn in some minutes later, with the pressures of `after` in them; `drawn` so far. */
export function drawnIn(drawn: number, before: Circulation, after: Circulation, minutes: number): number {
  const { stage, body } = before.request;
  const set = referenceSet(stage, body.bsa);
  const fall = (name: "legVeinPressure" | "splanchnicPressure") =>
    (before.extras[name] ?? 0) - (after.extras[name] ?? 0);
  const elastic =
    set.upperVeinCompliance * (before.pressures.svc - after.pressures.svc) +
    set.splanchnicCompliance * fall("splanchnicPressure") +
    set.legVeinCompliance * fall("legVeinPressure");
  return drawn + (CREEPS * elastic - drawn) * (1 - Math.exp(-minutes / MINUTES));
}

/** The setting of the veins' tone (%) with so much drawn in beside it. */
export function toneWith(request: CirculationRequest, drawn: number): number {
  const set = referenceSet(request.stage, request.body.bsa);
  const unstressed = set.upperVeinUnstressed + set.splanchnicUnstressed + set.legVeinUnstressed;
  return numberSetting(request, "venousTone") + (100 * drawn) / unstressed;
}
