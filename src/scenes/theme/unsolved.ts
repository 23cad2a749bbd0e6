/** What blood is drawn to carry, also before the model has answered. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";

/** Percent until a circulation is solved. */
const UNSOLVED: Circulation["saturations"] = { arterial: 75, pulmonaryVein: 96, svc: 60, ivc: 60 };

export const saturationsOf = (circulation: Circulation | null): Circulation["saturations"] =>
  circulation?.saturations ?? UNSOLVED;

/** The same in whole percent: whether what was painted with it still holds. */
export const carriedOf = (circulation: Circulation | null): readonly number[] =>
  Object.values(circulation?.saturations ?? {}).map(Math.round);
