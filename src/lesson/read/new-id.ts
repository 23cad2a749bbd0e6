/** Small letters, digits and hyphens, as file names and addresses take them. */

/** What an id may be; a word that every object knows, such as `constructor`, names nothing. */
const ID = /^[a-z0-9]+(-[a-z0-9]+)*$/;
export const hasIdLetters = (text: string): boolean => ID.test(text);
export const isReserved = (text: string): boolean => text in {};

/** @param longest characters */
export const slugOf = (words: string, longest: number): string =>
  words
    .replaceAll("ß", "ss")
    .normalize("NFKD")
    .toLowerCase()
    .replaceAll(/\p{M}/gu, "")
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-|-$/g, "")
    .slice(0, longest)
    .replace(/-$/, "");

/** An id made of a title, unlike all others. */
export function newId(title: string, taken: readonly string[]): string {
  const base = slugOf(title, 30) || "step";
  let id = base;
  for (let count = 2; taken.includes(id) || isReserved(id); count++) id = `${base}-${count}`;
  return id;
}
