/** A lesson being taken, as a pure state machine: (state, event) -> state. It uses no clock, page or model; judgements arrive with the events. */

import { entryAt } from "../sim/checked/present.ts";
import type { Given, Judgement } from "./judge/questions.ts";
import { findStep, type Lesson, type Step } from "./lesson.ts";
import type { Kept } from "./model/live-figures.ts";
import { type Attempt, type LessonProgress, MAX_WRITTEN } from "./progress/progress.ts";

/**
 * What a step is at: `ask` its question is open; `watch` the model runs what was predicted; `read` the words stand;
 * `why` a detour to the step that shows why; `again` an earlier question, without the scene; `end` all is done.
 */
type Phase = "read" | "ask" | "watch" | "why" | "again" | "end";

/** A question asked again: which, and whether it closes the lesson. */
export interface Again {
  /** null: this lesson */
  readonly lesson: string | null;
  readonly step: string;
}

export interface Player {
  readonly phase: Phase;
  readonly step: number;
  /** Learner alone: predictions must be given before the run. A speaker may walk on. */
  readonly alone: boolean;
  readonly answers: Readonly<Record<string, Attempt>>;
  /** Latest judgement of the question in view; null before any. */
  readonly judgement: Judgement | null;
  /** Latest answer to the question in view, right or not. */
  readonly given: Given | null;
  readonly hints: number;
  /** Step whose picture is shown in phase `why`. */
  readonly why: string | null;
  /** Questions to ask again, first one first, each before the step `at` is entered. */
  readonly queue: readonly (Again & { readonly at: number })[];
  /** Step to enter once the questions that are due have been asked; the number of steps = the end. */
  readonly to: number;
  readonly recalled: LessonProgress["recalled"];
  /** What was written for tasks, by step. */
  readonly written: Readonly<Record<string, string>>;
  readonly seen: readonly string[];
  readonly finished: boolean;
}

export type PlayerEvent =
  | { readonly kind: "next" | "back" | "first" | "last" | "return" | "hint" | "explain" }
  | { readonly kind: "go"; readonly step: string }
  /** A prediction goes in without a judgement. `day`: ISO 8601. */
  | {
      readonly kind: "answer";
      readonly given: Given;
      readonly judgement: Judgement | null;
      readonly day: string;
      /** Live numbers in the question as they stand, by what the lesson writes for them. */
      readonly numbers?: Readonly<Record<string, Kept>>;
    }
  /** The model has run what was predicted in `question`. */
  | { readonly kind: "judged"; readonly question: string; readonly judgement: Judgement }
  | { readonly kind: "why"; readonly step: string }
  | { readonly kind: "write"; readonly step: string; readonly text: string }
  | { readonly kind: "note"; readonly question: string; readonly text: string };

/** At `at`, or where an earlier visit stopped, or at the first step. `due`: questions of earlier days, asked before. */
export function startPlayer(
  lesson: Lesson,
  alone: boolean,
  earlier?: LessonProgress,
  at?: string,
  due: readonly Again[] = [],
): Player {
  const wanted = findStep(lesson, at ?? (earlier && !earlier.finished ? earlier.step : ""));
  const known = (id: string) => findStep(lesson, id) >= 0;
  const blank: Player = {
    phase: "read",
    step: 0,
    alone,
    answers: Object.fromEntries(Object.entries(earlier?.answers ?? {}).filter(([id]) => known(id))),
    judgement: null,
    given: null,
    hints: 0,
    why: null,
    queue: due.map((each) => ({ ...each, at: 0 })),
    to: 0,
    recalled: earlier?.recalled ?? {},
    written: earlier?.written ?? {},
    seen: (earlier?.seen ?? []).filter(known),
    finished: earlier?.finished ?? false,
  };
  return goTo(lesson, blank, Math.max(0, wanted));
}

export const progressOf = (lesson: Lesson, player: Player): LessonProgress => ({
  step: entryAt(lesson.steps, player.step).id,
  seen: [...player.seen],
  finished: player.finished,
  answers: { ...player.answers },
  ...(Object.keys(player.written).length > 0 ? { written: { ...player.written } } : {}),
  recalled: { ...player.recalled },
});

export const stepAt = (lesson: Lesson, player: Player): Step => entryAt(lesson.steps, player.step);

/** The prediction that the step in view reveals, if one was to be made. */
export const predictionFor = (lesson: Lesson, step: Step): Step | null =>
  lesson.steps.find(({ question }) => question?.kind === "predict" && question.reveal === step.id) ?? null;

export function play(lesson: Lesson, player: Player, event: PlayerEvent): Player {
  switch (event.kind) {
    case "next":
      return next(lesson, player);
    case "back":
      if (player.phase === "why") return returned(lesson, player);
      return enter(
        lesson,
        player,
        player.phase === "end" || player.phase === "again" ? player.step : Math.max(0, player.step - 1),
      );
    case "first":
      return enter(lesson, player, 0);
    case "last":
      return enter(lesson, player, lesson.steps.length - 1);
    case "go": {
      const index = findStep(lesson, event.step);
      return index < 0 ? player : enter(lesson, player, index);
    }
    case "hint":
      return {
        ...player,
        hints: Math.min(player.hints + 1, questionInView(lesson, player)?.hints.length ?? 0),
      };
    case "explain":
      return player.phase === "watch" ? { ...player, phase: "read" } : player;
    case "why":
      return findStep(lesson, event.step) < 0 ? player : { ...player, phase: "why", why: event.step };
    case "return":
      return returned(lesson, player);
    case "answer":
      return player.phase === "again" ? recalled(lesson, player, event) : answered(lesson, player, event);
    case "judged":
      return judged(lesson, player, event.question, event.judgement);
    case "write":
      return {
        ...player,
        written: { ...player.written, [event.step]: event.text.slice(0, MAX_WRITTEN) },
      };
    case "note": {
      const attempt = player.answers[event.question];
      if (!attempt) return player;
      const note = event.text.slice(0, 500);
      return { ...player, answers: { ...player.answers, [event.question]: { ...attempt, note } } };
    }
  }
}

/** The question on screen that belongs to this lesson; one asked again from another lesson is the page's to find. */
export function questionInView(lesson: Lesson, player: Player) {
  if (player.phase === "again") {
    const again = player.queue[0];
    return again && again.lesson === null
      ? (lesson.steps[findStep(lesson, again.step)]?.question ?? null)
      : null;
  }
  return stepAt(lesson, player).question;
}

/** Is "next" open? Alone, a prediction comes before its run. */
export function canAdvance(lesson: Lesson, player: Player): boolean {
  if (!player.alone || player.phase !== "ask") return true;
  const step = stepAt(lesson, player);
  return step.question?.kind !== "predict" || step.id in player.answers;
}

function enter(lesson: Lesson, player: Player, wanted: number): Player {
  const target = entryAt(lesson.steps, wanted);
  const prediction = predictionFor(lesson, target);
  const open = prediction !== null && !(prediction.id in player.answers);
  // A run is not shown before its prediction, whichever way one came.
  const step = player.alone && open ? findStep(lesson, prediction.id) : wanted;
  const here = entryAt(lesson.steps, step);
  const attempt = here.question ? player.answers[here.id] : undefined;
  const watching =
    prediction !== null && step === wanted && player.alone && player.answers[prediction.id]?.right === null;
  return {
    ...player,
    step,
    phase: watching ? "watch" : here.question ? "ask" : "read",
    judgement: null,
    given: attempt?.given ?? null,
    hints: 0,
    why: null,
    seen: player.seen.includes(here.id) ? player.seen : [...player.seen, here.id],
  };
}

function next(lesson: Lesson, player: Player): Player {
  if (player.phase === "why") return returned(lesson, player);
  if (player.phase === "end") return player;
  if (player.phase === "watch") return { ...player, phase: "read" };
  // What was predicted is explained; then the step asks its own question.
  if (player.phase === "read" && stepAt(lesson, player).question)
    return { ...player, phase: "ask", judgement: null };
  if (player.phase === "again") return goTo(lesson, { ...player, queue: player.queue.slice(1) }, player.to);
  if (!canAdvance(lesson, player)) return player;
  const queue =
    player.step < lesson.steps.length - 1 || player.finished || !player.alone
      ? player.queue
      : [...player.queue, ...lesson.recall.map((each) => ({ ...each, at: player.step + 1 }))];
  return goTo(lesson, { ...player, queue }, player.step + 1);
}

/** The step `to`, or the end; before it, a question that is due. */
function goTo(lesson: Lesson, player: Player, to: number): Player {
  const due = player.queue.findIndex(({ at }) => at <= to);
  if (due >= 0) {
    const queue = [entryAt(player.queue, due), ...player.queue.filter((_, index) => index !== due)];
    return { ...player, queue, to, phase: "again", judgement: null, given: null, hints: 0 };
  }
  if (to < lesson.steps.length) return enter(lesson, player, to);
  return { ...player, phase: "end", judgement: null, given: null, finished: true };
}

function returned(lesson: Lesson, player: Player): Player {
  return player.phase === "why"
    ? { ...player, phase: stepAt(lesson, player).question ? "ask" : "read", why: null }
    : player;
}

function answered(lesson: Lesson, player: Player, event: Extract<PlayerEvent, { kind: "answer" }>): Player {
  const { id, question } = stepAt(lesson, player);
  const earlier = player.answers[id];
  if (player.phase !== "ask" || !question) return player;
  // A prediction is locked once given; the button pressed again is no further try.
  const same = player.judgement?.right === event.judgement?.right && `${player.given}` === `${event.given}`;
  if (question.kind === "predict" ? earlier : same || !event.judgement) return player;
  const attempt: Attempt = earlier
    ? { ...earlier, tries: earlier.tries + 1, day: event.day }
    : {
        given: typeof event.given === "object" ? [...event.given] : event.given,
        right: event.judgement?.right ?? null,
        ...typedOf(event),
        ...missedOf(event.judgement),
        tries: 1,
        day: event.day,
        ...(Object.keys(event.numbers ?? {}).length > 0 ? { numbers: { ...event.numbers } } : {}),
      };
  return {
    ...player,
    answers: { ...player.answers, [id]: attempt },
    given: event.given,
    judgement: question.kind === "predict" ? null : event.judgement,
    queue: earlier ? player.queue : queueAgain(player, id, question.again),
  };
}

/** A typed number is kept with what it was measured by. */
function typedOf({ given, judgement }: Extract<PlayerEvent, { kind: "answer" }>): Pick<Attempt, "typed"> {
  if (typeof given !== "number" || typeof judgement?.truth !== "number") return {};
  const { truth, within = 0, mistake } = judgement;
  return { typed: { truth, within, ...(mistake ? { mistake: mistake.id } : {}) } };
}

/** What would have been right, of choices and orders. */
function missedOf(judgement: Judgement | null): Pick<Attempt, "truth"> {
  if (!judgement || judgement.right) return {};
  const { truth } = judgement;
  if (truth === null || typeof truth === "number") return {};
  return { truth: typeof truth === "string" ? truth : [...truth] };
}

const queueAgain = (player: Player, step: string, again: number | null): Player["queue"] =>
  again === null || !player.alone
    ? player.queue
    : [...player.queue, { lesson: null, step, at: player.step + again }];

function judged(lesson: Lesson, player: Player, question: string, judgement: Judgement): Player {
  const attempt = player.answers[question];
  if (!attempt) return player;
  const inView = player.phase !== "ask" && predictionFor(lesson, stepAt(lesson, player))?.id === question;
  return {
    ...player,
    answers:
      attempt.right === null
        ? { ...player.answers, [question]: { ...attempt, right: judgement.right, ...missedOf(judgement) } }
        : player.answers,
    judgement: inView ? judgement : player.judgement,
  };
}

function recalled(lesson: Lesson, player: Player, event: Extract<PlayerEvent, { kind: "answer" }>): Player {
  const again = player.queue[0];
  if (!again || !event.judgement || player.judgement) return player;
  const key = `${again.lesson ?? lesson.id}#${again.step}`;
  return {
    ...player,
    given: event.given,
    judgement: event.judgement,
    recalled: { ...player.recalled, [key]: { right: event.judgement.right, day: event.day } },
  };
}
