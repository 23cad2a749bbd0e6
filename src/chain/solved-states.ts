/** What was solved last, by request: a search ends within its tolerance, not at the same last digit, so one state has one answer wherever it is shown. */
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import { defaultSetting, findParameter } from "../sim/parameters/parameters.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";

/** Answers kept: a lesson's steps compare with a dozen states or so, a curve has seven. */
const KEPT = 32;

export interface SolvedStates {
  /** Takes one that has settled. */
  note(circulation: Circulation): void;
  /** The answer, as one to this very request: who asked knows it by that. */
  find(request: CirculationRequest): Circulation | undefined;
}

/** The same for requests that ask for the same: what is set to its default is left out. */
function keyOf(request: CirculationRequest): string {
  const set = Object.entries(request.set).filter(([name, value]) => {
    const parameter = findParameter(name);
    return !parameter || value !== defaultSetting(parameter, request.stage, request.body);
  });
  return JSON.stringify({ ...request, set: set.sort() });
}

export function solvedStates(): SolvedStates {
  const kept = new Map<string, Circulation>();
  return {
    note(circulation) {
      if (!circulation.run.converged) return;
      const key = keyOf(circulation.request);
      kept.delete(key);
      kept.set(key, circulation);
      const [oldest] = kept.keys();
      if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest);
    },
    find(request) {
      const found = kept.get(keyOf(request));
      return found && { ...found, request };
    },
  };
}
