/** The lines that give a lesson its shape, each read in one pass: how long a line is must not matter. */

import { entryAt } from "../../sim/checked/present.ts";

/** `## Title {#its-id}`: both empty where they are not there; null for any other line. */
export function readStepHeading(line: string): { readonly title: string; readonly id: string } | null {
  if (!/^##(\s|$)/.test(line)) return null;
  const rest = line.slice(2).trim();
  if (!rest.endsWith("}")) return { title: rest, id: "" };
  const at = rest.indexOf("{#", rest.lastIndexOf("}", rest.length - 2) + 1);
  return at < 0
    ? { title: rest, id: "" }
    : { title: rest.slice(0, at).trimEnd(), id: rest.slice(at + 2, -1) };
}

export interface Fence {
  /** three signs or more */
  readonly mark: string;
  /** the word behind them, "" = none */
  readonly name: string;
}

/** A line that opens or closes a block: three or more of ` or ~, and one word at most. */
export function readFence(line: string): Fence | null {
  const text = line.trim();
  const sign = text.charAt(0);
  if (sign !== "`" && sign !== "~") return null;
  let count = 1;
  while (text.charAt(count) === sign) count++;
  const name = text.slice(count).trim();
  return count < 3 || /\s/.test(name) ? null : { mark: text.slice(0, count), name };
}

/** Begins what cannot stand within a block: a part, a step with its id, a further block. */
const BEYOND =
  /^(### *(plain|technical|notes|caution)\s*|##\s.*\{#[^}]*\}\s*|[`~]{3,} *(scene|question|task)\s*)$/;

/** Where the block ends that opens at `from`: the line of its closing mark, or where that is missing its last line. */
export function blockEnd(
  lines: readonly string[],
  from: number,
): { readonly end: number; readonly closed: boolean } {
  const mark = readFence(entryAt(lines, from))?.mark ?? null;
  let end = from + 1;
  while (end < lines.length) {
    const line = entryAt(lines, end);
    if (fenceAfter(mark, line) === null) return { end, closed: true };
    if (BEYOND.test(line)) break;
    end++;
  }
  do end--;
  while (end > from && entryAt(lines, end).trim() === "");
  return { end, closed: false };
}

/** The mark that is open after this line, null for none. */
export function fenceAfter(open: string | null, line: string): string | null {
  const fence = readFence(line);
  if (!fence) return open;
  if (open === null) return fence.mark;
  return fence.mark.startsWith(open) && fence.name === "" ? null : open;
}
