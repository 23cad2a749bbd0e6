/** The days after the operation for each circulation, solved once and kept as long as the circulation lives. */
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import { type ExchangeCourse, firstDaysRequest, solveExchange } from "../sim/exchange/index.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";

export interface ExchangeCourses {
  /** With operation and drain; null until it is solved, and for a circulation that did not settle. */
  of(circulation: Circulation | null): ExchangeCourse | null;
  /** Resolved once the course of this circulation is solved, or cannot be. */
  begin(circulation: Circulation): Promise<void>;
}

/** @param answer solves the circulation of the first days, from where the course goes on to the one asked about */
export function exchangeCourses(
  answer: (request: CirculationRequest) => Promise<Circulation>,
): ExchangeCourses {
  const solved = new WeakMap<Circulation, ExchangeCourse>();
  const begun = new WeakMap<Circulation, Promise<void>>();

  const solve = async (circulation: Circulation) => {
    const request = firstDaysRequest(circulation.request);
    // A solver that failed has said so itself.
    const firstDays = request ? await answer(request).catch(() => null) : circulation;
    if (firstDays?.run.converged) solved.set(circulation, solveExchange(circulation, { firstDays }));
  };

  const begin = (circulation: Circulation) => {
    const known =
      begun.get(circulation) ?? (circulation.run.converged ? solve(circulation) : Promise.resolve());
    begun.set(circulation, known);
    return known;
  };

  return {
    begin,
    of(circulation) {
      if (circulation) void begin(circulation);
      return (circulation && solved.get(circulation)) ?? null;
    },
  };
}
