/**
 * The text with its first `part` replaced.
 * @param where names the text in the error
 * @throws Error where there is no such part: a replacement that did nothing would go unseen
 */
export function replaced(text: string, part: string, by: string, where: string): string {
  if (!text.includes(part)) throw new Error(`${where}: found no ${part}; allowed: a text with it`);
  return text.replace(part, () => by);
}
