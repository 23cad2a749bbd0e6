/** What a lesson says of the shared files and of other lessons: each key must be there. */
import { type Fault, nearestMatch } from "../../sim/faults.ts";
import type { Lesson } from "../lesson.ts";
import type { Glossary, Sources } from "../library/glossary.ts";
import { withOwnWords } from "../own/own-keys.ts";
import { inlinesOf, type StepReference } from "../prose.ts";
import type { Refuse } from "../read/read-prose.ts";
import { wordsIn, wordsOfTask } from "../read/references.ts";

export interface Library {
  readonly glossary: Glossary;
  readonly sources: Sources;
  /** of the same language, the one that is checked included */
  readonly lessons: readonly Lesson[];
}

/** `lineOf`: where a key of the front matter stands, as far as that is known */
export function checkLibrary(
  lesson: Lesson,
  shared: Library,
  refuse: Refuse,
  lineOf: (key: string) => number = () => 1,
): void {
  const library = withOwnWords(shared, [lesson]);
  const known = (kind: string, key: string, keys: readonly string[], line: number) => {
    if (keys.includes(key)) return;
    const near = nearestMatch(
      key,
      keys.map((each) => each.replace(`${lesson.id}--`, "")),
    );
    refuse(
      line,
      `${kind} "${key}"`,
      near
        ? `a key of the ${kind} file; nearest: ${near}`
        : `a key of the ${kind} file, or of the lesson's own`,
    );
  };
  const elsewhere = (to: StepReference, line: number, asked: boolean) => {
    if (to.lesson === null || to.lesson === lesson.id) return;
    const fault = faultOfReference(library, to, asked);
    if (fault) refuse(line, fault.found, fault.allowed);
  };
  const [terms, sources] = [Object.keys(library.glossary), Object.keys(library.sources)];
  for (const term of lesson.terms) known("glossary", term, terms, lineOf("terms"));
  for (const source of lesson.sources) known("sources", source, sources, lineOf("sources"));
  for (const step of lesson.steps) {
    const parts = [step.plain, step.technical, step.notes, step.caution].flatMap((part) =>
      part ? [part.prose] : [],
    );
    const asked = [...(step.question ? wordsIn(step.question) : []), ...wordsOfTask(step.task)];
    for (const node of [...parts, ...asked].flatMap((each) => [...inlinesOf(each)])) {
      if (node.kind === "term") known("glossary", node.key, terms, node.line);
      if (node.kind === "source") known("sources", node.key, sources, node.line);
      if (node.kind === "link") elsewhere(node.to, node.line, false);
    }
  }
  for (const reference of lesson.recall) elsewhere(reference, lineOf("recall"), true);
}

/** `asked`: for a question asked again, which needs one */
function faultOfReference(library: Library, to: StepReference, asked: boolean): Omit<Fault, "path"> | null {
  const other = library.lessons.find(({ id }) => id === to.lesson);
  const step = other?.steps.find(({ id }) => id === to.step);
  const idsOf = (list: readonly { readonly id: string }[]) => list.map(({ id }) => id).join(", ");
  if (!other) return { found: `lesson "${to.lesson}"`, allowed: idsOf(library.lessons) };
  if (!step) return { found: `step "${to.lesson}#${to.step}"`, allowed: idsOf(other.steps) };
  if (asked && (!step.question || step.question.kind === "goal"))
    return { found: `recall of ${to.lesson}#${to.step}`, allowed: "a step whose question needs no scene" };
  return null;
}
