/** A step by another id: what names it in the lesson follows in the same edit, or the edit is not made. */
import { entryAt } from "../../sim/checked/present.ts";
import { hasIdLetters, isReserved } from "../read/new-id.ts";
import { setBlock, setFront, setHeading } from "./lesson-edit.ts";
import { joinLike, type Lines, type Outline, outlineOf } from "./text-outline.ts";
import { type Path, readLeniently } from "./yaml-edit.ts";

/** `letters`: no id; `reserved`: a word that names nothing; `taken`: another step has it; `unread`: settings that cannot be read may name the step */
export type RenameRefusal = "letters" | "reserved" | "taken" | "unread";
export type Renamed = { readonly text: string } | { readonly refused: RenameRefusal };

export function renameStep(text: string, index: number, id: string): Renamed {
  const outline = outlineOf(text);
  const { id: old, title } = entryAt(outline.steps, index);
  if (id === old) return { text };
  if (!hasIdLetters(id)) return { refused: "letters" };
  if (isReserved(id)) return { refused: "reserved" };
  if (outline.steps.some((step) => step.id === id)) return { refused: "taken" };
  const named = setHeading(text, index, title, id);
  // Of two steps with one id nobody can say which is meant.
  if (old === "" || outline.steps.filter((step) => step.id === old).length > 1) return { text: named };
  const followed = withReferences(named, old, id);
  return followed === null ? { refused: "unread" } : { text: followed };
}

/** null where settings cannot be read, or not be changed, that name the step */
function withReferences(text: string, old: string, id: string): string | null {
  const outline = outlineOf(text);
  const front = recordOf(outline, outline.front, old);
  if (front === null) return null;
  const { id: lesson, recall } = front;
  const prefixes = ["", `${typeof lesson === "string" ? lesson : ""}#`];
  let next: string | null = text;
  for (const [place, named] of (Array.isArray(recall) ? recall : []).entries()) {
    const prefix = prefixes.find((each) => `${each}${old}` === named);
    if (prefix !== undefined && next !== null) next = setFront(next, ["recall", place], `${prefix}${id}`);
  }
  for (const [index, { blocks }] of outline.steps.entries()) {
    const question = recordOf(outline, blocks.question, old);
    if (question === null) return null;
    const edits = pathsNaming(question, old).map((path) => [path, id] as const);
    if (next !== null && edits.length > 0) next = setBlock(next, index, "question", edits);
  }
  return next && withLinks(next, prefixes, old, id);
}

/** {} where there is nothing; null where it cannot be read and the id stands in it */
function recordOf(
  { lines }: Outline,
  place: Lines | null | undefined,
  id: string,
): Readonly<Record<string, unknown>> | null {
  if (!place) return {};
  const text = lines.slice(place.from, place.to).join("\n");
  return readLeniently(text)?.value ?? (text.includes(id) ? null : {});
}

/** The keys of a question whose value is the id of a step. */
function pathsNaming(question: Readonly<Record<string, unknown>>, id: string): readonly Path[] {
  const { reveal, answers } = question;
  const entries = typeof answers === "object" ? Object.entries(answers ?? {}) : [];
  return [
    ...(reveal === id ? [["reveal"]] : []),
    ...entries.flatMap(([key, answer]) =>
      (answer as { show?: unknown } | null)?.show === id ? [["answers", key, "show"]] : [],
    ),
  ];
}

/** Links in words, those of questions and tasks included. */
function withLinks(text: string, prefixes: readonly string[], old: string, id: string): string {
  const targets = prefixes.map((prefix) => `](${prefix.replace(/#$/, "")}#${old})`);
  return joinLike(
    text,
    outlineOf(text).lines.map((line) =>
      targets.reduce(
        (each, target) => each.replaceAll(target, `${target.slice(0, -old.length - 1)}${id})`),
        line,
      ),
    ),
  );
}
