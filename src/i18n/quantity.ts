/** Numbers with their units, as the language writes and speaks them. */

import { entryAt, present } from "../sim/checked/present.ts";
import { numbers } from "./message-format.ts";
import { hasMessage, language, t } from "./messages.ts";
import { isPseudo } from "./pseudo.ts";

const THIN_SPACE = "\u202f";

const numberLanguage = (): string => (isPseudo(language()) ? entryAt(language().split("-"), 0) : language());

/** True minus; `digits` decimals always shown; -0 is 0. */
export function formatNumber(value: number, digits = 0): string {
  const rounded = Number(value.toFixed(digits));
  const style = { minimumFractionDigits: digits, maximumFractionDigits: digits, numberingSystem: "latn" };
  const text = numbers(numberLanguage(), style).format(rounded === 0 ? 0 : rounded);
  return text.replace("-", "\u2212");
}

/** The unit as written, such as "mmHg" or "WU·m²"; nothing for a pure number ("1"). */
export function unitSymbol(unit: string): string {
  const key = `unit.${unit}.written`;
  return hasMessage(key) ? t(key) : unit === "1" ? "" : unit;
}

/** The range in which a computed number is expected, in the number's unit. */
export type Band = readonly [low: number, high: number];

export type Quantity = (value: number, unit: string, digits?: number, band?: Band) => string;

/** "0.45 to 0.60" */
export const formatBand = ([low, high]: Band, digits: number): string =>
  t("figure.band", { low: formatNumber(low, digits), high: formatNumber(high, digits) });

/** "18 mm": thin no-break space between, none for a pure number. With a band "0.52 mmHg (0.45 to 0.60)". */
export const formatQuantity: Quantity = (value, unit, digits = 0, band) => {
  const symbol = unitSymbol(unit);
  const text = symbol ? `${formatNumber(value, digits)}${THIN_SPACE}${symbol}` : formatNumber(value, digits);
  return band ? t("figure.banded", { value: text, band: formatBand(band, digits) }) : text;
};

/** "18 millimetres": for a voice and for `aria-valuetext`. With a band "0.52 millimetres of mercury, between 0.45 and 0.60". */
export const speakQuantity: Quantity = (value, unit, digits = 0, band) => {
  const key = `unit.${unit}.spoken`;
  // Not "1 millimetre" for 1.0: a decimal takes the plural in speech.
  const text = hasMessage(key)
    ? t(key, { value: formatNumber(value, digits), count: digits > 0 ? 2 : Number(value.toFixed(0)) })
    : formatQuantity(value, unit, digits);
  if (!band) return text;
  const [low, high] = band.map((end) => formatNumber(end, digits));
  return t("figure.banded.spoken", { value: text, low: present(low), high: present(high) });
};

/** Decimals that a step of this size needs: 0.5 -> 1, 1 -> 0. */
export function digitsOfStep(step: number): number {
  const text = step.toString();
  return text.includes(".") ? text.length - text.indexOf(".") - 1 : 0;
}
