/** What the kinds of questions are read with. */
import type * as v from "valibot";
import type { QUESTION_SCHEMAS } from "../format/question-schema.ts";
import type { Question, Tolerance, Words } from "../lesson.ts";
import type { Expression } from "../model/expression.ts";
import { type Format, parseFormat } from "../model/live-figures.ts";
import type { Refuse } from "./read-prose.ts";

export const sameKeys = (listed: readonly string[], keys: readonly string[]): boolean =>
  [...listed].sort().join() === [...keys].sort().join();

export type RawQuestion = v.InferOutput<(typeof QUESTION_SCHEMAS)[keyof typeof QUESTION_SCHEMAS]>;

export type RawOf<Kind extends keyof typeof QUESTION_SCHEMAS> = v.InferOutput<
  (typeof QUESTION_SCHEMAS)[Kind]
>;

export interface Reading {
  readonly lineOf: (...path: string[]) => number;
  readonly words: (text: string | undefined, ...path: string[]) => Words;
  readonly expression: (value: string | number | boolean, ...path: string[]) => Expression;
  readonly refuse: Refuse;
  /** What every kind has. */
  readonly asked: Pick<Question, "ask" | "hints" | "again" | "room" | "line">;
}

/** The unit and decimals of a number that is asked for. */
export function readUnit(unit: string, { refuse, lineOf }: Reading): Format {
  const format = parseFormat(unit);
  if (format.ok) return format.value;
  refuse(lineOf("unit"), format.found, format.allowed);
  return { unit: "1", digits: 0, signed: false, bare: false };
}

/** `5 %` of the value, or an amount in the unit. */
export const readTolerance = (within: number | string): Tolerance => {
  const percent = typeof within === "string";
  return { value: Number.parseFloat(String(within)) / (percent ? 100 : 1), percent };
};
