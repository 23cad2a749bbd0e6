/** The hall's answers on the stage: one count for each question of the talk, kept for a reload of this window. */
import { computed, effect, type ReadonlySignal, signal, untracked } from "@preact/signals";
import * as v from "valibot";
import type { Session } from "../shared/session.ts";
import { type HallCount, type HallEvent, hallCount, hearHall, startHall } from "./hall.ts";
import { type HallQuestion, hallQuestion, modelChoice } from "./hall-question.ts";
import type { ScriptRun } from "./script-run.ts";

export interface HallRun {
  readonly asked: ReadonlySignal<HallQuestion | null>;
  /** Of the question asked; null where there is none. */
  readonly count: ReadonlySignal<HallCount | null>;
  /** The choice that the model gives. */
  readonly truth: ReadonlySignal<string | null>;
  hear(event: HallEvent): void;
  release(): void;
}

const HALL = "lungward.lecture.hall";
const keptCounts = v.pipe(v.array(hallCount), v.maxLength(300));

export function runHall(session: Session, script: ScriptRun): HallRun {
  const asked = hallQuestion(script);
  const counts = signal<readonly HallCount[]>(readCounts());
  const count = computed(() => {
    const view = asked.value;
    if (!view) return null;
    return counts.value.find(({ question }) => question === view.key) ?? startHall(view.key);
  });
  const put = (next: HallCount) => {
    counts.value = [...counts.peek().filter(({ question }) => question !== next.question), next];
  };
  const model = modelChoice(session, asked);
  const following = [
    // The step that runs a prediction shows what the hall predicted beside what the model does.
    effect(() => {
      if (!asked.value?.resolved) return;
      untracked(() => {
        const now = count.peek();
        if (now && now.hands.length > 0 && now.phase !== "compared") put({ ...now, phase: "compared" });
      });
    }),
    effect(() => keepCounts(counts.value)),
    model.release,
  ];
  return {
    asked,
    count,
    truth: model.truth,
    hear(event) {
      const now = count.peek();
      if (now) put(hearHall(now, event));
    },
    release() {
      for (const stop of following) stop();
    },
  };
}

function readCounts(): readonly HallCount[] {
  try {
    const found = v.safeParse(keptCounts, JSON.parse(sessionStorage.getItem(HALL) ?? "[]"));
    return found.success ? found.output : [];
  } catch {
    return [];
  }
}

function keepCounts(counts: readonly HallCount[]): void {
  try {
    sessionStorage.setItem(HALL, JSON.stringify(counts));
  } catch {
    // Without storage the counts last until the window is reloaded.
  }
}
