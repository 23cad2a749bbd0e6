/** The outer shape of a lesson file: front matter, steps, their blocks and parts, each with its line. Reads lines, understands nothing. */

import { entryAt, lastOf, present } from "../../sim/checked/present.ts";
import { nearestMatch } from "../../sim/faults.ts";
import { LIMITS } from "../format/limits.ts";
import { frontSlip, headingSlip, withId } from "../slips/shape-slips.ts";
import { blockEnd, readFence, readStepHeading } from "./heading.ts";
import { hasIdLetters, isReserved, newId } from "./new-id.ts";
import type { Refuse } from "./read-prose.ts";

/** Lines of the file from `line` on (1-based). */
export interface Extract {
  readonly text: string;
  readonly line: number;
}

export const PARTS = ["plain", "technical", "notes", "caution"] as const;
export type PartName = (typeof PARTS)[number];
export const BLOCKS = ["scene", "question", "task"] as const;
export type BlockName = (typeof BLOCKS)[number];

export interface StepExtract {
  readonly id: string;
  readonly title: string;
  readonly line: number;
  readonly blocks: Partial<Record<BlockName, Extract>>;
  readonly parts: Partial<Record<PartName, Extract>>;
}

export interface LessonExtract {
  readonly front: Extract | null;
  readonly steps: readonly StepExtract[];
}

export function splitLesson(text: string, refuse: Refuse): LessonExtract {
  const tooMuch = (found: string, most: number): LessonExtract => {
    refuse(1, found, `at most ${most}`);
    return { front: null, steps: [] };
  };
  if (text.length > LIMITS.file) return tooMuch(`${text.length} characters`, LIMITS.file);
  const lines = text.replace(/^\uFEFF/, "").split(/\r\n|\r|\n/);
  if (lines.length > LIMITS.lines) return tooMuch(`${lines.length} lines`, LIMITS.lines);
  const { front, next } = splitFront(lines, refuse);
  const steps: { extract: StepExtract; from: number; to: number }[] = [];
  const ids = new Set<string>();
  for (let index = next; index < lines.length; index++) {
    const line = entryAt(lines, index);
    if (readFence(line) && steps.length > 0) {
      index = blockEnd(lines, index).end;
      continue;
    }
    const slip = headingSlip(line);
    if (slip) refuse(index + 1, slip.found, slip.allowed, slip.fix);
    const heading = readStepHeading(slip ? slip.fix[1] : line);
    if (heading) {
      if (steps.length > 0) lastOf(steps).to = index;
      if (steps.length === LIMITS.steps) {
        refuse(index + 1, "a further step", `at most ${LIMITS.steps} steps`);
        break;
      }
      const extract = checkHeading(heading, line, index + 1, ids, slip ? () => {} : refuse);
      ids.add(extract.id);
      steps.push({ extract, from: index + 1, to: lines.length });
    } else if (steps.length === 0 && line.trim() !== "") {
      // One fault is enough; the rest up to the first step is of the same kind, as it is where the settings were refused.
      if (front) refuse(index + 1, shorten(line), "a step, such as: ## Title {#its-id}");
      while (index + 1 < lines.length && !/^##(\s|$)/.test(entryAt(lines, index + 1))) index++;
    }
  }
  for (const { extract, from, to } of steps) splitStep(extract, lines, from, to, refuse);
  return { front, steps: steps.map(({ extract }) => extract) };
}

const shorten = (line: string): string => JSON.stringify(line.length > 60 ? `${line.slice(0, 57)}...` : line);

function splitFront(lines: readonly string[], refuse: Refuse): { front: Extract | null; next: number } {
  const slip = frontSlip(lines);
  if (slip) {
    refuse(slip.line + 1, slip.found, slip.allowed, slip.fix);
    return { front: null, next: 0 };
  }
  const end = lines.findIndex((line, index) => index > 0 && line.trimEnd() === "---");
  return { front: { text: lines.slice(1, end).join("\n"), line: 2 }, next: end + 1 };
}

function checkHeading(
  { title, id }: { readonly title: string; readonly id: string },
  line: string,
  number: number,
  ids: ReadonlySet<string>,
  refuse: Refuse,
): StepExtract {
  if (title === "") refuse(number, "a step without a title", `## Title {#${id || "its-id"}}`);
  if (title.length > LIMITS.title)
    refuse(number, `a title of ${title.length} characters`, `at most ${LIMITS.title}`);
  if (!hasIdLetters(id)) {
    refuse(
      number,
      id === "" ? "a step without an id" : `id ${shorten(id)}`,
      "{#its-id} of small letters, digits and hyphens",
      title === "" ? undefined : [line, withId(line, title, id, ids)],
    );
  } else if (isReserved(id)) refuse(number, `id "${id}"`, "another word");
  else if (ids.has(id))
    refuse(number, `id "${id}" twice`, "an id of its own", [`{#${id}}`, `{#${newId(id, [...ids])}}`]);
  return { id, title, line: number, blocks: {}, parts: {} };
}

function splitStep(
  step: StepExtract,
  lines: readonly string[],
  from: number,
  to: number,
  refuse: Refuse,
): void {
  let part: PartName | null = null;
  let partFrom = from;
  let strayed = false;
  /** A part that was refused may have been the plain one. */
  let refused = false;
  const parts: Partial<Record<PartName, Extract>> = step.parts;
  // Lines of blocks stay in a part as empty ones, so that its line numbers hold.
  let kept: string[] = [];
  const close = () => {
    if (part !== null) keepExtract(parts, part, { text: kept.join("\n"), line: partFrom + 1 }, refuse);
  };
  for (let index = from; index < to; index++) {
    const line = entryAt(lines, index);
    const block = readFence(line);
    if (block) {
      const { end, closed } = blockEnd(lines, index);
      if (!closed) refuseOpenBlock(lines, index, end, refuse);
      const extract = { text: lines.slice(index + 1, closed ? end : end + 1).join("\n"), line: index + 2 };
      const name = named(block.name, BLOCKS, index + 1, refuse);
      if (name) keepExtract(step.blocks, name, extract, refuse);
      for (let each = index; each <= end; each++) kept.push("");
      index = end;
    } else if (/^###(\s|$)/.test(line)) {
      close();
      part = named(line.slice(3).trim(), PARTS, index + 1, refuse);
      strayed = part === null;
      refused ||= strayed;
      partFrom = index + 1;
      kept = [];
    } else {
      if (part === null && line.trim() !== "" && !strayed) {
        strayed = true;
        refused = true;
        const wanted = `text beneath ${PARTS.map((each) => `### ${each}`).join(", ")}`;
        refuse(index + 1, shorten(line), wanted, [line, `### plain\n${line}`]);
      }
      kept.push(line);
    }
  }
  close();
  if (!parts.plain && !refused) refuse(step.line, `step "${step.id}" without a plain version`, "### plain");
}

/** The block's last line is where its end is missing. */
function refuseOpenBlock(lines: readonly string[], from: number, last: number, refuse: Refuse): void {
  const { mark, name } = present(readFence(entryAt(lines, from)));
  const line = entryAt(lines, last);
  refuse(
    last + 1,
    `a block without an end: ${name || "it"} begins in line ${from + 1}`,
    `a line of ${shorten(mark)} below its last line`,
    mark.length > 10 ? undefined : [line, `${line}\n${mark}`],
  );
}

function named<T extends string>(
  name: string,
  allowed: readonly T[],
  line: number,
  refuse: Refuse,
): T | null {
  const exact = allowed.find((each) => each === name);
  if (exact) return exact;
  const near = nearestMatch(name, allowed);
  refuse(line, JSON.stringify(name.slice(0, 40)), allowed.join(", ") + (near ? `; nearest: ${near}` : ""));
  return null;
}

function keepExtract<T extends string>(
  record: Partial<Record<T, Extract>>,
  name: T,
  extract: Extract,
  refuse: Refuse,
): void {
  if (record[name]) refuse(extract.line - 1, `${name} twice in a step`, `one ${name}`);
  else if (extract.text.length > LIMITS.part) {
    refuse(extract.line, `${extract.text.length} characters`, `at most ${LIMITS.part} in one part`);
  } else record[name] = extract;
}
