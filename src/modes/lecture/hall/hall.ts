/** What the hall answered to one question, as a pure state: raised hands and phones, and how much of it the stage shows. */
import * as v from "valibot";
import { choiceId, questionKey } from "../../../audience/line-messages.ts";
import { MAX_CHOICES } from "../../../audience/room-code.ts";

/** `open` answers come in; `locked` no more; `shown` on the stage; `compared` with what the model says. */
export const HALL_PHASES = ["open", "locked", "shown", "compared"] as const;

/** More hands than any hall has. */
export const MAX_HANDS = 9999;
const MAX_NUMBERS = 10_000;

export const hallCount = v.strictObject({
  /** lesson#step that asks */
  question: questionKey,
  phase: v.picklist(HALL_PHASES),
  /** Choices in the order in which they were raised for: the last one can be taken back. */
  hands: v.pipe(v.array(choiceId), v.maxLength(MAX_HANDS)),
  /** Phones by choice, as the audience's server counts them. */
  phones: v.record(choiceId, v.pipe(v.number(), v.integer(), v.minValue(0))),
  /** From phones, where a number is asked for freely. */
  numbers: v.pipe(v.array(v.number()), v.maxLength(MAX_NUMBERS)),
});
export type HallCount = Readonly<v.InferOutput<typeof hallCount>>;

export const hallEvent = v.variant("kind", [
  v.strictObject({ kind: v.literal("hand"), choice: choiceId }),
  v.strictObject({ kind: v.picklist(["undo", "clear", "further", "reopen"]) }),
]);
export type HallEvent = v.InferOutput<typeof hallEvent>;

export const startHall = (question: string): HallCount => ({
  question,
  phase: "open",
  hands: [],
  phones: {},
  numbers: [],
});

export function hearHall(count: HallCount, event: HallEvent): HallCount {
  switch (event.kind) {
    case "hand":
      if (count.phase !== "open" || count.hands.length >= MAX_HANDS) return count;
      return { ...count, hands: [...count.hands, event.choice] };
    case "undo":
      return { ...count, hands: count.hands.slice(0, -1) };
    case "clear":
      return { ...count, hands: [], phase: "open" };
    case "reopen":
      return { ...count, phase: "open" };
    case "further": {
      const next = HALL_PHASES[HALL_PHASES.indexOf(count.phase) + 1];
      return next ? { ...count, phase: next } : count;
    }
  }
}

/** Answers for each of the question's choices that have a key, in their order: hands and phones together. */
export const tally = (choices: readonly string[], { hands, phones }: HallCount): readonly number[] =>
  choices
    .slice(0, MAX_CHOICES)
    .map(
      (id) =>
        hands.filter((answer) => answer === id).length + (Object.hasOwn(phones, id) ? (phones[id] ?? 0) : 0),
    );

export const isAnswered = ({ hands, phones, numbers }: HallCount): boolean =>
  hands.length > 0 || numbers.length > 0 || Object.keys(phones).length > 0;
