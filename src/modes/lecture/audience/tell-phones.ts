/** Keeps the phones where the stage is: the question in view, whether it is open, what the stage shows of it, and the words so far. */
import { effect, signal, untracked } from "@preact/signals";
import type { AskedQuestion } from "../../../audience/line-messages.ts";
import type { HallRun } from "../hall/hall-run.ts";
import type { ScriptRun } from "../talk/script-run.ts";
import { questionForPhones, wordsForPhones } from "./all-languages.ts";
import type { StageAudience } from "./stage-audience.ts";

/** ms until a step's words are sent: its numbers come meanwhile */
const NUMBERS = 2000;
const MAX_ATTEMPTS = 5;

/** @returns ends it */
export function tellPhones(audience: StageAudience, hall: HallRun, script: ScriptRun): () => void {
  const following = [askPhones(audience, hall, script), sendWords(audience, script)];
  return () => {
    for (const stop of following) stop();
  };
}

function askPhones(audience: StageAudience, hall: HallRun, script: ScriptRun): () => void {
  const written = signal<AskedQuestion | null>(null);
  let latest = 0;
  const write = effect(() => {
    const view = hall.asked.value;
    const situation = script.run.value?.situation.value;
    const turn = ++latest;
    if (!view || !situation) written.value = null;
    else
      void questionForPhones(view, situation).then((question) => {
        if (turn === latest) written.value = question;
      });
  });
  const ask = effect(() => {
    const view = hall.asked.value;
    const count = hall.count.value;
    const question = written.value?.key === view?.key ? written.value : null;
    if (!audience.open.value) return;
    const locked = count?.phase !== "open" || (view?.resolved ?? true);
    audience.say({ kind: "ask", question, locked, result: question && hall.result.value });
  });
  return () => {
    latest = -1;
    write();
    ask();
  };
}

function sendWords(audience: StageAudience, script: ScriptRun): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const send = async (attempt: number): Promise<void> => {
    const stop = script.stop.peek();
    const situation = script.run.peek()?.situation.peek();
    if (stop.kind !== "step" || !situation) return;
    const { lesson, step } = stop.found;
    const { words, whole } = await wordsForPhones(lesson, step, situation);
    if (script.stop.peek() !== stop) return;
    if (whole || attempt >= MAX_ATTEMPTS)
      audience.say({ kind: "words", step: `${lesson.id}#${step.id}`, words });
    else timer = setTimeout(() => void send(attempt + 1), NUMBERS);
  };
  const follow = effect(() => {
    const { kind } = script.stop.value;
    if (!audience.open.value || kind !== "step") return;
    untracked(() => {
      clearTimeout(timer);
      timer = setTimeout(() => void send(1), NUMBERS);
    });
  });
  return () => {
    clearTimeout(timer);
    follow();
  };
}
