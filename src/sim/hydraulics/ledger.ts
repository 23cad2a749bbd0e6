/** The loss ledger: where pressure and power are spent, element by element. */

import { entryAt } from "../checked/present.ts";
import { toMilliwatt, toMmHg, toWood } from "../units.ts";
import { reynoldsNumber } from "./element.ts";
import { BRANCHES, type ElementLaw, type LedgerRow, type PathwayFlows, type PathwayLaw } from "./law.ts";

type Flow = number | ArrayLike<number>;

/** Mean over the samples, or the value of one. */
function mean(flow: Flow, of: (flow: number) => number): number {
  if (typeof flow === "number") return of(flow);
  let sum = 0;
  for (let i = 0; i < flow.length; i++) sum += of(entryAt(flow, i));
  return sum / flow.length;
}

/** Pa: mean total-pressure drop of an element; inertance gives nothing over a whole cycle. */
export const meanDrop = (law: { readonly a: number; readonly b: number }, flow: Flow): number =>
  mean(flow, (q) => law.a * q + law.b * q * Math.abs(q));

const meanPower = (law: { readonly a: number; readonly b: number }, flow: Flow): number =>
  mean(flow, (q) => (law.a + law.b * Math.abs(q)) * q * q);

/** One row an element, branch by branch in the blood's order, the fenestration last. */
export function ledger(law: PathwayLaw, flows: PathwayFlows): LedgerRow[] {
  const row = (element: Listed, branch: LedgerRow["branch"], flow: Flow): LedgerRow => {
    const reynolds = reynoldsNumber(mean(flow, Math.abs), element.diameter, law.fluid);
    const [low, high] = element.validReynolds;
    return {
      element: element.element,
      branch,
      pressureDrop: toMmHg(meanDrop(element, flow)),
      powerLoss: toMilliwatt(meanPower(element, flow)),
      share: 0,
      source: element.source,
      factor: element.factor,
      reynolds,
      inRange: reynolds >= low && reynolds <= high,
    };
  };
  const rows = BRANCHES.flatMap((branch) =>
    law.branches[branch].map((element) => row(element, branch, flows[branch])),
  );
  if (law.fenestration && flows.fenestration !== undefined) {
    rows.push(
      row({ ...law.fenestration, element: "fenestration", factor: 1 }, "fenestration", flows.fenestration),
    );
  }
  const total = rows.reduce((sum, { powerLoss }) => sum + powerLoss, 0);
  return rows.map((each) => ({ ...each, share: total > 0 ? each.powerLoss / total : 0 }));
}

type Listed = Pick<ElementLaw, "element" | "a" | "b" | "diameter" | "source" | "factor" | "validReynolds">;

/** What the pathway costs, in one number each. */
export interface PathwayLoss {
  /**
   * mmHg, total pressure from the entry of the IVC (at the Glenn stage: of the SVC; with two ventricles: of the main pulmonary artery)
   * to the pulmonary arteries, the two lungs weighted by their flow
   */
  readonly pressureDrop: number;
  /** mW, the four branches */
  readonly powerLoss: number;
  /** WU: power loss over the square of the lungs' flow, so that every branch counts as it carries */
  readonly resistance: number;
}

/** Loss (mmHg, mW, WU) at these flows (m3/s, means or samples); without flow through the lungs the resistance is 0. */
export function pathwayLoss(law: PathwayLaw, flows: PathwayFlows): PathwayLoss {
  const drop = (branch: (typeof BRANCHES)[number]) =>
    law.branches[branch].reduce((sum, element) => sum + meanDrop(element, flows[branch]), 0);
  const power = BRANCHES.reduce(
    (sum, branch) =>
      sum + law.branches[branch].reduce((part, element) => part + meanPower(element, flows[branch]), 0),
    0,
  );
  const left = mean(flows.left, (q) => q);
  const right = mean(flows.right, (q) => q);
  const lungs = left + right;
  const vein = { joined: () => drop("ivc"), parted: () => drop("svc"), pumped: () => 0 }[law.course]();
  const share = lungs > 0 ? Math.min(1, Math.max(0, left / lungs)) : 0.5;
  return {
    pressureDrop: toMmHg(vein + share * drop("left") + (1 - share) * drop("right")),
    powerLoss: toMilliwatt(power),
    resistance: lungs > 0 ? toWood(power / lungs ** 2) : 0,
  };
}
