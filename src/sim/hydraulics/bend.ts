import { entryAt } from "../checked/present.ts";
import { type Element, type Fluid, quadraticLoss } from "./element.ts";

/** Loss of a quarter turn against its axis' radius over diameter: mitred at 0.5 (middle of 1.1-1.3), then Miller's and Crane's bands. */
const QUARTER_TURN: readonly (readonly [number, number])[] = [
  [0.5, 1.2],
  [1, 0.4],
  [1.5, 0.2],
  [4, 0.2],
];

/** Loss coefficient (dimensionless, on the mean velocity's head) of a quarter turn; straight in the logarithm between the tabulated radii, flat beyond them. */
export function quarterTurn(radiusOverDiameter: number): number {
  if (radiusOverDiameter <= 0.5) return 1.2;
  for (let i = 1; i < QUARTER_TURN.length; i++) {
    const [low, lossLow] = entryAt(QUARTER_TURN, i - 1);
    const [high, lossHigh] = entryAt(QUARTER_TURN, i);
    if (radiusOverDiameter <= high) {
      return lossLow * (lossHigh / lossLow) ** ((radiusOverDiameter - low) / (high - low));
    }
  }
  return 0.2;
}

/**
 * Quarter turn in a tube of this diameter (m) whose inner corner is rounded to radius `flare` (m).
 * @param part of the handbook's loss: its tables are of turbulent flow in long legs
 */
export function bend(diameter: number, flare: number, fluid: Fluid, part: number): Element {
  return {
    a: 0,
    b: quadraticLoss(part * quarterTurn(0.5 + flare / diameter), diameter, fluid),
    inertance: 0,
    source: "quarter bend, mitred to rounded (Miller; Crane), times a part fitted to the 3D set",
    validReynolds: [1e4, Number.POSITIVE_INFINITY],
  };
}
