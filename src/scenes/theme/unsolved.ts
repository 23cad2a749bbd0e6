/** What blood is drawn to carry, also before the model has answered. */
import type { Circulation } from "../../sim/circulation/answer.ts";

/** Percent until a circulation is solved. */
const UNSOLVED: Circulation["saturations"] = { arterial: 75, pulmonaryVein: 96, svc: 60, ivc: 60 };

export const saturationsOf = (circulation: Circulation | null): Circulation["saturations"] =>
  circulation?.saturations ?? UNSOLVED;
