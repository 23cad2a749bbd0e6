/** Test occlusion of a fenestration: shut at the volume that the person has with it open, as in the catheter room. */

import { present } from "../../checked/present.ts";
import { type CirculationRequest, occluded } from "../../parameters/request.ts";
import type { Circulation } from "../answer/answer.ts";
import { solve } from "../solve.ts";

/** The same person before and during the occlusion. */
export interface TestOcclusion {
  readonly open: Circulation;
  readonly closed: Circulation;
}

/** @param request with its fenestration open */
export function occludeFenestration(request: CirculationRequest): TestOcclusion {
  const open = solve(request);
  return { open, closed: solve(occluded(request, present(open.extras.bloodVolume)), { start: open.state }) };
}
