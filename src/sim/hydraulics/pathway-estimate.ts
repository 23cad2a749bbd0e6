/** What the loss law leaves open about a pathway, and where each vein's blood goes. */
import { BLOOD_DENSITY, bloodViscosity } from "../body/blood.ts";
import { pathwaySizes } from "../geometry/pathways/sizes.ts";
import { type CirculationRequest, hasPathway } from "../parameters/request.ts";
import type { PathwayLoss } from "./ledger.ts";
import { crossable, partsAt, usualPosition } from "./loss-law/crossing.ts";
import {
  clearance,
  type Feature,
  type FlowSplit,
  featuresOf,
  jetStrength,
  nearParting,
  runsThrough,
  streamsOf,
} from "./loss-law/features.ts";
import { fittedProcess, LAW } from "./loss-law/law-set.ts";
import { beyond } from "./loss-law/range.ts";

/** Lowest and highest value that stays open. */
type Band = readonly [low: number, high: number];

/** The loss within which 90 % of cases left out of the fit lay. */
export interface LossBand {
  /** mmHg */
  readonly pressureDrop: Band;
  /** mW */
  readonly powerLoss: Band;
}

/** Fractions of a vein's blood, 0 to 1; together they are less than 1 by what leaves through a fenestration. */
export interface VeinShares {
  readonly left: number;
  readonly right: number;
  /** fractions between which `left` lay in 90 % of cases left out of the fit */
  readonly band: Band;
}

/** Where each vein's blood goes. */
export interface PathwayShares {
  readonly ivc: VeinShares;
  readonly svc: VeinShares;
}

/** What the law says beyond its one number. */
export interface PathwayEstimate {
  readonly band: LossBand;
  readonly shares: PathwayShares;
  /** what lies outside the 3D set's range for the stage, by name */
  readonly outsideSet: readonly Outside[];
}

export type Outside = Feature | "flows" | "pulsation";

/**
 * Power over that of the same mean flows without pulsation, up to which the set speaks: flows that swung by 0.4 of their mean
 * (by the law 1.24 times the steady power, in 3D 1.10 to 1.30) were checked in 3D; stronger ones were not computed.
 */
const MAX_PULSATION = 1.4;
/** Within the set no band is wider, up or down. */
const WIDEST = Math.log(1.3);

const within = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

/**
 * Undefined for a stage whose veins do not meet the lungs' arteries in one pathway.
 * @param flows means, m3/s
 * @param pulsation power lost over what the same mean flows would lose when steady, dimensionless
 */
export function pathwayEstimate(
  request: CirculationRequest,
  flows: FlowSplit,
  { pressureDrop, powerLoss }: Pick<PathwayLoss, "pressureDrop" | "powerLoss">,
  pulsation = 1,
): PathwayEstimate | undefined {
  const { stage, body } = request;
  if (!hasPathway(stage)) return undefined;
  const sizes = pathwaySizes(request);
  const streams = streamsOf(stage, flows);
  const fluid = { density: BLOOD_DENSITY, viscosity: bloodViscosity(body.haemoglobin) };
  const at = featuresOf(sizes, streams, fluid);
  const outsideSet: Outside[] = runsThrough(flows) ? beyond(LAW.ranges[stage], at) : ["flows"];
  if (pulsation > MAX_PULSATION) outsideSet.push("pulsation");
  const reach = (quantity: "power" | "drop" | "share") => {
    const { deviation, mean } = fittedProcess(quantity).estimate(at);
    const unsettled = quantity === "share" ? LAW.unsettled * nearParting(sizes, streams) : 0;
    const open = LAW[quantity].reach * Math.hypot(deviation, unsettled);
    return { mean, open: outsideSet.length > 0 ? Math.max(open, LAW.outside[quantity]) : open };
  };
  const banded = (value: number, quantity: "power" | "drop"): Band => {
    const { open } = reach(quantity);
    const factor = Math.exp(outsideSet.length > 0 ? open : Math.min(open, WIDEST));
    return [value / factor, value * factor];
  };
  const chamber = stage === "atriopulmonary";
  const share = reach("share");
  const rule = LAW.crossing[chamber ? "chamber" : "tubes"];
  const usual = usualPosition(clearance(sizes, 0), jetStrength(sizes, streams), streams, rule);
  const parts = partsAt(usual + share.mean, streams);
  const lowerOpen = share.open * (outsideSet.length > 0 ? 1 : crossable(streams));
  const upperOpen = (lowerOpen * streams.lower) / (1 - streams.lower);
  const kept = (share: number, vein: number) => (vein > 0 ? within(0, (streams.lungs * share) / vein, 1) : 1);
  return {
    band: { pressureDrop: banded(pressureDrop, "drop"), powerLoss: banded(powerLoss, "power") },
    shares: {
      ivc: veinShares(parts.ivc, lowerOpen, kept(streams.lower, flows.ivc)),
      svc: veinShares(parts.svc, upperOpen, kept(1 - streams.lower, flows.svc)),
    },
    outsideSet,
  };
}

/** @param whole part of the vein's blood that reaches the lungs at all */
const veinShares = (left: number, open: number, whole: number): VeinShares => ({
  left: left * whole,
  right: (1 - left) * whole,
  band: [within(0, left - open, 1) * whole, within(0, left + open, 1) * whole],
});
