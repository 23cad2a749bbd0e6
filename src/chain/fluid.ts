/** The blood that fills the field: the same as the circulation's. */
import { BLOOD_DENSITY, bloodViscosity } from "../sim/body/blood.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import { toMillipascalSecond } from "../sim/units.ts";
import type { Fluid } from "./worker-messages.ts";

export const fluidOf = ({ body }: CirculationRequest): Fluid => ({
  density: BLOOD_DENSITY,
  viscosity: toMillipascalSecond(bloodViscosity(body.haemoglobin)),
});
