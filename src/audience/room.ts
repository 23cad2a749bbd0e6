/** A room of the audience as a record of what was said in it: (room, entry) -> room. The same entries give the same room again. */
import * as v from "valibot";
import {
  type AskedQuestion,
  answer,
  asking,
  clearing,
  ending,
  type HallAnswer,
  questionKey,
  reading,
  type ShownResult,
  type StepWords,
  token,
} from "./line-messages.ts";

export interface Room {
  readonly question: AskedQuestion | null;
  readonly locked: boolean;
  readonly result: ShownResult | null;
  /** Question's key -> phone's token -> its answer, and how often it was given. */
  readonly answers: Map<string, Map<string, Given>>;
  /** Every phone that was let in. */
  readonly tokens: Set<string>;
  /** Tokens of phones that say they are lost. */
  readonly lost: Set<string>;
  /** Token -> how often it has changed that at this question. */
  readonly lostTimes: Map<string, number>;
  /** The steps shown so far, to be read again. */
  readonly words: Map<string, StepWords>;
}

interface Given {
  readonly answer: HallAnswer;
  readonly times: number;
}

/** Larger than any hall; what a room can hold in memory is bounded by these three. */
export const MAX_PHONES = 5000;
const MAX_QUESTIONS = 300;
const MAX_STEPS = 500;
/** Changes of mind at one question, of the answer and of being lost. */
export const MAX_TIMES = 20;

export const roomEntry = v.variant("kind", [
  v.strictObject({ kind: v.literal("join"), token }),
  v.strictObject({ kind: v.literal("answer"), question: questionKey, token, answer }),
  v.strictObject({ kind: v.literal("lost"), token, on: v.boolean() }),
  asking,
  clearing,
  reading,
  ending,
]);
export type RoomEntry = v.InferOutput<typeof roomEntry>;

export const emptyRoom = (): Room => ({
  question: null,
  locked: false,
  result: null,
  answers: new Map(),
  tokens: new Set(),
  lost: new Set(),
  lostTimes: new Map(),
  words: new Map(),
});

export const ownAnswer = (room: Room, key: string, phone: string): HallAnswer | null =>
  room.answers.get(key)?.get(phone)?.answer ?? null;

/** An answer counts for the question that is open, by one of its choices or, where it has none, by a number. */
export function isCounted(room: Room, asked: string, phone: string, given: HallAnswer): boolean {
  if (room.locked || room.question?.key !== asked) return false;
  if ((room.answers.get(asked)?.get(phone)?.times ?? 0) >= MAX_TIMES) return false;
  const { choices } = room.question;
  return choices.length > 0 ? choices.some(({ id }) => id === given) : typeof given === "number";
}

/** Being lost counts where it changes something, and not for ever. */
export const isLostCounted = (room: Room, phone: string, on: boolean): boolean =>
  room.lost.has(phone) !== on && (room.lostTimes.get(phone) ?? 0) < MAX_TIMES;

/** A room is changed in place: a talk's answers are many. */
export function enter(room: Room, entry: RoomEntry): Room {
  switch (entry.kind) {
    case "join":
      if (room.tokens.size < MAX_PHONES) room.tokens.add(entry.token);
      return room;
    case "ask":
      // What was lost at one question may be clear at the next.
      if (entry.question?.key !== room.question?.key) {
        room.lost.clear();
        room.lostTimes.clear();
      }
      return { ...room, question: entry.question, locked: entry.locked, result: entry.result };
    case "answer": {
      if (!room.tokens.has(entry.token) || !isCounted(room, entry.question, entry.token, entry.answer))
        return room;
      const given = room.answers.get(entry.question) ?? new Map<string, Given>();
      if (given.size === 0 && room.answers.size >= MAX_QUESTIONS) return room;
      const times = (given.get(entry.token)?.times ?? 0) + 1;
      room.answers.set(entry.question, given.set(entry.token, { answer: entry.answer, times }));
      return room;
    }
    case "clear":
      // Kept empty, so that the stage hears that nothing is left.
      if (room.answers.has(entry.question)) room.answers.set(entry.question, new Map());
      return room;
    case "lost":
      if (!room.tokens.has(entry.token) || !isLostCounted(room, entry.token, entry.on)) return room;
      if (entry.on) room.lost.add(entry.token);
      else room.lost.delete(entry.token);
      room.lostTimes.set(entry.token, (room.lostTimes.get(entry.token) ?? 0) + 1);
      return room;
    case "words":
      if (room.words.has(entry.step) || room.words.size < MAX_STEPS) room.words.set(entry.step, entry.words);
      return room;
    case "end":
      return emptyRoom();
  }
}

/** How a question was answered: choices counted by id, numbers as they are. */
export function tallyOf(
  room: Room,
  key: string,
): { readonly tally: Record<string, number>; readonly numbers: number[] } {
  const tally: Record<string, number> = Object.create(null);
  const numbers: number[] = [];
  for (const { answer: given } of room.answers.get(key)?.values() ?? [])
    if (typeof given === "number") numbers.push(given);
    else tally[given] = (tally[given] ?? 0) + 1;
  return { tally, numbers };
}
