/** Slips in the lines that give a lesson its shape: the rules around its settings, a step's heading. */
import { newId } from "../read/new-id.ts";
import type { Slip } from "./slip.ts";

const SETTING = /^[A-Za-z]+:(\s|$)/;
const NEEDED = "--- above and below the lesson's settings (front matter): id, number, title and so on";
const isRule = (line: string | undefined): boolean => /^-{3,}\s*$/.test(line ?? "");

/** null where the settings stand between two rules. */
export function frontSlip(lines: readonly string[]): (Omit<Slip, "fix"> & Partial<Slip>) | null {
  const [first = ""] = lines;
  if (first.trimEnd() === "---") {
    if (lines.some((line, index) => index > 0 && line.trimEnd() === "---")) return null;
    const step = lines.findIndex((line) => /^##(\s|$)/.test(line));
    let line = step < 0 ? lines.length - 1 : step - 1;
    while (line > 0 && lines[line]?.trim() === "") line--;
    const last = lines[line] ?? "";
    return { line, found: "front matter without an end", allowed: NEEDED, fix: [last, `${last}\n---`] };
  }
  if (SETTING.test(first))
    return {
      line: 0,
      found: "settings without a line of --- above them",
      allowed: NEEDED,
      fix: [first, `---\n${first}`],
    };
  if (isRule(first)) return { line: 0, found: JSON.stringify(first), allowed: NEEDED, fix: [first, "---"] };
  return {
    line: 0,
    found: first === "" ? "no settings at the top" : JSON.stringify(first.slice(0, 60)),
    allowed: NEEDED,
  };
}

/** A step's heading with too few or too many signs, or without its blank: known by the id behind it. */
export function headingSlip(line: string): Slip | null {
  if (line.length > 300 || /^##\s/.test(line) || !line.startsWith("#")) return null;
  const match = /^#+\s*([^{}]*\{#[^{}]*\})\s*$/.exec(line);
  if (!match) return null;
  return {
    line: 0,
    found: JSON.stringify(line.slice(0, 60)),
    allowed: "a step's heading: two # and a blank, ## Title {#its-id}",
    fix: [line, `## ${match[1]}`],
  };
}

/** The heading with an id that fits: made of what stands there, else of the title. */
export function withId(line: string, title: string, id: string, taken: ReadonlySet<string>): string {
  const loose = /\{([^{}#]+)\}\s*$/.exec(line)?.[1];
  const words = id === "" && loose ? title.slice(0, title.lastIndexOf("{")).trimEnd() : title;
  return `## ${words} {#${newId(id || loose || title, [...taken])}}`;
}
