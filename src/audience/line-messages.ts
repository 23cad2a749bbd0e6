/** What phones and the stage say to the audience's server, and what it answers: read strictly, bounded in size. */
import * as v from "valibot";
import { CHOICE_ID, CODE, KEY, LARGEST, LONGEST_TEXT, MAX_CHOICES, TOKEN } from "./room-code.ts";

/** characters of a message: a phone's is a few words, the stage's holds a question or a step in every language, and it hears a hall's numbers */
export const LONGEST = { phone: 512, stage: 60_000, toStage: 1e6 } as const;
/** Bars of a histogram. */
const MAX_BARS = 20;

const tag = v.pipe(v.string(), v.regex(/^[a-z]{2,3}$/));
const inLanguages = <T>(each: v.GenericSchema<unknown, T>) =>
  v.pipe(
    v.record(tag, each),
    v.check((words) => Object.keys(words).length > 0 && Object.keys(words).length <= 8),
  );
const text = v.pipe(v.string(), v.minLength(1), v.maxLength(LONGEST_TEXT.ask));
const byLanguage = inLanguages(text);
export const choiceId = v.pipe(v.string(), v.regex(CHOICE_ID));
export const questionKey = v.pipe(v.string(), v.minLength(1), v.maxLength(LONGEST_TEXT.key));
const amount = v.pipe(v.number(), v.minValue(-LARGEST), v.maxValue(LARGEST));
const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1e6));

const question = v.strictObject({
  key: questionKey,
  ask: byLanguage,
  /** Empty where a number is asked for freely. */
  choices: v.pipe(v.array(v.strictObject({ id: choiceId, say: byLanguage })), v.maxLength(MAX_CHOICES)),
  /** Of the number asked for, as it is written; null = none. */
  unit: v.nullable(byLanguage),
});
export type AskedQuestion = v.InferOutput<typeof question>;

/** The bars that the stage shows: phones show the same. */
const result = v.strictObject({
  counts: v.pipe(v.array(count), v.maxLength(MAX_BARS)),
  /** Of numbers: the bars' ends, one more than bars, which may lie beyond every answer; empty for choices, which are in the question's order. */
  edges: v.pipe(v.array(v.pipe(v.number(), v.finite())), v.maxLength(MAX_BARS + 1)),
  /** What the model gives; null until the speaker shows it. */
  model: v.nullable(v.union([choiceId, amount])),
});
export type ShownResult = v.InferOutput<typeof result>;

export const answer = v.union([choiceId, amount]);
export type HallAnswer = v.InferOutput<typeof answer>;

/** A step as it can be read again, by language. */
const stepWords = inLanguages(
  v.strictObject({
    title: v.pipe(v.string(), v.maxLength(LONGEST_TEXT.title)),
    text: v.pipe(v.string(), v.maxLength(LONGEST_TEXT.step)),
  }),
);
export type StepWords = v.InferOutput<typeof stepWords>;

export const code = v.pipe(v.string(), v.regex(CODE));
export const stageKey = v.pipe(v.string(), v.regex(KEY));
export const token = v.pipe(v.string(), v.regex(TOKEN));

export const fromPhone = v.variant("kind", [
  v.strictObject({ kind: v.literal("join"), code, token, language: tag }),
  v.strictObject({ kind: v.literal("answer"), question: questionKey, answer }),
  v.strictObject({ kind: v.literal("lost"), on: v.boolean() }),
  v.strictObject({ kind: v.literal("words") }),
]);

export type FromPhone = v.InferOutput<typeof fromPhone>;

export const asking = v.strictObject({
  kind: v.literal("ask"),
  question: v.nullable(question),
  locked: v.boolean(),
  result: v.nullable(result),
});

/** Every answer to it is forgotten. */
export const clearing = v.strictObject({ kind: v.literal("clear"), question: questionKey });
export const reading = v.strictObject({ kind: v.literal("words"), step: questionKey, words: stepWords });
export const ending = v.strictObject({ kind: v.literal("end") });

export const fromStage = v.variant("kind", [
  v.strictObject({ kind: v.literal("hold"), code, key: stageKey }),
  asking,
  clearing,
  reading,
  ending,
]);
export type FromStage = v.InferOutput<typeof fromStage>;

const size = v.pipe(v.number(), v.integer(), v.minValue(0));

/** To the stage: how one question is answered. */
const counts = v.object({
  kind: v.literal("counts"),
  question: questionKey,
  tally: v.record(choiceId, size),
  numbers: v.array(amount),
});
/** Who is there. */
const hall = v.object({ kind: v.literal("hall"), phones: size, lost: size });
/** The room is held; `address` is where phones find their page. */
const held = v.object({ kind: v.literal("held"), address: v.string() });

/** What a later server says besides is left out. */
export const toStage = v.variant("kind", [counts, hall, held, v.object({ kind: v.literal("here") })]);
export type Counts = v.InferOutput<typeof counts>;
export type Hall = v.InferOutput<typeof hall>;
export type ToStage = v.InferOutput<typeof toStage>;

/** To a phone, in its own language. */
export interface PhoneQuestion {
  readonly key: string;
  readonly ask: string;
  readonly choices: readonly { readonly id: string; readonly say: string }[];
  readonly unit: string;
}
export type ToPhone =
  | {
      readonly kind: "ask";
      readonly question: PhoneQuestion | null;
      readonly locked: boolean;
      readonly result: ShownResult | null;
    }
  | { readonly kind: "own"; readonly question: string; readonly own: HallAnswer | null }
  | { readonly kind: "lost"; readonly on: boolean }
  | { readonly kind: "words"; readonly steps: readonly { readonly title: string; readonly text: string }[] }
  | { readonly kind: "here" };

/** null for what is no message: not text, too long, not JSON or of another form. */
export function readMessage<Message>(
  schema: v.GenericSchema<unknown, Message>,
  data: string,
  longest: number,
): Message | null {
  if (data.length > longest) return null;
  try {
    const found = v.safeParse(schema, JSON.parse(data));
    return found.success ? found.output : null;
  } catch {
    return null;
  }
}
