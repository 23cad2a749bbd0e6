/** What the hall answered to one question, as a pure state: raised hands, and how much of it the stage shows. */
import * as v from "valibot";

/** `open` answers come in; `locked` no more; `shown` on the stage; `compared` with what the model says. */
export const HALL_PHASES = ["open", "locked", "shown", "compared"] as const;

/** More hands than any hall has. */
export const MAX_HANDS = 9999;
const MAX_CHOICES = 9;

const choiceId = v.pipe(v.string(), v.regex(/^[\w=-]{1,60}$/));
const questionKey = v.pipe(v.string(), v.minLength(1), v.maxLength(200));

export const hallCount = v.strictObject({
  /** lesson#step that asks */
  question: questionKey,
  phase: v.picklist(HALL_PHASES),
  /** Choices in the order in which they were raised for: the last one can be taken back. */
  hands: v.pipe(v.array(choiceId), v.maxLength(MAX_HANDS)),
});
export type HallCount = Readonly<v.InferOutput<typeof hallCount>>;

export const hallEvent = v.variant("kind", [
  v.strictObject({ kind: v.literal("hand"), choice: choiceId }),
  v.strictObject({ kind: v.picklist(["undo", "clear", "further", "reopen"]) }),
]);
export type HallEvent = v.InferOutput<typeof hallEvent>;

export const startHall = (question: string): HallCount => ({ question, phase: "open", hands: [] });

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

/** Answers for each of the question's first nine choices, in their order. */
export const tally = (choices: readonly string[], answers: readonly string[]): readonly number[] =>
  choices.slice(0, MAX_CHOICES).map((id) => answers.filter((answer) => answer === id).length);
