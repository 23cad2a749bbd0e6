/** What blood is drawn to carry, also before the model has answered. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";

/** An answer, or what is foreseen of it. */
export type Saturated = Pick<Circulation, "saturations">;

/** Percent until a circulation is solved. */
const UNSOLVED: Circulation["saturations"] = { arterial: 75, pulmonaryVein: 96, svc: 60, ivc: 60 };

export const saturationsOf = (known: Saturated | null): Circulation["saturations"] =>
  known?.saturations ?? UNSOLVED;

/** The same in whole percent: whether what was painted with it still holds. */
export const carriedOf = (circulation: Circulation | null): readonly number[] =>
  Object.values(circulation?.saturations ?? {}).map(Math.round);
