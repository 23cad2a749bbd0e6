/** How many marks of blood are drawn where an atrium's inside is to be seen behind them: of every origin alike, within the plane and beyond it. */
import type { ChestFrame } from "../../sim/geometry/geometry.ts";

/** Marks for each square millimetre of a 5-year-old's lumen. */
export const DENSE = 0.4;

/** Parts of the usual number. */
interface MarkDensity {
  /** in the vessels beyond the plane */
  readonly beyond: number;
  /** in the plane; a chamber that is deeper than its vessels takes most of them */
  readonly plane: number;
  /** of the plane's, those that show in such a chamber */
  readonly among: number;
}

const DENSITIES = {
  chamber: { beyond: 0.7, plane: 1.26, among: 0.3 },
  patch: { beyond: 0.42, plane: 0.42, among: 1 },
  conduit: { beyond: 1, plane: 0.7, among: 1 },
  vessels: { beyond: 1, plane: 1, among: 1 },
} as const satisfies Record<string, MarkDensity>;

export const markDensity = ({ graft, chamber }: ChestFrame): MarkDensity =>
  DENSITIES[chamber ? "chamber" : (graft?.kind ?? "vessels")];
