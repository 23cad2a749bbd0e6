/** What a learner gives, and what comes of it. */
import type { Mistake, Words } from "../lesson.ts";

/**
 * An answer's id (predict, choose), a number (estimate, number: in the unit; goal: the control's value), or items in order.
 * Where nothing is typed, a number's question takes a mistake's id or `=`.
 */
export type Given = string | number | readonly string[];

export interface Judgement {
  readonly right: boolean;
  /** The reason, in words. */
  readonly because: Words;
  /** Step whose picture shows why; only for a wrong answer. */
  readonly show: string | null;
  /** What would have been right: an answer's id, the model's number, items in order; null where there is no one answer. */
  readonly truth: Given | null;
  /** Of a typed number: how far from the truth still counts, in the unit. */
  readonly within?: number;
  /** Of a typed number: the mistake that leads to it. */
  readonly mistake?: Mistake;
}
