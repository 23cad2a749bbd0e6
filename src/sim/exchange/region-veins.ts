/** The veins and the duct that a region's capillaries and lymph empty into. Pressures mmHg. */
import type { Circulation } from "../circulation/answer/answer.ts";
import { wordSetting } from "../parameters/parameters.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import type { Region } from "./filtration.ts";

/** What an exchange needs of a circulation. */
export interface Veins {
  readonly request: CirculationRequest;
  readonly pressures: Pick<Circulation["pressures"], "svc" | "hepaticVein" | "atrium">;
  /** of these: legVeinPressure, splanchnicPressure */
  readonly extras: Circulation["extras"];
}

/** mmHg at the venous end of a region's capillaries; limbs see the mean of upper and leg veins. */
export function venousPressure({ name }: Region, { pressures, extras }: Veins): number {
  if (name === "limbs") return (pressures.svc + (extras.legVeinPressure ?? 0)) / 2;
  return name === "liver" ? pressures.hepaticVein : (extras.splanchnicPressure ?? 0);
}

/** mmHg where the thoracic duct empties: the vein behind the left clavicle, or the atrium where it has been joined to that. */
export const ductPressure = ({ request, pressures }: Veins): number =>
  wordSetting(request, "thoracicDuct") === "atrium" ? pressures.atrium : pressures.svc;
