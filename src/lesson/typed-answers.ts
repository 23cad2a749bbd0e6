/** The numbers that a learner typed, as a course system takes them. */
import type { Progress } from "./progress.ts";

export interface TypedAnswer {
  readonly lesson: string;
  readonly step: string;
  /** At the first try; all three in the question's unit. */
  readonly given: number;
  readonly truth: number;
  readonly within: number;
  readonly right: boolean;
}

/** `but`: what an earlier visit has reported already. */
export const typedAnswers = (progress: Progress, but: Progress): readonly TypedAnswer[] =>
  Object.entries(progress.lessons).flatMap(([lesson, { answers }]) =>
    Object.entries(answers).flatMap(([step, { given, right, typed }]) => {
      if (!typed || typeof given !== "number" || but.lessons[lesson]?.answers[step]) return [];
      return [{ lesson, step, given, truth: typed.truth, within: typed.within, right: right ?? false }];
    }),
  );
