/** The scene in three or four sentences, from the same numbers as the picture: for those who don't see it, and for captions. */

import { formatQuantity, t } from "../i18n/index.ts";
import type { Circulation } from "../sim/circulation/answer.ts";
import type { FieldReadings } from "../sim/flow-field/flow-field.ts";
import { bookNote, SHORT_OF_OXYGEN, shortOfOxygen } from "./figures.ts";

export type Quantity = (value: number, unit: string, digits?: number) => string;

/** `quantity` writes a number with its unit: as symbols for a caption (the default), as words for a voice. */
export function readingOf(
  circulation: Circulation | null,
  readings: FieldReadings | null,
  quantity: Quantity = formatQuantity,
): readonly string[] {
  if (!circulation) return [t("reading.waiting")];
  const { pressures, pathway, saturations, flows, request } = circulation;
  const rise = pressures.pathway - pressures.pulmonaryVein;
  const sentences = [
    t("reading.pressure", {
      stage: t(`stage.${request.stage}`),
      pathway: quantity(pressures.pathway, "mmHg", 1),
      rise: quantity(rise, "mmHg", 1),
      drop: quantity(pathway.pressureDrop, "mmHg", 1),
      loss: quantity(pathway.powerLoss, "mW", 1),
    }),
    t("reading.outcome", {
      saturation: quantity(saturations.arterial, "%", 0),
      output: quantity(flows.systemic, "L/min", 1),
      open: Math.abs(flows.fenestration) > 0.005 ? "yes" : "no",
      fenestration: quantity(flows.fenestration, "L/min", 1),
    }),
  ];
  if (shortOfOxygen(circulation)) sentences.push(t(SHORT_OF_OXYGEN));
  if (readings?.settled) sentences.push(flowSentence(readings, quantity));
  const note = bookNote(readings);
  if (note) sentences.push(t(note));
  return sentences;
}

function flowSentence(readings: FieldReadings, quantity: Quantity): string {
  const lower = readings.shares.ivc ?? {};
  return t("reading.flow", {
    left: quantity(100 * (lower.left ?? 0), "%", 0),
    right: quantity(100 * (lower.right ?? 0), "%", 0),
    turning: quantity(100 * readings.recirculatingArea, "%", 0),
    known: readings.washOutSeconds === undefined ? "no" : "yes",
    washOut: quantity(readings.washOutSeconds ?? 0, "s", 1),
  });
}
