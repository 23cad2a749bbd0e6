/** What the loss law leaves open about a pathway, and where each vein's blood goes. */
import { pathwaySizes } from "../geometry/pathways/sizes.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import type { PathwayLoss } from "./ledger.ts";
import type { FlowSplit } from "./pathway-network.ts";

/** Lowest and highest value that stays open. */
export type Band = readonly [low: number, high: number];

export interface LossBand {
  /** mmHg */
  readonly pressureDrop: Band;
  /** mW */
  readonly powerLoss: Band;
}

/** Parts of a vein's blood; together they are less than 1 by what leaves through a fenestration. */
export interface VeinShares {
  readonly left: number;
  readonly right: number;
  /** of `left` */
  readonly band: Band;
}

export interface PathwayShares {
  readonly ivc: VeinShares;
  readonly svc: VeinShares;
}

const scaled = (value: number, part: number): Band => [value * (1 - part), value * (1 + part)];

export const lossBand = ({ pressureDrop, powerLoss }: PathwayLoss): LossBand => ({
  pressureDrop: scaled(pressureDrop, 0.3),
  powerLoss: scaled(powerLoss, 0.3),
});

const within = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

/** @param flows means, m3/s; what the veins bring beyond the lungs' flow leaves the lower stream through the fenestration */
export function pathwayShares(request: CirculationRequest, flows: FlowSplit): PathwayShares {
  const { offset, trunkEnd, svc: upper } = pathwaySizes(request);
  const lungs = Math.max(1e-12, flows.left + flows.right);
  const fromAbove = within(0, flows.svc / lungs, 1);
  const fromBelow = 1 - fromAbove;
  const left = within(0, flows.left / lungs, 1);
  const most = Math.min(1, left / Math.max(fromBelow, 1e-9));
  const least = Math.max(0, (left - fromAbove) / Math.max(fromBelow, 1e-9));
  const crossing = 0.5 * (1 + Math.tanh(offset / ((trunkEnd + upper) / 4)));
  const ivc = least + crossing * (most - least);
  const svc = within(0, (left - fromBelow * ivc) / Math.max(fromAbove, 1e-9), 1);
  const kept = within(0, (lungs - flows.svc) / Math.max(flows.ivc, 1e-12), 1);
  const shares = (part: number, whole: number): VeinShares => ({
    left: part * whole,
    right: (1 - part) * whole,
    band: [within(0, part - 0.1, 1) * whole, within(0, part + 0.1, 1) * whole],
  });
  return { ivc: shares(ivc, kept), svc: shares(svc, 1) };
}
