/** A phone's place in the hall: what it is asked, what it said, and its line to the server. */
import { batch, signal } from "@preact/signals";
import { ENDED } from "../audience/ended.ts";
import { type AudienceLine, drawChance, openLine } from "../audience/line.ts";
import type { FromPhone, HallAnswer, ToPhone } from "../audience/line-messages.ts";
import { CODE } from "../audience/room-code.ts";
import { forgetToken, tokenFor } from "./own-token.ts";
import { readToPhone } from "./read-message.ts";
import { language } from "./words.ts";

type Asked = Extract<ToPhone, { kind: "ask" }>;
export type Steps = Extract<ToPhone, { kind: "words" }>["steps"];

/** `door` no code yet; `joining` never in so far; `gone` was in, and the line is lost. */
export type Stage = "door" | "joining" | "open" | "gone" | "noRoom" | "full" | "over";

export const stage = signal<Stage>("door");
export const asked = signal<Asked | null>(null);
export const own = signal<HallAnswer | null>(null);
/** Given, and not yet confirmed by the server. */
export const pending = signal<HallAnswer | null>(null);
/** Given, and not taken though the question is open: this phone changed its answer too often. */
export const refused = signal<HallAnswer | null>(null);
export const lost = signal(false);
export const steps = signal<Steps | null>(null);

let line: AudienceLine<FromPhone> | null = null;
let greet: (() => FromPhone) | null = null;
/** The line was lost since the answer was given: it may have been lost with it. */
let again = false;

/** Without blanks or hyphens, in capitals; null for what is no code. */
export function readCode(text: string): string | null {
  const code = text.toUpperCase().replace(/[\s-]/g, "");
  return CODE.test(code) ? code : null;
}

export function join(code: string): void {
  line?.close();
  stage.value = "joining";
  const token = tokenFor(code);
  const greeting = (): FromPhone => ({ kind: "join", code, token, language: language.peek() });
  greet = greeting;
  line = openLine<FromPhone, ToPhone>({
    side: "phone",
    chance: drawChance,
    greeting,
    read: readToPhone,
    hear: (message) => batch(() => hear(message)),
    onLine(open) {
      if (!open) again = true;
      if (open) stage.value = "open";
      else if (stage.peek() === "open") stage.value = "gone";
    },
    onRefused(reason) {
      if (reason !== ENDED.full) forgetToken();
      stage.value = reason === ENDED.over ? "over" : reason === ENDED.full ? "full" : "noRoom";
    },
  });
}

/** The question comes again in the language chosen. */
export function speak(tag: string): void {
  language.value = tag;
  if (greet) line?.say(greet());
  if (steps.peek()) line?.say({ kind: "words" });
}

export function give(answer: HallAnswer): void {
  const question = asked.peek()?.question;
  if (!question || asked.peek()?.locked) return;
  pending.value = answer;
  refused.value = null;
  line?.say({ kind: "answer", question: question.key, answer });
}

export function sayLost(on: boolean): void {
  if (line?.say({ kind: "lost", on })) lost.value = on;
}

export const askWords = (): void => void line?.say({ kind: "words" });
export const wake = (): void => line?.wake();

function hear(message: ToPhone): void {
  if (message.kind === "ask") hearAsked(message);
  else if (message.kind === "lost") lost.value = message.on;
  else if (message.kind === "words") steps.value = message.steps;
  else if (message.kind === "own" && message.question === asked.peek()?.question?.key) {
    own.value = message.own;
    if (message.own === pending.peek()) pending.value = null;
    // The question had come again meanwhile, and the answer counts after all.
    if (message.own === refused.peek()) refused.value = null;
  }
}

function hearAsked(message: Asked): void {
  const key = message.question?.key;
  const same = key !== undefined && key === asked.peek()?.question?.key;
  asked.value = message;
  if (!same) {
    own.value = null;
    refused.value = null;
    lost.value = false;
  }
  const answer = pending.peek();
  const missed = again;
  again = false;
  if (answer === null) return;
  const open = same && key && !message.locked;
  // Given while there was no line: it counts if the question is still open.
  if (open && missed && line?.say({ kind: "answer", question: key, answer })) return;
  pending.value = null;
  if (open) refused.value = answer;
}
