/** Blood that is lost at once, and what the tissues give back in the minutes after: Starling's balance, tipped by the loss. */
import { haematocrit } from "../body/blood.ts";
import { usualWeight } from "../body/bsa.ts";
import {
  capillaryPressure,
  filtration,
  lymphAtRest,
  lymphCeiling,
  REGIONS,
  type Region,
  regionLymph,
  steadyExchange,
  type Tissue,
  venousFor,
} from "../exchange/filtration.ts";
import { diluted } from "../exchange/protein.ts";
import { tissueCompliance } from "../exchange/tissue.ts";
import { numberSetting } from "../parameters/parameters.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import type { Circulation } from "./answer.ts";
import { solve } from "./solve.ts";

/** A loss of blood. */
export interface BloodLoss {
  readonly before: Circulation;
  readonly after: Circulation;
  /** mL of water that the tissues gave back */
  readonly regained: number;
  /** %, before and after */
  readonly haematocritBefore: number;
  readonly haematocritAfter: number;
}

/** min between two looks at the circulation, and steps of the tissues from one to the next */
const LOOK = 2.5;
const STEPS = 10;

/**
 * Where one state on the way has no answer it ends there: `after.run` says why.
 * @param request the person, at rest
 * @param lost mL, taken evenly over `minutes` (above 0)
 */
export function loseBlood(request: CirculationRequest, lost: number, minutes: number): BloodLoss {
  const before = solve(request);
  const full = before.extras.bloodVolume ?? 0;
  const bled = (bloodVolume: number, start: readonly number[]): Circulation =>
    solve({ ...request, volumeRule: "fixed-volume", set: { ...request.set, bloodVolume } }, { start });
  const cells = haematocrit(request.body.haemoglobin) / 100;
  const regions = REGIONS.map((region) => restingRegion(region, before));
  const looks = Math.max(1, Math.round(minutes / LOOK));
  const step = minutes / looks / STEPS;
  let after = before;
  let regained = 0;
  for (let look = 1; look <= looks && after.run.converged; look++) {
    const left = full - (lost * look) / looks;
    after = bled(left + regained, after.state);
    for (let i = 0; i < STEPS; i++) {
      const strength = strengthOf(left * (1 - cells), regained);
      for (const region of regions) regained += giveBack(region, before, after, strength, step);
    }
    after = bled(left + regained, after.state);
  }
  return {
    before,
    after,
    regained,
    haematocritBefore: 100 * cells,
    haematocritAfter: (100 * cells * (full - lost)) / (full - lost + regained),
  };
}

/** Protein of what the tissues give back over plasma's: 30 of some 70 g/L, as in lymph (Hinghofer-Szalkay, J Appl Physiol; tilted persons, abstract). */
const PROTEIN_SHARE = 30 / 70;
/** Part (0..1) of its strength that so much plasma keeps with so much given back to it. */
const strengthOf = (plasma: number, regained: number): number =>
  (plasma + PROTEIN_SHARE * regained) / (plasma + regained);

/**
 * Filtration coefficient of muscle and skin over Guyton's as a loss opens more of their capillaries: 0.097 mL/min/mmHg in 100 mL of arm
 * (Laenne, PMID 1481688, abstract), muscle and skin being some 45 % of a body; their share of Guyton's is 0.057 in 1 kg of body.
 */
const OPENED = (0.097 * 10 * 0.45) / 0.057;

interface RegionState {
  readonly region: Region;
  readonly tissue: Tissue;
  /** mmHg in the tissue */
  pressure: number;
}

function restingRegion(region: Region, before: Circulation): RegionState {
  const { request, pressures } = before;
  const setting = (name: string) => numberSetting(request, name);
  const tissue: Tissue = {
    venousPressure: venousPressure(region, before),
    plasmaOncoticPressure: setting("plasmaOncoticPressure"),
    reflection: setting("proteinReflection"),
    leakage: setting("capillaryLeakage"),
    lymphMaximum: setting("lymphMaximum"),
    lymphOutflow: pressures.svc,
    weight: usualWeight(request.body.bsa),
  };
  return { region, tissue, pressure: steadyExchange(region, tissue).tissuePressure };
}

/** mL that a region gives the blood in some minutes by lymph, less what filters; its tissue is drained by as much. */
function giveBack(
  state: RegionState,
  before: Circulation,
  after: Circulation,
  strength: number,
  minutes: number,
): number {
  const { region, tissue } = state;
  const ratio = regionLymph(region, state.pressure, lymphCeiling(tissue));
  const now: Tissue = {
    ...tissue,
    venousPressure:
      region.name === "liver"
        ? venousPressure(region, after)
        : venousFor(capillaryNow(region, before, after)),
    leakage: tissue.leakage * (region.name === "limbs" ? OPENED : 1),
    plasmaOncoticPressure: diluted(tissue.plasmaOncoticPressure, strength),
  };
  const rate = ratio * lymphAtRest(region, tissue.weight) - filtration(region, now, state.pressure, ratio);
  const given = (rate * minutes) / 60;
  state.pressure -= given / tissueCompliance(state.pressure, tissue.weight * region.share);
  return given;
}

/** mmHg: what stands in the capillaries above their vein is spent by the flow, and falls with it. */
function capillaryNow(region: Region, before: Circulation, after: Circulation): number {
  const usual = venousPressure(region, before);
  const above = capillaryPressure(usual) - usual;
  return venousPressure(region, after) + (above * regionFlow(region, after)) / regionFlow(region, before);
}

function venousPressure({ name }: Region, { pressures, extras }: Circulation): number {
  if (name === "limbs") return (pressures.svc + (extras.legVeinPressure ?? 0)) / 2;
  return name === "liver" ? pressures.hepaticVein : (extras.splanchnicPressure ?? 0);
}

/** L/min, the mean of the beat's curve */
function regionFlow({ name }: Region, { traces }: Circulation): number {
  const curves = name === "limbs" ? [traces.flows.upper, traces.flows.legBed] : [traces.flows.splanchnic];
  let sum = 0;
  for (const curve of curves) for (const value of curve?.slice(1) ?? []) sum += value / (curve?.length ?? 1);
  return sum;
}
