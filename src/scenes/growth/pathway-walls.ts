/** Of what the drawn tubes and chambers are made, and how thick that is. */
import { type CirculationRequest, hasPathway, type PathwayStage } from "../../sim/parameters/request.ts";
import { CLOTH, type Tissue, tissue } from "../anatomy/tones.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** @throws where no pathway leads the blood: nothing is drawn of it then */
export function pathwayStage({ stage }: CirculationRequest): PathwayStage {
  if (!hasPathway(stage)) throw new Error(`no pathway at the stage ${stage}`);
  return stage;
}

/** mm: an ePTFE conduit's wall is some two thirds of one, an atrium's two to three (from memory). */
const WALL: Readonly<Record<PathwayStage, number>> = {
  extracardiac: 0.65,
  "lateral-tunnel": 2,
  atriopulmonary: 2,
};
/** mm */
export const wallOf = (request: CirculationRequest): number => WALL[pathwayStage(request)];

/** Tissues and cloth of which tube or chamber is made: on the body's right side and on its left. */
export function wallsOf(stage: PathwayStage, theme: Theme): readonly [Tissue, Tissue] {
  const atrium = tissue("atrium", theme);
  const { body, fold } = CLOTH[theme.name];
  const cloth: Tissue = { shade: mix(body, fold, 0.5), body, light: mix(body, "#ffffff", 0.5), edge: fold };
  const sides: Readonly<Record<PathwayStage, readonly [Tissue, Tissue]>> = {
    extracardiac: [cloth, cloth],
    "lateral-tunnel": [atrium, cloth],
    atriopulmonary: [atrium, atrium],
  };
  return sides[stage];
}
