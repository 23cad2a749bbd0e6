/** The days after the operation for each circulation, solved once and kept as long as the circulation lives. */
import type { Circulation } from "../sim/circulation/answer.ts";
import { type ExchangeCourse, solveExchange } from "../sim/exchange/index.ts";

export interface ExchangeCourses {
  /** With operation and drain; null for a circulation that did not settle. */
  of(circulation: Circulation | null): ExchangeCourse | null;
}

export function exchangeCourses(): ExchangeCourses {
  const known = new WeakMap<Circulation, ExchangeCourse>();
  return {
    of(circulation) {
      if (!circulation?.run.converged) return null;
      const kept = known.get(circulation);
      if (kept) return kept;
      const course = solveExchange(circulation);
      known.set(circulation, course);
      return course;
    },
  };
}
