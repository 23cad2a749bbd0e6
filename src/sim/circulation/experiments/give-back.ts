/** What a region's tissue gives the blood while less of it flows and its veins fall, from rest on. */
import {
  capillaryPressure,
  filtration,
  lymphAtRest,
  overflow,
  type Region,
  regionLymph,
  steadyExchange,
  type Tissue,
  venousFor,
} from "../../exchange/filtration.ts";
import { lastingTissue } from "../../exchange/lasting-tissue.ts";
import { diluted } from "../../exchange/protein.ts";
import { ductPressure, venousPressure } from "../../exchange/region-veins.ts";
import { tissueCompliance } from "../../exchange/tissue.ts";
import type { Circulation } from "../answer/answer.ts";
import { traceMean } from "../answer/trace-mean.ts";

/**
 * Filtration coefficient of muscle and skin over Guyton's as a loss opens more of their capillaries: 0.097 mL/min/mmHg in 100 mL of arm
 * (Laenne, PMID 1481688, abstract), muscle and skin being some 45 % of a body; their share of Guyton's is 0.057 in 1 kg of body.
 */
const OPENED = (0.097 * 10 * 0.45) / 0.057;

interface RegionState {
  readonly region: Region;
  readonly tissue: Tissue;
  /** as the same balance counts them at rest, when all that leaves the blood comes back to it */
  readonly resting: Balance;
  /** mmHg in the tissue */
  pressure: number;
}

/** mL/h */
interface Balance {
  /** lymph less what filters */
  readonly toBlood: number;
  readonly overflow: number;
}

/** The person before, and now. */
export interface Present {
  readonly before: Circulation;
  readonly after: Circulation;
  /** fraction of its strength that the plasma has left, 0 to 1 */
  readonly strength: number;
}

/** A region in balance with a person who has lost nothing, its capillaries opened as a loss opens them. Pressures mmHg. */
export function restingRegion(region: Region, before: Circulation): RegionState {
  const lasting = lastingTissue(region, before);
  const pressure = steadyExchange(region, lasting).tissuePressure;
  const tissue = { ...lasting, leakage: lasting.leakage * (region.name === "limbs" ? OPENED : 1) };
  return { region, tissue, pressure, resting: balanceOf(region, tissue, pressure) };
}

function balanceOf(region: Region, tissue: Tissue, pressure: number): Balance {
  const ratio = regionLymph(region, pressure, tissue);
  return {
    toBlood: ratio * lymphAtRest(region, tissue.weight) - filtration(region, tissue, pressure, ratio),
    overflow: overflow(region, tissue, pressure),
  };
}

/** mL that a region gives the blood in some minutes beyond what it does at rest; its tissue is drained by as much, and by what overflows. */
export function giveBack(state: RegionState, { before, after, strength }: Present, minutes: number): number {
  const { region, tissue, resting } = state;
  const now = balanceOf(
    region,
    {
      ...tissue,
      venousPressure:
        region.name === "liver"
          ? venousPressure(region, after)
          : venousFor(capillaryNow(region, before, after)),
      lymphOutflow: ductPressure(after),
      plasmaOncoticPressure: diluted(tissue.plasmaOncoticPressure, strength),
    },
    state.pressure,
  );
  const given = ((now.toBlood - resting.toBlood) * minutes) / 60;
  const overflowed = ((now.overflow - resting.overflow) * minutes) / 60;
  state.pressure -= (given + overflowed) / tissueCompliance(state.pressure, tissue.weight * region.share);
  return given;
}

/** mmHg: what stands in the capillaries above their vein is spent by the flow, and falls with it. */
function capillaryNow(region: Region, before: Circulation, after: Circulation): number {
  const usual = venousPressure(region, before);
  const above = capillaryPressure(usual) - usual;
  return venousPressure(region, after) + (above * regionFlow(region, after)) / regionFlow(region, before);
}

/** L/min */
function regionFlow({ name }: Region, { traces }: Circulation): number {
  const { upper, legBed, splanchnic } = traces.flows;
  const curves = name === "limbs" ? [upper, legBed] : [splanchnic];
  return curves.reduce((sum, curve) => sum + (curve ? traceMean(curve) : 0), 0);
}
