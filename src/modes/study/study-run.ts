/** A lesson taken alone: where it begins, what is kept of it, and the address that goes with it. */
import { type Lesson, stepOfKey } from "../../lesson/lesson.ts";
import { type Player, progressOf } from "../../lesson/player.ts";
import { dueForRecall, withLesson } from "../../lesson/progress/progress.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { type LessonRun, runLesson } from "../shared/lesson/lesson-run.ts";
import type { Context } from "../shared/mode.ts";
import type { StudyProps } from "./study-props.ts";

/**
 * Begins where the address says, else where an earlier visit stopped; questions of earlier days come first.
 * `before`: the same lesson under way, as in another language.
 */
export function startStudy(
  { context, library, kept, lesson }: StudyProps & { readonly lesson: Lesson },
  before?: Player,
) {
  const progress = kept.progress.peek();
  const at = stepIn(lesson, context.place.peek().step);
  const known = (key: string) => {
    const found = stepOfKey(library.lessons, key);
    if (!found?.step.question || found.step.question.kind === "goal") return [];
    const from = found.lesson.id;
    return [{ lesson: from === lesson.id ? null : from, step: found.step.id }];
  };
  const due =
    at === undefined ? dueForRecall(progress, new Date().toISOString().slice(0, 10)).flatMap(known) : [];
  return runLesson(context.session, lesson, {
    alone: true,
    reader: progress.reader,
    earlier: progress.lessons[lesson.id],
    at,
    due,
    before,
    lessons: library.lessons,
    onProgress: (player) => {
      const next = progressOf(lesson, player);
      kept.keep(
        withLesson(kept.progress.peek(), lesson.id, next),
        `${lesson.id}#${next.step}`,
        library.lessons,
      );
    },
  });
}

/** A step by id or by number; undefined when the address names none. */
function stepIn(lesson: Lesson, step: string): string | undefined {
  return lesson.steps.find(({ id }) => id === step)?.id ?? lesson.steps[Number(step) - 1]?.id;
}

/** The address follows the step, and the step an address that someone went to. */
export function followPlace({ address, place }: Context, run: LessonRun): () => void {
  const { lesson } = run;
  const idNow = () => entryAt(lesson.steps, run.player.peek().step).id;
  // First: someone may have gone on between the lesson opening and now.
  const stopReading = place.subscribe(({ lesson: where, step }) => {
    const wanted = stepIn(lesson, step);
    if (where !== lesson.id || wanted === undefined || wanted === idNow()) return;
    run.send({ kind: "go", step: wanted });
    if (idNow() !== wanted) address.go({ step: idNow() });
  });
  const stopWriting = run.player.subscribe(() => {
    const step = idNow();
    const now = place.peek();
    if (now.lesson === lesson.id && now.step !== step) address.go({ step });
  });
  return () => {
    stopWriting();
    stopReading();
  };
}
