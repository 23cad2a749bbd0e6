/** Blood that is lost at once, and what the tissues give back in the minutes after: Starling's balance, tipped by the loss. */
import { haematocrit } from "../../body/blood.ts";
import { REGIONS } from "../../exchange/filtration.ts";
import type { CirculationRequest } from "../../parameters/request.ts";
import type { Circulation } from "../answer/answer.ts";
import { solve } from "../solve.ts";
import { giveBack, type Present, restingRegion } from "./give-back.ts";
import { drawnIn, toneWith } from "./vein-creep.ts";

/** A loss of blood. What is given back thins it: the haemoglobin of `after` is that of its request's body. */
export interface BloodLoss {
  readonly before: Circulation;
  readonly after: Circulation;
  /** mL of water that the tissues gave back */
  readonly regained: number;
}

/** min between two looks at the circulation, and steps of the tissues from one to the next */
const LOOK = 2.5;
const STEPS = 10;

/**
 * Where one state on the way has no answer it ends there: `after.run` says why.
 * @param request the person, at rest
 * @param lost mL, taken evenly over `minutes` (above 0)
 * @param solver asked once at rest, once at each look and once at the end
 */
export function loseBlood(
  request: CirculationRequest,
  lost: number,
  minutes: number,
  solver: typeof solve = solve,
): BloodLoss {
  const before = solver(request);
  const full = before.extras.bloodVolume ?? 0;
  const regions = REGIONS.map((region) => restingRegion(region, before));
  const looks = Math.max(1, Math.round(minutes / LOOK));
  const step = minutes / looks / STEPS;
  let after = before;
  let now: Emptied = { left: full, water: 0, drawn: 0 };
  for (let look = 1; look <= looks && after.run.converged; look++) {
    now = { ...now, left: full - (lost * look) / looks };
    after = solver(...emptied(request, now, after));
    if (!after.run.converged) break;
    for (let i = 0; i < STEPS; i++) {
      const present: Present = { before, after, strength: strengthOf(request, now) };
      for (const region of regions) now = { ...now, water: now.water + giveBack(region, present, step) };
    }
    now = { ...now, drawn: drawnIn(now.drawn, before, after, STEPS * step) };
  }
  if (after.run.converged) after = solver(...emptied(request, now, after));
  return { before, after, regained: now.water };
}

/** mL */
interface Emptied {
  /** of the blood of before */
  readonly left: number;
  /** given back by the tissues */
  readonly water: number;
  /** by which the veins have drawn in over the minutes */
  readonly drawn: number;
}

/** The person as emptied, to be searched from where they were. */
function emptied(
  request: CirculationRequest,
  { left, water, drawn }: Emptied,
  { state: start }: Circulation,
): Parameters<typeof solve> {
  const body = { ...request.body, haemoglobin: (request.body.haemoglobin * left) / (left + water) };
  const set = { ...request.set, bloodVolume: left + water, venousTone: toneWith(request, drawn) };
  return [{ ...request, body, volumeRule: "fixed-volume", set }, { start }];
}

/** Protein of what the tissues give back over plasma's: 30 of some 70 g/L, as in lymph (Hinghofer-Szalkay, J Appl Physiol; tilted persons, abstract). */
const PROTEIN_SHARE = 30 / 70;
/** Part (0..1) of its strength that the plasma of the blood that is left keeps with the water given back to it. */
function strengthOf({ body }: CirculationRequest, { left, water }: Emptied): number {
  const plasma = left * (1 - haematocrit(body.haemoglobin) / 100);
  return (plasma + PROTEIN_SHARE * water) / (plasma + water);
}
