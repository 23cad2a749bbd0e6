/** Numbers as they are written by hand: with a comma, with their unit. */

/** What is allowed in place of a number written with a comma or its unit, and the number alone where one can be read. */
export function numberAlone(text: string): { readonly allowed: string; readonly right?: string } {
  const match = /^([+-]?\d+)(?:([.,])(\d+))?(\s*\D*)$/.exec(text.trim());
  if (!match) return { allowed: "a number" };
  const [, whole, mark, part, unit = ""] = match;
  const right = part === undefined ? `${whole}` : `${whole}.${part}`;
  if (unit.trim() !== "") return { allowed: "a number alone, without its unit", right };
  return mark === ","
    ? { allowed: "a number with a point in place of the comma", right }
    : { allowed: "a number" };
}
