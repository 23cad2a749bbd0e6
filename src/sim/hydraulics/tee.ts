/** Tees. Coefficients depend on how the flow splits, so each is taken at the flows of the moment and renewed as they change. */
import { quarterTurn } from "./bend.ts";
import { type Element, type Fluid, quadraticLoss } from "./element.ts";

const TURBULENT: readonly [number, number] = [4000, Number.POSITIVE_INFINITY];

/** Dividing tee, 90 degrees, loss coefficient (dimensionless) into the side branch; on the common leg's head. `speedRatio` = branch over common (Idelchik). */
export const dividingBranch = (speedRatio: number): number =>
  (speedRatio <= 0.8 ? 1 : 0.9) * (1 + speedRatio ** 2);

/** Dividing tee, loss coefficient (dimensionless) straight on; on the common leg's head, `speedRatio` as above (Idelchik). */
export const dividingStraight = (speedRatio: number): number => 0.4 * (1 - speedRatio) ** 2;

/**
 * Combining tee, 90 degrees, loss coefficient (dimensionless) from the side branch; on the common leg's head (Idelchik).
 * @param flowShare ratio of the branch's flow to the common leg's, 0 to 1
 * @param areaShare ratio of their areas, above 0
 */
export function combiningBranch(flowShare: number, areaShare: number): number {
  const factor = areaShare <= 0.35 ? 1 : flowShare <= 0.4 ? 0.9 * (1 - flowShare) : 0.55;
  return factor * (1 + (flowShare / areaShare) ** 2 - 2 * (1 - flowShare) ** 2);
}

/** Combining tee, loss coefficient (dimensionless) straight on; on the common leg's head, `flowShare` as above (Idelchik). */
export const combiningStraight = (flowShare: number): number => 1.55 * flowShare - flowShare ** 2;

/**
 * Two opposed streams into one outlet, loss coefficient (dimensionless) of one of them; on the outlet's head (Idelchik).
 * @param flowShare ratio of the stream's flow to the outlet's, 0 to 1
 * @param areaRatio outlet's area over that of either inlet, above 0
 */
export const opposedStreams = (flowShare: number, areaRatio: number): number =>
  1 + areaRatio ** 2 + 3 * areaRatio ** 2 * (flowShare ** 2 - flowShare);

/**
 * A side outlet (pulmonary artery) of a common leg or chamber, its edge rounded by `flare`; loss on the branch's own head.
 * @param branch m
 * @param flare m
 * @param speedRatio mean velocity in the branch over that in the common leg, above 0
 */
export function division(branch: number, speedRatio: number, flare: number, fluid: Fluid): Element {
  const ratio = Math.max(speedRatio, 0.2);
  const rounded = quarterTurn(0.5 + flare / branch) / quarterTurn(0.5);
  return {
    a: 0,
    b: quadraticLoss((dividingBranch(ratio) / ratio ** 2) * rounded, branch, fluid),
    inertance: 0,
    source: "dividing tee, 90 degrees (Idelchik), edge rounded as a bend",
    validReynolds: TURBULENT,
  };
}
