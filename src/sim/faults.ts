import { entryAt, lastOf } from "./checked/present.ts";

/** Why input is refused: where, what was found, what is allowed. Collected at the boundary; nothing inside sim throws these. */
export interface Fault {
  /** Key path such as `set.conduitDiameter`, or file and line such as `03-pathways/lesson.md:14`. */
  readonly path: string;
  readonly found: string;
  readonly allowed: string;
  /** Where it is plain: what stands in the text from the fault's line on, and what would be right in its place. */
  readonly fix?: readonly [wrong: string, right: string];
}

/** One line per fault, for a terminal or a message on the page. */
export const describeFault = (fault: Fault): string =>
  `${fault.path}: found ${fault.found}; allowed: ${fault.allowed}`;

/** Letters: no allowed word is longer, and the edit distance to a long text is slow to compute. */
const LONGEST_WORD = 40;

/** The allowed word closest to `word` by edit distance, or undefined if none is near (more than half the letters differ). */
export function nearestMatch(word: string, allowed: readonly string[]): string | undefined {
  if (word.length > LONGEST_WORD) return undefined;
  let best: string | undefined;
  let bestDistance = Math.ceil(word.length / 2) + 1;
  for (const candidate of allowed) {
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase());
    if (distance < bestDistance) {
      bestDistance = distance;
      best = candidate;
    }
  }
  return best;
}

function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      next.push(Math.min(entryAt(next, j - 1) + 1, entryAt(row, j) + 1, entryAt(row, j - 1) + change));
    }
    row = next;
  }
  return lastOf(row);
}

/** A list of allowed words on one line; long ones are cut. */
export const describeList = (words: readonly string[]): string =>
  words.length > 12 ? `${words.slice(0, 12).join(", ")}, ... (${words.length} in all)` : words.join(", ");
