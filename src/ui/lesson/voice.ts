/** What a lesson's text needs from the page: current numbers, explanations, and links to other steps. */

import { formatNumber, formatQuantity, t } from "../../i18n/index.ts";
import type { Glossary, Sources } from "../../lesson/library/glossary.ts";
import type { Expression } from "../../lesson/model/expression.ts";
import { figureBand } from "../../lesson/model/figure-band.ts";
import type { Situation } from "../../lesson/model/figure-paths.ts";
import { type Figure, figureValue, type Kept } from "../../lesson/model/live-figures.ts";
import type { StepReference } from "../../lesson/prose.ts";

export const TEXT_VERSIONS = ["plain", "technical"] as const;
export type TextVersion = (typeof TEXT_VERSIONS)[number];

export interface Voice {
  readonly version: TextVersion;
  readonly glossary: Glossary;
  readonly sources: Sources;
  /** A live number as the reader's language writes it. */
  number(figure: Figure): string;
  /** The value that a problem is about; null while the model is at work. */
  amount(of: Expression): number | null;
  /** null where there is nowhere to go, as in a kiosk. */
  readonly follow: ((to: StepReference) => void) | null;
}

/** The number, "..." while the model is at work, or that it is being measured in the moving flow. */
export function numberIn(situation: Situation, figure: Figure): string {
  const value = figureValue(figure, situation);
  if (value === null)
    return t(/(^|[^A-Za-z])field\./.test(figure.written) ? "lesson.measuring" : "lesson.waiting");
  const band = figureBand(figure, situation);
  return formatFigure(band ? [value, ...band] : value, figure);
}

/** As the reader's language writes it. */
export function formatFigure(kept: Kept, { format: { unit, digits, signed, bare } }: Figure): string {
  const [value, ...band] = typeof kept === "number" ? [kept] : kept;
  const text = bare
    ? formatNumber(value, digits)
    : formatQuantity(value, unit, digits, band.length === 2 ? band : undefined);
  return signed && Number(value.toFixed(digits)) > 0 ? `+${text}` : text;
}
