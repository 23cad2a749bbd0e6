/** The scene and the words that follow a place in a talk: one lesson under way at a time, none at the speaker's own slides. */
import { computed, effect, type ReadonlySignal, signal, untracked } from "@preact/signals";
import type { Library } from "../../../lesson/library/library.ts";
import { entryAt } from "../../../sim/checked/present.ts";
import type { Voice } from "../../../ui/lesson/voice.ts";
import { type LessonRun, runLesson } from "../../shared/lesson/lesson-run.ts";
import { voiceOf } from "../../shared/lesson/voice-of.ts";
import { hallVersion } from "../../shared/preferences.ts";
import type { Session } from "../../shared/session.ts";
import { forHall } from "../hall/first-of-order.ts";
import { stateOfStop } from "./stop-state.ts";
import type { FoundStep, FoundStop } from "./stops.ts";

export interface ScriptRun {
  readonly stop: ReadonlySignal<FoundStop>;
  /** null at a stop that is no step of a lesson */
  readonly run: ReadonlySignal<LessonRun | null>;
  readonly voice: ReadonlySignal<Voice | null>;
  /** Back to the scene as the stop sets it, after what-ifs. */
  restoreScene(): void;
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
  const run = signal<LessonRun | null>(null);
  const restoreScene = () => {
    const present = stop.peek();
    if (present.kind === "bench") session.show(stateOfStop(present));
    else run.peek()?.restoreScene();
  };
  /** As it is written, for the person of the stop. */
  let under: FoundStep["found"]["lesson"] | null = null;
  const toStep = ({ found: { lesson, index, step } }: FoundStep) => {
    const present = run.peek();
    if (present && under === lesson) {
      if (present.shown.peek() !== index) present.send({ kind: "go", step: step.id });
      else present.restoreScene();
      return;
    }
    present?.release();
    under = lesson;
    run.value = runLesson(session, forHall(lesson), {
      alone: false,
      reader,
      at: step.id,
      lessons: library.lessons,
    });
  };
  const follow = effect(() => {
    const wanted = stop.value;
    untracked(() => {
      if (wanted.kind === "step") toStep(wanted);
      else {
        run.peek()?.release();
        run.value = null;
        restoreScene();
      }
    });
  });
  const voice = computed(
    () => run.value && voiceOf(library, run.value.situation.value, hallVersion.value, null),
  );
  return {
    stop,
    run,
    voice,
    restoreScene,
    release() {
      follow();
      run.peek()?.release();
    },
  };
}
