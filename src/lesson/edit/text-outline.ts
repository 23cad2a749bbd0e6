/** Where the parts of a lesson's text stand; reads any text, however faulty, and refuses nothing. Lines are counted from 0. */
import { entryAt } from "../../sim/checked/present.ts";
import { FIGURE_MARK } from "../own/own-figures.ts";
import { blockEnd, readFence, readStepHeading } from "../read/heading.ts";
import { BLOCKS, type BlockName, PARTS, type PartName } from "../read/lesson-sections.ts";
import { headingSlip } from "../slips/shape-slips.ts";

/** From the first line to the one behind the last. */
export interface Lines {
  readonly from: number;
  readonly to: number;
}

export interface StepPlace extends Lines {
  readonly id: string;
  readonly title: string;
  /** From the part's heading on; blocks may stand among its lines. */
  readonly parts: Partial<Record<PartName, Lines>>;
  /** From fence to fence, every block of the step. */
  readonly fences: readonly Lines[];
  /** The lines between the fences. */
  readonly blocks: Partial<Record<BlockName, Lines>>;
}

export interface Outline {
  readonly lines: readonly string[];
  /** The lines between the two rules at the top. */
  readonly front: Lines | null;
  readonly steps: readonly StepPlace[];
}

const linesOf = (text: string): string[] => text.replace(/^\uFEFF/, "").split(/\r\n|\r|\n/);

/** With the line ends and the mark at the start that `text` has. */
export const joinLike = (text: string, lines: readonly string[]): string =>
  (text.startsWith("\uFEFF") ? "\uFEFF" : "") + lines.join(text.includes("\r\n") ? "\r\n" : "\n");

export function outlineOf(text: string): Outline {
  const lines = linesOf(text);
  const front = frontOf(lines);
  const headings: number[] = [];
  for (let index = front ? front.to + 1 : 0; index < lines.length; index++) {
    const line = entryAt(lines, index);
    if (readFence(line) && headings.length > 0) index = blockEnd(lines, index).end;
    else if (readStepHeading(headingSlip(line)?.fix[1] ?? line)) headings.push(index);
  }
  const steps = headings.map((from, index) => stepAt(lines, from, headings[index + 1] ?? lines.length));
  return { lines, front, steps };
}

function frontOf(lines: readonly string[]): Lines | null {
  if (lines[0]?.trimEnd() !== "---") return null;
  const to = lines.findIndex((line, index) => index > 0 && line.trimEnd() === "---");
  return to < 0 ? null : { from: 1, to };
}

function stepAt(lines: readonly string[], from: number, to: number): StepPlace {
  const parts: Partial<Record<PartName, { from: number; to: number }>> = {};
  const fences: Lines[] = [];
  const blocks: Partial<Record<BlockName, Lines>> = {};
  let part: { from: number; to: number } | null = null;
  for (let index = from + 1; index < to; index++) {
    const line = entryAt(lines, index);
    const fence = readFence(line);
    if (fence) {
      const { end, closed } = blockEnd(lines, index);
      const name = BLOCKS.find((each) => each === fence.name);
      if (name) blocks[name] ??= { from: index + 1, to: closed ? end : end + 1 };
      fences.push({ from: index, to: end + 1 });
      index = end;
    } else if (/^###(\s|$)/.test(line)) {
      if (part) part.to = index;
      const name = PARTS.find((each) => each === line.slice(3).trim());
      part = { from: index, to };
      if (name) parts[name] ??= part;
    }
  }
  const heading = entryAt(lines, from);
  const { title, id } = readStepHeading(headingSlip(heading)?.fix[1] ?? heading) ?? { title: "", id: "" };
  return { from, to, id, title, parts, fences, blocks };
}

/** The part's own words: without heading, blocks and blank lines around. */
export function partText(outline: Outline, step: StepPlace, name: PartName): string {
  const part = step.parts[name];
  return part
    ? wordLines(outline, step, part)
        .join("\n")
        .replace(/^\s*\n/, "")
        .trimEnd()
    : "";
}

const wordLines = ({ lines }: Outline, { fences }: StepPlace, part: Lines): string[] =>
  lines
    .slice(part.from + 1, part.to)
    .filter((_, at) => !fences.some(({ from, to }) => part.from + 1 + at >= from && part.from + 1 + at < to));

/** First paragraph and the rest: what is said, and what is there to be read. */
export function splitSaid(text: string): { readonly said: string; readonly more: string } {
  const [said = "", ...more] = text.split(/\n[ \t]*\n/);
  // A figure is looked at, not said.
  if (FIGURE_MARK.exec(said)?.[0] === said.trim()) return { said: "", more: text };
  return { said, more: more.join("\n\n").replace(/^\s*\n/, "") };
}
