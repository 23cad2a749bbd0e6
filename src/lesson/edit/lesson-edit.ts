/** Edits of a lesson's text as a form makes them: each changes only the lines that it is about. */
import { entryAt } from "../../sim/checked/present.ts";
import { type BlockName, PARTS, type PartName } from "../read/lesson-sections.ts";
import { joinLike, type Lines, type Outline, outlineOf, type StepPlace } from "./text-outline.ts";
import { type Path, setIn } from "./yaml-edit.ts";

const FRONT_ORDER = [
  "id",
  "language",
  "number",
  "title",
  "reader",
  "aim",
  "remember",
  "goals",
  "minutes",
  "terms",
  "sources",
];

const stepOf = ({ steps }: Outline, index: number): StepPlace => entryAt(steps, index);

function withLines(text: string, { lines }: Outline, { from, to }: Lines, by: readonly string[]): string {
  return joinLike(text, [...lines.slice(0, from), ...by, ...lines.slice(to)]);
}

/** @returns null where the settings cannot be read */
export function setFront(text: string, path: Path, value: unknown): string | null {
  const outline = outlineOf(text);
  if (!outline.front) {
    const made = setIn("", path, value);
    return made === null ? null : withLines(text, outline, { from: 0, to: 0 }, ["---", made, "---", ""]);
  }
  const { from, to } = outline.front;
  const next = setIn(outline.lines.slice(from, to).join("\n"), path, value, FRONT_ORDER);
  return next === null ? null : withLines(text, outline, outline.front, next === "" ? [] : next.split("\n"));
}

export function setHeading(text: string, index: number, title: string, id: string): string {
  const outline = outlineOf(text);
  const { from } = stepOf(outline, index);
  const words = title.replaceAll(/\s*\n\s*/g, " ");
  return withLines(text, outline, { from, to: from + 1 }, [`## ${words} {#${id}}`.replace("##  ", "## ")]);
}

/** The words of a part; "" takes a part away, but for the plain one, which every step has. */
export function setPart(text: string, index: number, name: PartName, words: string): string {
  const outline = outlineOf(text);
  const step = stepOf(outline, index);
  const part = step.parts[name];
  const written = words.trim() === "" ? [] : words.replace(/\s+$/, "").split("\n");
  if (!part) {
    if (written.length === 0) return text;
    const at = placeOfPart(outline, step, name);
    return withLines(text, outline, { from: at, to: at }, ["", `### ${name}`, ...written]);
  }
  const inside = step.fences.filter(({ from, to }) => from > part.from && to <= part.to);
  const first = inside[0]?.from ?? part.to;
  const blocks = outline.lines.slice(first, part.to).filter((_, at) => {
    const line = first + at;
    return (
      inside.some(({ from, to }) => line >= from && line < to) || entryAt(outline.lines, line).trim() === ""
    );
  });
  // Blank lines before a block, or before what follows, stay as they are.
  const gap = blanksBefore(outline.lines, part.from + 1, first);
  const heading = written.length === 0 && name !== "plain" ? [] : [`### ${name}`];
  const kept =
    heading.length === 0 && inside.length === 0
      ? []
      : [...outline.lines.slice(first - gap, first), ...blocks];
  return withLines(text, outline, part, [...heading, ...written, ...kept]);
}

function blanksBefore(lines: readonly string[], from: number, to: number): number {
  let count = 0;
  while (to - count > from && entryAt(lines, to - count - 1).trim() === "") count++;
  return count;
}

/** Behind the last part that stands before it in the usual order, else before all parts; blank lines stay below. */
function placeOfPart(outline: Outline, step: StepPlace, name: PartName): number {
  const earlier = PARTS.slice(0, PARTS.indexOf(name)).flatMap((each) => step.parts[each] ?? []);
  const first = Math.min(step.to, ...Object.values(step.parts).map(({ from }) => from));
  const end = earlier.length > 0 ? Math.max(...earlier.map(({ to }) => to)) : first;
  return end - blanksBefore(outline.lines, step.from + 1, end);
}

/** @returns null where the block cannot be read; a block left empty goes */
export function setBlock(
  text: string,
  index: number,
  name: BlockName,
  edits: readonly (readonly [Path, unknown])[],
): string | null {
  const outline = outlineOf(text);
  const block = stepOf(outline, index).blocks[name];
  let next: string | null = block ? outline.lines.slice(block.from, block.to).join("\n") : "";
  for (const [path, value] of edits) if (next !== null) next = setIn(next, path, value, ORDERS[name]);
  if (next === null) return null;
  return setBlockText(text, index, name, next);
}

const ORDERS: Readonly<Record<BlockName, readonly string[]>> = {
  scene: [
    "from",
    "scene",
    "stage",
    "preset",
    "case",
    "body",
    "volumeRule",
    "set",
    "view",
    "beside",
    "seconds",
  ],
  question: ["kind", "ask", "room", "reveal", "control", "until", "of", "value", "unit", "best", "within"],
  task: ["ask", "answer"],
};

/** "" takes the block away. */
export function setBlockText(text: string, index: number, name: BlockName, yaml: string): string {
  const outline = outlineOf(text);
  const step = stepOf(outline, index);
  const block = step.blocks[name];
  const written = yaml.trim() === "" ? [] : yaml.replace(/\n+$/, "").split("\n");
  if (block && written.length > 0) return withLines(text, outline, block, written);
  if (block) {
    const from = block.from - 1;
    const blank = outline.lines[block.to + 1]?.trim() === "" ? 2 : 1;
    return withLines(text, outline, { from, to: Math.min(step.to, block.to + blank) }, []);
  }
  if (written.length === 0) return text;
  const at = placeOfBlock(step, name);
  const lead = outline.lines[at - 1]?.trim() === "" ? [] : [""];
  const trail = outline.lines[at]?.trim() === "" ? [] : [""];
  return withLines(text, outline, { from: at, to: at }, [
    ...lead,
    `\`\`\`${name}`,
    ...written,
    "```",
    ...trail,
  ]);
}

/** A scene stands first, a question behind it, both before the words. */
function placeOfBlock({ from, blocks, parts }: StepPlace, name: BlockName): number {
  if (name === "scene") return from + 1;
  const before = name === "question" ? blocks.scene : (blocks.question ?? blocks.scene);
  if (before && !Object.values(parts).some((part) => part.from < before.from)) return before.to + 1;
  return from + 1;
}

/** A step with a title, "" where it has none yet, behind step `after` (-1: the first). */
export function addStep(text: string, after: number, title: string, id: string): string {
  return arranged(text, (steps) => steps.toSpliced(after + 1, 0, [`## ${title} {#${id}}`, "", "### plain"]));
}

export const removeStep = (text: string, index: number): string =>
  arranged(text, (steps) => steps.toSpliced(index, 1));

export const moveStep = (text: string, from: number, to: number): string =>
  arranged(text, (steps) => steps.toSpliced(from, 1).toSpliced(to, 0, entryAt(steps, from)));

export const duplicateStep = (text: string, index: number, id: string): string =>
  arranged(text, (steps) => {
    const [heading = "", ...rest] = entryAt(steps, index);
    const at = heading.lastIndexOf("{#");
    const title = (at < 0 ? heading : heading.slice(0, at)).trimEnd();
    return steps.toSpliced(index + 1, 0, [`${title} {#${id}}`, ...rest]);
  });

/** The steps in another order: each keeps its lines, one blank line at least stands between two. */
function arranged(text: string, arrange: (steps: string[][]) => string[][]): string {
  const { lines, steps } = outlineOf(text);
  const ended = lines.at(-1) === "" ? lines.slice(0, -1) : lines;
  const first = steps[0]?.from ?? ended.length;
  const parts = steps.map(({ from, to }) => ended.slice(from, to));
  const next = arrange(parts).map((part) => [...part]);
  const all = [ended.slice(0, first), ...next].filter((part) => part.length > 0);
  for (const part of all.slice(0, -1)) if (part.at(-1)?.trim() !== "") part.push("");
  const last = all.at(-1);
  while (last && last.length > 1 && last.at(-1)?.trim() === "") last.pop();
  return joinLike(text, [...all.flat(), ""]);
}
