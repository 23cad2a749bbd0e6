/** The scene in a few sentences, from the same numbers as the picture: for those who don't see it, and for captions. */

import { formatQuantity, type Quantity, t, writeDrop, writeLoss, writeShare } from "../i18n/index.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { FieldReadings } from "../sim/flow-field/flow-field.ts";
import { SHORT_OF_OXYGEN, shortOfOxygen } from "./figures.ts";

type Shares = NonNullable<Circulation["shares"]>;

/** L/min: less is written as none */
const MIN_LEAK = 0.005;

/** `quantity` writes a number with its unit: as symbols for a caption (the default), as words for a voice. */
export function readingOf(
  circulation: Circulation | null,
  readings: FieldReadings | null,
  quantity: Quantity = formatQuantity,
): readonly string[] {
  if (!circulation) return [t("reading.waiting")];
  const { pressures, pathway, saturations, flows, shares, request } = circulation;
  const rise = pressures.pathway - pressures.pulmonaryVein;
  const sentences = [
    t("reading.pressure", {
      stage: t(`stage.${request.stage}`),
      pathway: quantity(pressures.pathway, "mmHg", 1),
      rise: quantity(rise, "mmHg", 1),
      drop: writeDrop(pathway, quantity),
      loss: writeLoss(pathway, quantity),
    }),
    t("reading.outcome", {
      saturation: quantity(saturations.arterial, "%", 0),
      output: quantity(flows.systemic, "L/min", 1),
      open: Math.abs(flows.fenestration) > MIN_LEAK ? "yes" : "no",
      fenestration: quantity(flows.fenestration, "L/min", 1),
    }),
  ];
  if (shortOfOxygen(circulation)) sentences.push(t(SHORT_OF_OXYGEN));
  if (shares) sentences.push(sharesSentence(shares, quantity));
  if (shares && flows.fenestration > MIN_LEAK) sentences.push(t("reading.rest"));
  if (readings?.settled) sentences.push(flowSentence(readings, quantity));
  return sentences;
}

function sharesSentence(shares: Shares, quantity: Quantity): string {
  return t("reading.shares", {
    ivcLeft: writeShare(shares.ivc, "left", quantity),
    ivcRight: writeShare(shares.ivc, "right", quantity),
    svcLeft: writeShare(shares.svc, "left", quantity),
    svcRight: writeShare(shares.svc, "right", quantity),
  });
}

function flowSentence(readings: FieldReadings, quantity: Quantity): string {
  return t("reading.flow", {
    turning: turningClass(readings.recirculatingArea),
    known: readings.washOutSeconds === undefined ? "no" : "yes",
    washOut: quantity(readings.washOutSeconds ?? 0, "s", 1, readings.washOutBand),
  });
}

/** In classes so wide that every grid of a live field gives the same: a faster computer's is finer, and in a wide chamber finds up to half as much again. */
export const turningClass = (part: number): "hardly" | "some" | "much" | "most" =>
  part < 0.1 ? "hardly" : part < 1 / 3 ? "some" : part < 2 / 3 ? "much" : "most";
