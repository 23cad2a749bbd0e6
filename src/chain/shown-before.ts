/** What the panes show at this moment, kept so that the answer to a change can be seen beside it. */
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { PathwayGeometry } from "../sim/geometry/geometry.ts";
import { pathwayGeometry } from "../sim/geometry/pathways/index.ts";
import type { Before } from "./frame.ts";

/** By the answers on the screen, not by what has been asked for: numbers and shape then belong together. */
export const shownBefore = (circulations: readonly (Circulation | null)[]): readonly Before[] | null =>
  circulations.some((circulation) => circulation !== null)
    ? circulations.map((circulation) => ({ circulation, geometry: circulation && shapeOf(circulation) }))
    : null;

/** The shape that an answer is for; null where no plane is drawn. */
export const shapeOf = ({ request }: Circulation): PathwayGeometry | null => pathwayGeometry(request);
