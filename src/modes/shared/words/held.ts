/** What was held, in a sentence with its number: no other number on screen means anything without it. */
import { digitsOfStep, formatQuantity, t } from "../../../i18n/index.ts";
import { present } from "../../../sim/checked/present.ts";
import { findParameter, numberSetting } from "../../../sim/parameters/parameters.ts";
import type { CirculationRequest, VolumeRule } from "../../../sim/parameters/request.ts";
import { ruleName } from "../../../ui/rule-name.ts";

const HELD: Readonly<Record<VolumeRule, string>> = {
  "fixed-volume": "bloodVolume",
  "hold-atrial-pressure": "heldAtrialPressure",
  "hold-output": "heldOutputIndex",
};

export function heldSentence(request: CirculationRequest): string {
  const name = HELD[request.volumeRule];
  const parameter = present(findParameter(name));
  const value =
    parameter.kind === "number"
      ? formatQuantity(numberSetting(request, name), parameter.unit, digitsOfStep(parameter.step))
      : "";
  // The holding rules set the volume at rest; exertion and breathing then act at that volume.
  const key = request.volumeRule === "fixed-volume" ? "bench.held" : "bench.heldAtRest";
  return t(key, { rule: ruleName(request.stage, request.volumeRule), value });
}
