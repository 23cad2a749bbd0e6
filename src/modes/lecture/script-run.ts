/** The scene and the words that follow a place in a playlist: one lesson under way at a time. */
import { computed, effect, type ReadonlySignal, signal } from "@preact/signals";
import type { Library } from "../../lesson/library.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Voice } from "../../ui/lesson/voice.ts";
import { type LessonRun, runLesson } from "../shared/lesson/lesson-run.ts";
import { voiceOf } from "../shared/lesson/voice-of.ts";
import type { Session } from "../shared/session.ts";
import type { FoundStop } from "./stops.ts";

export interface ScriptRun {
  readonly stop: ReadonlySignal<FoundStop>;
  readonly run: ReadonlySignal<LessonRun>;
  readonly voice: ReadonlySignal<Voice>;
  release(): void;
}

/** `at` is the index into `stops` that is shown; the scene follows it. `reader`: the room's, one for all its windows. */
export function runScript(
  session: Session,
  library: Library,
  stops: readonly FoundStop[],
  at: ReadonlySignal<number>,
  reader: number,
): ScriptRun {
  const stop = computed(() => entryAt(stops, at.value));
  const begin = ({ lesson, step }: FoundStop) =>
    runLesson(session, lesson, { alone: false, reader, at: step.id, lessons: library.lessons });
  const run = signal(begin(stop.peek()));
  const follow = effect(() => {
    const wanted = stop.value;
    const present = run.peek();
    if (present.lesson.id === wanted.lesson.id) {
      if (present.shown.peek() !== wanted.index) present.send({ kind: "go", step: wanted.step.id });
      else present.restoreScene();
      return;
    }
    present.release();
    run.value = begin(wanted);
  });
  const voice = computed(() => voiceOf(library, run.value.situation.value, "plain", null));
  return {
    stop,
    run,
    voice,
    release() {
      follow();
      run.peek().release();
    },
  };
}
