/** What is known of an answer before it has come: enough for blood to move and to be drawn, and no number that is shown. */
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { BoundaryConditions } from "../sim/flow-field/flow-field.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import type { Supply } from "../sim/tracers/index.ts";

export interface Foreseen extends Pick<Circulation, "saturations"> {
  /** from blood time 0 on */
  readonly boundary: BoundaryConditions;
  readonly supply: Supply;
}

/** Undefined where nothing is known. */
export type Foresee = (request: CirculationRequest) => Foreseen | undefined;
