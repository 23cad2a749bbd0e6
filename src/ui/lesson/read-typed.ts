/** A number as someone types it: comma or point, with or without its unit. */
import { parseNumber, unitSymbol } from "../../i18n/index.ts";

/** Undefined when it is no number. */
export function readTyped(text: string, unit: string): number | undefined {
  const symbol = unitSymbol(unit);
  const bare = text.trim();
  return parseNumber(symbol && bare.endsWith(symbol) ? bare.slice(0, -symbol.length) : bare);
}
