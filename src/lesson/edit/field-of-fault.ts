/** Which field of a form a fault belongs to: by its line, and by the key that it names. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Fault } from "../../sim/faults.ts";
import { BLOCKS, PARTS } from "../read/lesson-sections.ts";
import { type Lines, type Outline, type StepPlace, splitSaid } from "./text-outline.ts";
import { type LenientRecord, readLeniently } from "./yaml-edit.ts";

export interface FieldPlace {
  /** Index of the step; -1 for what stands before the first. */
  readonly step: number;
  /** Such as "title", "said", "notes", "question.answers.a.say". */
  readonly field: string;
}

/** Line of a fault, counted from 1; 1 where it names none. */
export const lineOfFault = ({ path }: Fault): number => Number(path.split(":").pop()) || 1;

export function fieldOfFault(outline: Outline, fault: Fault): FieldPlace {
  const line = lineOfFault(fault) - 1;
  const step = outline.steps.findLastIndex(({ from }) => from <= line);
  if (step < 0) return { step, field: keyAt(outline, outline.front, line, fault, "front") };
  return { step, field: fieldInStep(outline, entryAt(outline.steps, step), line, fault) };
}

function fieldInStep(outline: Outline, step: StepPlace, line: number, fault: Fault): string {
  if (line === step.from) return fieldOfHeading(fault.found);
  for (const name of BLOCKS) {
    const block = step.blocks[name];
    if (block && line >= block.from - 1 && line <= block.to) return keyAt(outline, block, line, fault, name);
  }
  for (const name of PARTS) {
    const part = step.parts[name];
    if (!part || line < part.from || line >= part.to) continue;
    if (name !== "plain") return name;
    const { lines } = outline;
    const start = lines.findIndex((text, at) => at > part.from && text.trim() !== "");
    const { said } = splitSaid(lines.slice(start, part.to).join("\n"));
    return line < start + said.split("\n").length ? "said" : "more";
  }
  return "step";
}

function fieldOfHeading(found: string): string {
  if (/\bid\b/.test(found)) return "id";
  if (/plain version/.test(found)) return "said";
  if (/asked of the room/.test(found)) return "question.ask";
  return "title";
}

/** What stands in settings, read once for all their faults: a hundred of them would cost a second. */
const read = new WeakMap<Lines, LenientRecord | null>();
function recordIn({ lines }: Outline, place: Lines): LenientRecord | null {
  const known = read.get(place);
  if (known !== undefined) return known;
  const record = readLeniently(lines.slice(place.from, place.to).join("\n"));
  read.set(place, record);
  return record;
}

function keyAt(
  outline: Outline,
  place: Lines | null,
  line: number,
  { found }: Fault,
  region: string,
): string {
  if (!place) return region;
  const named = /^(?:no |unknown key )?([A-Za-z][\w-]*(?:\.[\w-]+)*)/.exec(found)?.[1];
  const here = recordIn(outline, place)?.places.filter((each) => each.line === line - place.from) ?? [];
  const paths = here.map(({ path }) => path.join("."));
  if (named && (paths.includes(named) || found.startsWith(`no ${named}`))) return `${region}.${named}`;
  return paths[0] ? `${region}.${paths[0]}` : region;
}
