/** A translated lesson file: its text replaces that of the source lesson. It cannot change a scene, an answer or a number. */
import { translatedFrontSchema } from "../format/front-matter.ts";
import { readRecord } from "../format/yaml-record.ts";
import type { Goals, Lesson, Part, Step, Words } from "../lesson.ts";
import { inlinesOf, type Prose } from "../prose.ts";
import { type StepExtract, splitLesson } from "./lesson-sections.ts";
import { type Reading, readPart, refuseIn } from "./read.ts";
import type { Refuse } from "./read-prose.ts";
import { translateQuestion } from "./read-question.ts";
import { readTask } from "./read-task.ts";
import { checkContent, wordsIn, wordsOfTask } from "./references.ts";

export function readTranslation(text: string, file: string, source: Lesson): Reading<Lesson> {
  const { refuse, faults } = refuseIn(file);
  const extract = splitLesson(text, refuse);
  const front =
    extract.front && readRecord(extract.front.text, extract.front.line, translatedFrontSchema, refuse);
  if (!front) return { value: null, faults };
  const { id, language, of, translator, date, reviewed, reviewer, ...words } = front.value;
  if (id !== source.id) refuse(front.lineOf("id"), `id ${id}`, source.id);
  for (const { id: step, line } of extract.steps) {
    if (!source.steps.some((each) => each.id === step))
      refuse(line, `step "${step}"`, "the steps of the source");
  }
  const steps = source.steps.map((step) => {
    const translated = extract.steps.find((each) => each.id === step.id);
    if (translated) return translateStep(source, step, translated, language, refuse);
    refuse(1, `no step "${step.id}"`, "every step of the source");
    return step;
  });
  const lesson: Lesson = {
    ...source,
    ...words,
    tell: words.tell ?? null,
    goals: translatedGoals(source, words.goals, front.lineOf("goals"), refuse),
    file,
    language,
    steps,
    translation: { translator, date, reviewed, reviewer, outOfDate: of !== source.version },
  };
  return { value: faults.length === 0 ? lesson : null, faults };
}

/** As many as in the source, at each level; left out, the source's. */
function translatedGoals(
  source: Lesson,
  given: Goals | undefined,
  line: number,
  refuse: Refuse,
): Lesson["goals"] {
  if (!given) return source.goals;
  for (const level of ["plain", "technical"] as const) {
    const [found, wanted] = [given[level].length, source.goals?.[level].length ?? 0];
    if (found !== wanted) refuse(line, `${found} ${level} goals`, `${wanted}, as in the source`);
  }
  return given;
}

function translateStep(
  source: Lesson,
  step: Step,
  extract: StepExtract,
  language: string,
  refuse: Refuse,
): Step {
  if (extract.blocks.scene)
    refuse(extract.blocks.scene.line, "a scene block", "none: the source's scene holds");
  const part = (name: "plain" | "technical" | "notes" | "caution", original: Part | null): Part | null => {
    const translated = readPart(extract.parts[name], language, refuse);
    if (!translated) {
      if (original && name === "caution") refuse(extract.line, "no caution", "### caution, as in the source");
      return original;
    }
    if (!original) {
      refuse(translated.line, `### ${name}`, "the parts of the source");
      return null;
    }
    checkContent(source, translated.prose, Object.keys(source.states), refuse);
    compareFigures(figuresIn(original.prose), figuresIn(translated.prose), translated.line, refuse);
    return translated;
  };
  return {
    ...step,
    title: extract.title,
    line: extract.line,
    plain: part("plain", step.plain) ?? step.plain,
    technical: part("technical", step.technical),
    notes: part("notes", step.notes),
    caution: part("caution", step.caution),
    question: translatedQuestion(source, step, extract, refuse),
    task: translatedTask(source, step, extract, refuse),
  };
}

function translatedQuestion(
  source: Lesson,
  step: Step,
  extract: StepExtract,
  refuse: Refuse,
): Step["question"] {
  const block = extract.blocks.question;
  if (!step.question) {
    if (block) refuse(block.line, "a question", "none: the source has none here");
    return null;
  }
  if (!block) {
    refuse(extract.line, "no question", "the words of the source's question");
    return step.question;
  }
  const question = translateQuestion(step.question, block, refuse);
  if (!question) return step.question;
  const [original, translated] = [wordsIn(step.question), wordsIn(question)];
  for (const words of translated) checkContent(source, words, Object.keys(source.states), refuse);
  compareFigures(original.flatMap(figuresIn), translated.flatMap(figuresIn), block.line, refuse);
  return question;
}

/** May be left out, as the technical part may. */
function translatedTask(source: Lesson, step: Step, extract: StepExtract, refuse: Refuse): Step["task"] {
  const task = readTask(extract.blocks.task, refuse);
  if (!task) return step.task;
  if (!step.task) {
    refuse(task.line, "a task", "none: the source has none here");
    return null;
  }
  for (const words of wordsOfTask(task)) checkContent(source, words, Object.keys(source.states), refuse);
  compareFigures(
    wordsOfTask(step.task).flatMap(figuresIn),
    wordsOfTask(task).flatMap(figuresIn),
    task.line,
    refuse,
  );
  return task;
}

const figuresIn = (content: Prose | Words): string[] =>
  [...inlinesOf(content)].flatMap((node) => (node.kind === "figure" ? [node.figure.written] : []));

/** The same numbers, each as often, in any order. */
function compareFigures(
  wanted: readonly string[],
  given: readonly string[],
  line: number,
  refuse: Refuse,
): void {
  const left = [...wanted];
  for (const figure of given) {
    const at = left.indexOf(figure);
    if (at >= 0) left.splice(at, 1);
    else
      refuse(
        line,
        `{{ ${figure} }}`,
        `the source's numbers: ${wanted.map((each) => `{{ ${each} }}`).join(", ") || "none"}`,
      );
  }
  for (const figure of left) refuse(line, "a number left out", `{{ ${figure} }}`);
}
