/** A fault that one touch fixes: the checker knows what would be right. */
import { lineOfFault } from "../../lesson/edit/field-of-fault.ts";
import type { Fault } from "../../sim/faults.ts";

export interface PlainFix {
  /** The whole text with the right words in place of the wrong ones. */
  readonly text: string;
  /** What will stand there, shortened. */
  readonly word: string;
}

const LONGEST = 48;

/** @returns null unless it is plain what is meant */
export function plainFix(fault: Fault, text: string): PlainFix | null {
  const lines = text.split("\n");
  const line = lineOfFault(fault) - 1;
  const fix = fault.fix ? fixAt(fault.fix, lines.slice(line).join("\n")) : nearWord(fault, lines[line] ?? "");
  if (!fix) return null;
  const rest = fault.fix ? [] : lines.slice(line + 1);
  const word = fix.word.trim().replaceAll(/\s*\n\s*/g, " ⏎ ");
  return {
    text: [...lines.slice(0, line), fix.line, ...rest].join("\n"),
    word: word.length > LONGEST ? `${word.slice(0, LONGEST - 1)}…` : word,
  };
}

/** In the lines from the fault's on, where it begins within the first. */
function fixAt([wrong, right]: NonNullable<Fault["fix"]>, rest: string) {
  const eol = rest.includes("\r\n") ? "\r\n" : "\n";
  const [from, to] = [wrong.replaceAll("\n", eol), right.replaceAll("\n", eol)];
  const at = rest.indexOf(from);
  if (at < 0 || rest.slice(0, at).includes("\n")) return null;
  return { line: rest.slice(0, at) + to + rest.slice(at + from.length), word: right };
}

/** The checker knows a near word, and the wrong one stands once in the line. */
function nearWord({ found, allowed }: Fault, line: string) {
  const word = /nearest: ([\w.-]+)/.exec(allowed)?.[1];
  const wrong = found
    .match(/[\w.-]+/g)
    ?.filter((each) => line.includes(each))
    .at(-1);
  if (!word || !wrong || line.split(wrong).length !== 2) return null;
  return { line: line.replace(wrong, () => word), word };
}
