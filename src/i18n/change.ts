/** What a change has done to a number, by the digits in which the number is shown. */
import { t } from "./messages.ts";
import { formatNumber, formatQuantity } from "./quantity.ts";

export interface Change {
  readonly from: number;
  readonly to: number;
  /** `to` less `from`, of the rounded numbers: a reader who subtracts finds the same */
  readonly by: number;
}

/** Null where one of the two is not known. */
export function changeOf(
  from: number | null | undefined,
  to: number | null | undefined,
  digits: number,
): Change | null {
  if (from === null || from === undefined || to === null || to === undefined) return null;
  const [before, now] = [Number(from.toFixed(digits)), Number(to.toFixed(digits))];
  return { from: before, to: now, by: Number((now - before).toFixed(digits)) };
}

/** "+0.4", "\u22120.4" */
const signed = (by: number, digits: number): string => `${by > 0 ? "+" : ""}${formatNumber(by, digits)}`;

/** "12.6 \u2192 13.0 mmHg, +0.4", or that nothing changed. */
export const writeChange = ({ from, to, by }: Change, unit: string, digits: number): string =>
  by === 0
    ? t("change.none")
    : t("change.by", {
        from: formatNumber(from, digits),
        to: formatQuantity(to, unit, digits),
        by: signed(by, digits),
      });

/** Behind a number on a plate: its change, or nothing where there is none to tell. */
export function appendChange(
  text: string,
  from: number | null | undefined,
  to: number,
  digits: number,
): string {
  const change = changeOf(from, to, digits);
  return change && change.by !== 0 ? `${text}  ${signed(change.by, digits)}` : text;
}
