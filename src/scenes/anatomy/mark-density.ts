/** How many marks of blood are drawn where what lies behind them is to be seen: of every origin alike, within the plane and beyond it. */
import { smoothStep } from "../../sim/geometry/centreline.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import { GOLDEN, leftOf } from "../drawing/even-spread.ts";
import type { Seen } from "../layers/fade-tracers.ts";

/** Marks for each square millimetre of a 5-year-old's lumen. */
export const DENSE = 0.4;

/** Parts of the usual number. */
interface MarkDensity {
  /** in the vessels beyond the plane */
  readonly beyond: number;
  /** in the plane; a chamber that is deeper than its vessels takes most of them, and an eddy keeps what came into it */
  readonly plane: number;
  /** of the plane's, those that show in such a chamber or in the joint */
  readonly among: number;
}

const DENSITIES = {
  chamber: { beyond: 0.7, plane: 1.26, among: 0.3 },
  patch: { beyond: 0.42, plane: 0.42, among: 1 },
  conduit: { beyond: 1, plane: 0.55, among: 0.5 },
  vessels: { beyond: 1, plane: 1, among: 1 },
} as const satisfies Record<string, MarkDensity>;

export const markDensity = ({ graft, chamber }: ChestFrame): MarkDensity =>
  DENSITIES[chamber ? "chamber" : (graft?.kind ?? "vessels")];

/** Sizes of the oval within which fewer marks show and beyond which all do. */
const [WHOLLY, NOT] = [0.84, 1.06];

/** Which marks show of those `seen`, so that they lie no closer in a chamber or in the joint than elsewhere. */
export function among(frame: ChestFrame, seen: Seen | null): Seen | null {
  const { chamber, junction } = frame;
  const fewer = 1 - markDensity(frame).among;
  const oval: Point | undefined = chamber ?? (junction && [junction.width, junction.width]);
  if (!oval || fewer === 0) return seen;
  const [a, b] = oval;
  return (x, y, mark) => {
    const part = 1 - fewer * (1 - smoothStep(WHOLLY, NOT, Math.hypot(x / a, y / b)));
    return Math.min(seen?.(x, y, mark) ?? 1, leftOf(part, mark * GOLDEN));
  };
}
