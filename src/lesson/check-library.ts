/** What a lesson says of the shared files and of other lessons: each key must be there. */
import { nearestMatch } from "../sim/faults.ts";
import type { Glossary, Sources } from "./glossary.ts";
import type { Lesson } from "./lesson.ts";
import { inlinesOf } from "./prose.ts";
import type { Refuse } from "./read-prose.ts";
import { wordsIn } from "./references.ts";

export interface Library {
  readonly glossary: Glossary;
  readonly sources: Sources;
  /** of the same language, the one that is checked included */
  readonly lessons: readonly Lesson[];
}

export function checkLibrary(lesson: Lesson, library: Library, refuse: Refuse): void {
  const known = (kind: string, key: string, keys: readonly string[], line: number) => {
    if (keys.includes(key)) return;
    const near = nearestMatch(key, keys);
    refuse(
      line,
      `${kind} "${key}"`,
      near ? `a key of the ${kind} file; nearest: ${near}` : `a key of the ${kind} file`,
    );
  };
  const [terms, sources] = [Object.keys(library.glossary), Object.keys(library.sources)];
  for (const term of lesson.terms) known("glossary", term, terms, 1);
  for (const source of lesson.sources) known("sources", source, sources, 1);
  for (const step of lesson.steps) {
    const parts = [step.plain, step.technical, step.notes, step.caution].flatMap((part) =>
      part ? [part.prose] : [],
    );
    for (const node of [...parts, ...(step.question ? wordsIn(step.question) : [])].flatMap((each) => [
      ...inlinesOf(each),
    ])) {
      if (node.kind === "term") known("glossary", node.key, terms, node.line);
      if (node.kind === "source") known("sources", node.key, sources, node.line);
      if (node.kind === "link") checkElsewhere(lesson, library, node.to, node.line, false, refuse);
    }
  }
  for (const reference of lesson.recall) checkElsewhere(lesson, library, reference, 1, true, refuse);
}

function checkElsewhere(
  lesson: Lesson,
  library: Library,
  to: { readonly lesson: string | null; readonly step: string },
  line: number,
  asked: boolean,
  refuse: Refuse,
): void {
  if (to.lesson === null || to.lesson === lesson.id) return;
  const other = library.lessons.find(({ id }) => id === to.lesson);
  const step = other?.steps.find(({ id }) => id === to.step);
  if (!other) refuse(line, `lesson "${to.lesson}"`, library.lessons.map(({ id }) => id).join(", "));
  else if (!step) refuse(line, `step "${to.lesson}#${to.step}"`, other.steps.map(({ id }) => id).join(", "));
  else if (asked && (!step.question || step.question.kind === "goal")) {
    refuse(line, `recall of ${to.lesson}#${to.step}`, "a step whose question needs no scene");
  }
}
