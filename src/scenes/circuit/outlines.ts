/** Hairlines that make the schematic a body: trunk, lungs, diaphragm, liver, gut, kidneys. Same plane as `anatomy.ts`; drawn by hand, carrying no flow. */
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import { diaphragmLine, paintedOutlines } from "./chest-plan.ts";

export interface Outline {
  readonly name: string;
  /** points of a smooth line; closed when the last equals the first */
  readonly points: readonly Spot[];
}

/** Mirrored about the midline x = 500. */
const mirrored = (points: readonly Spot[]): readonly Spot[] => points.map(([x, y]) => [1000 - x, y] as const);

const FLANK: readonly Spot[] = spots(
  "438 128, 434 150, 398 170, 300 188, 216 216, 182 276, 180 380, 192 500, 210 600, 216 690, 200 790, 190 880, 206 980, 222 1100",
);

export const BODY: readonly Outline[] = [
  {
    name: "head",
    points: spots("438 130, 424 104, 414 62, 434 16, 500 -4, 566 16, 586 62, 576 104, 562 130"),
  },
  { name: "rightFlank", points: FLANK },
  { name: "leftFlank", points: mirrored(FLANK) },
  { name: "innerThighs", points: spots("478 1100, 488 1040, 500 1012, 512 1040, 522 1100") },
];

/** Organs that the one anatomy paints. */
export const PAINTED: readonly Outline[] = [
  ...paintedOutlines(["rightLung", "leftLung", "liver"]),
  { name: "diaphragm", points: diaphragmLine() },
];

export const ORGANS: readonly Outline[] = [
  ...PAINTED,
  {
    name: "gut",
    points: spots(
      "640 646, 716 650, 754 690, 744 744, 690 766, 620 764, 544 744, 506 712, 530 684, 590 676, 640 646",
    ),
  },
  {
    name: "rightKidney",
    points: spots("346 762, 312 764, 288 788, 286 824, 306 852, 342 856, 358 836, 348 808, 358 784, 346 762"),
  },
  {
    name: "leftKidney",
    points: spots("678 762, 712 764, 736 788, 738 824, 718 852, 682 856, 666 836, 676 808, 666 784, 678 762"),
  },
];
