/** A lesson as plain data: text and, separately, what the model is asked. Only `read.ts` makes one. */
import { entryAt } from "../sim/checked/present.ts";
import type { SceneState } from "../state/scene-state.ts";
import type { Glossary, Sources } from "./format/glossary-schema.ts";
import type { ScenePatch } from "./format/scene-patch.ts";
import type { Expression } from "./model/expression.ts";
import type { Format } from "./model/live-figures.ts";
import { type Inline, type Prose, parseReference, type StepReference } from "./prose.ts";

export type Words = readonly Inline[];

/** Prose with its language (a translation may leave a part in English). */
export interface Part {
  readonly language: string;
  readonly prose: Prose;
  /** First line in its file. */
  readonly line: number;
}

export interface Answer {
  readonly id: string;
  readonly say: Words;
  readonly because: Words;
  readonly right: Expression | boolean;
  /** The step whose picture shows why. */
  readonly show: string | null;
}

interface Asked {
  readonly ask: Words;
  readonly hints: readonly Words[];
  /** Asked again so many steps later. */
  readonly again: number | null;
  /** In a lecture: put to the room. */
  readonly room: boolean;
  readonly line: number;
}

interface Choice extends Asked {
  readonly answers: readonly Answer[];
  /** Ids in an order that is kept, such as less, same, more; null where answers may be in any order. */
  readonly scale: readonly string[] | null;
}

interface PredictQuestion extends Choice {
  readonly kind: "predict";
  /** Step that runs it and shows the answer. */
  readonly reveal: string;
}

interface ChooseQuestion extends Choice {
  readonly kind: "choose";
}

export type ChoiceQuestion = PredictQuestion | ChooseQuestion;

export interface GoalQuestion extends Asked {
  readonly kind: "goal";
  /** parameter name */
  readonly control: string;
  readonly until: Expression;
  readonly best: "smallest" | "largest" | null;
  /** in the control's unit */
  readonly within: number;
  readonly reached: Words;
  readonly further: Words;
  readonly missed: Words;
}

export interface EstimateQuestion extends Asked {
  readonly kind: "estimate";
  readonly of: Expression;
  readonly format: Format;
  readonly within: Tolerance;
  readonly close: Words;
  readonly low: Words;
  readonly high: Words;
}

/** How far from the model's number still counts. */
export interface Tolerance {
  /** in the unit, or a fraction of the value */
  readonly value: number;
  readonly percent: boolean;
}

/** A slip that many make, known by the number it leads to. */
export interface Mistake {
  readonly id: string;
  /** Its name in words, such as "The area was not squared". */
  readonly say: Words;
  readonly value: Expression;
  readonly because: Words;
}

export interface NumberQuestion extends Asked {
  readonly kind: "number";
  readonly value: Expression;
  readonly format: Format;
  /** Of the value, and of each mistake's. */
  readonly within: Tolerance;
  readonly mistakes: readonly Mistake[];
  readonly right: Words;
  /** For a number that is no mistake with a name. */
  readonly wrong: Words;
  /** Line by line. */
  readonly solution: readonly Words[];
}

interface OrderItem {
  readonly id: string;
  readonly say: Words;
  readonly value: Expression | null;
}

export interface OrderQuestion extends Asked {
  readonly kind: "order";
  readonly items: readonly OrderItem[];
  /** First to last; null when the values decide. */
  readonly order: readonly string[] | null;
  /** Values decide from the lowest up. */
  readonly lowest: boolean;
  readonly right: Words;
  readonly wrong: Words;
}

export type Question = ChoiceQuestion | GoalQuestion | EstimateQuestion | NumberQuestion | OrderQuestion;

/** To be answered in the learner's own words; then a model answer can be read beside it. */
export interface WrittenTask {
  readonly ask: Words;
  readonly answer: readonly Words[];
  readonly line: number;
}

/** What a reader can do afterwards, by level: families, students. */
export interface Goals {
  readonly plain: readonly string[];
  readonly technical: readonly string[];
}

export interface Step {
  readonly id: string;
  readonly title: string;
  readonly line: number;
  readonly plain: Part;
  readonly technical: Part | null;
  readonly notes: Part | null;
  readonly caution: Part | null;
  readonly patch: ScenePatch;
  /** Line of the scene block, or of the step. */
  readonly patchLine: number;
  /** s: how long a speaker usually stays. */
  readonly seconds: number | null;
  readonly question: Question | null;
  readonly task: WrittenTask | null;
}

export interface Lesson {
  readonly id: string;
  readonly file: string;
  readonly language: string;
  readonly number: number;
  readonly title: string;
  readonly reader: string;
  readonly aim: string;
  readonly remember: string;
  readonly goals: Goals | null;
  readonly minutes: number;
  readonly terms: readonly string[];
  readonly sources: readonly string[];
  readonly start: ScenePatch;
  readonly states: Readonly<Record<string, ScenePatch>>;
  readonly recall: readonly StepReference[];
  readonly tell: string | null;
  readonly steps: readonly Step[];
  /** Its own words and publications, by keys that no other lesson has. */
  readonly glossary: Glossary;
  readonly publications: Sources;
  /** Fingerprint of the English words: "v" and eight hexadecimal digits. */
  readonly version: string;
  readonly translation: Translation | null;
}

export interface Translation {
  readonly translator: string;
  /** ISO 8601 day on which it was made */
  readonly date: string;
  /** Read by a native-speaking clinician. */
  readonly reviewed: boolean;
  /** By whom: a role is enough. */
  readonly reviewer?: string | undefined;
  readonly outOfDate: boolean;
}

/** The states of a step and of what it is compared with. */
export interface StepStates {
  readonly own: SceneState;
  readonly others: Readonly<Record<string, SceneState>>;
}

export const findStep = (lesson: Lesson, id: string): number =>
  lesson.steps.findIndex((step) => step.id === id);

/** The step that a key `lesson#step` names; null where there is none. */
export function stepOfKey(lessons: readonly Lesson[], key: string) {
  const reference = parseReference(key);
  const lesson = lessons.find(({ id }) => id === reference?.lesson);
  const index = lesson && reference ? findStep(lesson, reference.step) : -1;
  return lesson && index >= 0 ? { lesson, index, step: entryAt(lesson.steps, index) } : null;
}
