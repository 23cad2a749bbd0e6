/** The hall's answers on the stage: one count for each question of the talk; raised hands are kept for a reload of this window. */
import { computed, effect, type ReadonlySignal, signal, untracked } from "@preact/signals";
import type { ShownResult } from "../../../audience/line-messages.ts";
import type { Session } from "../../shared/session.ts";
import { shownResult } from "../audience/hall-result.ts";
import type { StageAudience } from "../audience/stage-audience.ts";
import type { ScriptRun } from "../talk/script-run.ts";
import { type HallCount, type HallEvent, hearHall, isAnswered, startHall } from "./hall.ts";
import { choicesOf, type HallChoice, type HallQuestion, hallQuestion, modelChoice } from "./hall-question.ts";
import { handsOf, keepHands } from "./kept-hands.ts";

export interface HallRun {
  readonly asked: ReadonlySignal<HallQuestion | null>;
  /** Of the question asked; null where there is none. */
  readonly count: ReadonlySignal<HallCount | null>;
  readonly choices: ReadonlySignal<readonly HallChoice[]>;
  /** What the stage shows of it; null until it does. */
  readonly result: ReadonlySignal<ShownResult | null>;
  /** Every question answered so far. */
  all(): readonly HallCount[];
  hear(event: HallEvent): void;
  release(): void;
}

/** @param audience null where only hands are raised; `list` names the talk */
export function runHall(
  session: Session,
  script: ScriptRun,
  audience: StageAudience | null,
  list: string,
): HallRun {
  const asked = hallQuestion(script);
  const hands = signal<readonly HallCount[]>(handsOf(list));
  const withPhones = (count: HallCount): HallCount => {
    const found = audience?.counts.value.get(count.question);
    return found ? { ...count, phones: found.tally, numbers: [...found.numbers] } : count;
  };
  const handsFor = (key: string) => hands.value.find(({ question }) => question === key) ?? startHall(key);
  const count = computed(() => {
    const view = asked.value;
    return view && withPhones(handsFor(view.key));
  });
  const put = (next: HallCount) => {
    const own = { ...next, phones: {}, numbers: [] };
    hands.value = [...hands.peek().filter(({ question }) => question !== next.question), own];
  };
  const choices = computed(() => {
    const [view, voice] = [asked.value, script.voice.value];
    return view && voice ? choicesOf(view.question, voice) : [];
  });
  const model = modelChoice(session, asked);
  const result = computed(() => {
    const ids = choices.value.map(({ id }) => id);
    const number = asked.value?.question.kind === "estimate";
    if (!count.value || (ids.length === 0 && !number)) return null;
    return shownResult(ids, count.value, model.truth.value);
  });
  const following = [
    // The step that runs a prediction shows what the hall predicted beside what the model does.
    effect(() => {
      const now = count.value;
      if (!asked.value?.resolved || !now || !isAnswered(now) || now.phase === "compared") return;
      untracked(() => put({ ...now, phase: "compared" }));
    }),
    effect(() => keepHands(list, hands.value)),
    model.release,
  ];
  return {
    ...{ asked, count, choices, result },
    all() {
      const keys = new Set([
        ...hands.value.map(({ question }) => question),
        ...(audience?.counts.value.keys() ?? []),
      ]);
      return [...keys].map((key) => withPhones(handsFor(key))).filter(isAnswered);
    },
    hear(event) {
      const now = count.peek();
      if (!now) return;
      put(hearHall(now, event));
      if (event.kind === "clear") audience?.say({ kind: "clear", question: now.question });
    },
    release() {
      for (const stop of following) stop();
    },
  };
}
