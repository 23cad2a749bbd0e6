/** A fault that one word would mend. */
import type { Fault } from "../../sim/faults.ts";

export interface PlainFix {
  /** The line with the word in place of the wrong one. */
  readonly line: string;
  readonly word: string;
}

/** @returns null unless the checker knows a near word and the wrong one stands once in the line */
export function plainFix({ found, allowed }: Fault, line: string): PlainFix | null {
  const word = /nearest: ([\w.-]+)/.exec(allowed)?.[1];
  const wrong = found
    .match(/[\w.-]+/g)
    ?.filter((each) => line.includes(each))
    .at(-1);
  if (!word || !wrong || line.split(wrong).length !== 2) return null;
  return { line: line.replace(wrong, () => word), word };
}
