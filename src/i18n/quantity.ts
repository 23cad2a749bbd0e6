/** Numbers with their units, as the language writes and speaks them. */
import { hasMessage, language, t } from "./messages.ts";
import { isPseudo } from "./pseudo.ts";

const THIN_SPACE = "\u202f";

const numberLanguage = (): string => (isPseudo(language()) ? language().split("-")[0]! : language());

/** True minus; `digits` decimals always shown; -0 is 0. */
export function formatNumber(value: number, digits = 0): string {
  const rounded = Number(value.toFixed(digits));
  const text = new Intl.NumberFormat(numberLanguage(), {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
    numberingSystem: "latn",
  }).format(rounded === 0 ? 0 : rounded);
  return text.replace("-", "\u2212");
}

/** The unit as written, such as "mmHg" or "WU·m²"; nothing for a pure number ("1"). */
export function unitSymbol(unit: string): string {
  const key = `unit.${unit}.written`;
  return hasMessage(key) ? t(key) : unit === "1" ? "" : unit;
}

/** "18 mm": thin no-break space between, none for a pure number. */
export function formatQuantity(value: number, unit: string, digits = 0): string {
  const symbol = unitSymbol(unit);
  return symbol ? `${formatNumber(value, digits)}${THIN_SPACE}${symbol}` : formatNumber(value, digits);
}

/** "18 millimetres": for speech and for `aria-valuetext`. */
export function speakQuantity(value: number, unit: string, digits = 0): string {
  const key = `unit.${unit}.spoken`;
  if (!hasMessage(key)) return formatQuantity(value, unit, digits);
  // Not "1 millimetre" for 1.0: a decimal takes the plural in speech.
  return t(key, { value: formatNumber(value, digits), count: digits > 0 ? 2 : Number(value.toFixed(0)) });
}

/** Decimals that a step of this size needs: 0.5 -> 1, 1 -> 0. */
export function digitsOfStep(step: number): number {
  const text = step.toString();
  return text.includes(".") ? text.length - text.indexOf(".") - 1 : 0;
}

/** Comma and point are both decimal signs; true minus and thin spaces are read. Undefined when it is no number. */
export function parseNumber(text: string): number | undefined {
  const plain = text
    .trim()
    .replace(/[\s\u202f\u00a0]/g, "")
    .replace("\u2212", "-")
    .replace(",", ".");
  return /^-?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : undefined;
}
