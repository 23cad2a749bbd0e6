/** Unstressed volume and compliance of every compartment. */
import type { ReferenceSet } from "../../body/reference-sets.ts";
import { fromCompliance, fromMillilitre } from "../../units.ts";
import {
  AORTA,
  ARTERIES,
  ATRIUM,
  type ByCompartment,
  type Compartment,
  IVC,
  JUNCTION,
  LEGS,
  LUNG_LEFT,
  LUNG_RIGHT,
  PULMONARY_VEINS,
  RIGHT_ATRIUM,
  RIGHT_VENTRICLE,
  SPLANCHNIC,
  UPPER,
  VENTRICLE,
  VOLUMES,
  vector,
} from "./compartments.ts";
import type { Connections } from "./stages.ts";

/** The aortic root's share of the arteries' volume and compliance (teaching value). */
const ROOT_SHARE = 0.3;

/** How much more (dimensionless) a bed's veins answer one tone than all do together. */
export interface VenousTone {
  readonly upper: number;
  readonly splanchnic: number;
  readonly legs: number;
}

/**
 * Veins of muscle have few nerves, those of gut, liver and spleen most of what reflexes draw blood from (Rothe, Physiol Rev 1983;63:1281).
 * Parts are fitted to where blood goes in effort (Flamm, Circulation 1990;81:1550, abstract): at the peak 19 % leave the belly, 23 % the legs.
 */
const UPPER_TONE = 0;
const LEG_TONE = 0.75;

/** The belly's takes what the others leave: all together give the same. */
function toneOf(set: ReferenceSet): VenousTone {
  const { upperVeinUnstressed: upper, splanchnicUnstressed: belly, legVeinUnstressed: legs } = set;
  const splanchnic = 1 + ((1 - UPPER_TONE) * upper + (1 - LEG_TONE) * legs) / belly;
  return { upper: UPPER_TONE, splanchnic, legs: LEG_TONE };
}

/** Factor on a bed's unstressed volume. @param room that of all veins together @param tone the bed's own */
export const roomIn = (room: number, tone: number): number => 1 - tone * (1 - room);

/**
 * m3 and m3/Pa; chambers hold their unstressed volume and no compliance.
 * @param room factor (0..1) on the unstressed volume of the systemic veins: below 1 they are constricted
 * @param leftShare part (0..1) of the pulmonary arteries that is the left lung's
 */
export function vesselsOf(set: ReferenceSet, connections: Connections, room: number, leftShare: number) {
  const unstressed: ByCompartment = vector(VOLUMES);
  const compliance: ByCompartment = vector(VOLUMES);
  const vessel = (index: Compartment, unstressedMl: number, complianceMl: number) => {
    unstressed[index] = fromMillilitre(unstressedMl);
    compliance[index] = fromCompliance(complianceMl);
  };
  unstressed[VENTRICLE] = fromMillilitre(set.ventricleUnstressed);
  unstressed[RIGHT_VENTRICLE] = fromMillilitre(set.rightVentricleUnstressed);
  unstressed[ATRIUM] = fromMillilitre(set.atriumUnstressed);
  unstressed[RIGHT_ATRIUM] = unstressed[ATRIUM];
  vessel(AORTA, ROOT_SHARE * set.arteryUnstressed, ROOT_SHARE * set.arteryCompliance);
  vessel(ARTERIES, (1 - ROOT_SHARE) * set.arteryUnstressed, (1 - ROOT_SHARE) * set.arteryCompliance);
  const tone = toneOf(set);
  vessel(UPPER, roomIn(room, tone.upper) * set.upperVeinUnstressed, set.upperVeinCompliance);
  vessel(SPLANCHNIC, roomIn(room, tone.splanchnic) * set.splanchnicUnstressed, set.splanchnicCompliance);
  vessel(LEGS, roomIn(room, tone.legs) * set.legVeinUnstressed, set.legVeinCompliance);
  vessel(IVC, set.ivcUnstressed, set.ivcCompliance);
  vessel(
    JUNCTION,
    connections.junctionWall * set.atriumUnstressed,
    connections.junctionWall / set.atriumElastanceRelaxed,
  );
  vessel(LUNG_LEFT, leftShare * set.pulmonaryArteryUnstressed, leftShare * set.pulmonaryArteryCompliance);
  vessel(
    LUNG_RIGHT,
    (1 - leftShare) * set.pulmonaryArteryUnstressed,
    (1 - leftShare) * set.pulmonaryArteryCompliance,
  );
  vessel(PULMONARY_VEINS, set.pulmonaryVeinUnstressed, set.pulmonaryVeinCompliance);
  return { unstressed, compliance, venousTone: tone };
}
