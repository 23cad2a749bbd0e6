/** Hairlines that make the schematic a body: trunk, lungs, diaphragm, liver, gut, kidneys. Same plane as `anatomy.ts`; drawn by hand, carrying no flow. */
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import { diaphragmLine, paintedOutlines } from "./chest-plan.ts";

export interface Outline {
  readonly name: string;
  /** points of a smooth line; closed when the last equals the first */
  readonly points: readonly Spot[];
  /** a tube of this width along them */
  readonly width?: number;
}

/** Mirrored about the midline x = 500. */
const mirrored = (points: readonly Spot[]): readonly Spot[] => points.map(([x, y]) => [1000 - x, y] as const);

const FLANK: readonly Spot[] = spots(
  "214 330, 210 420, 212 500, 218 600, 220 690, 208 790, 200 880, 210 980, 224 1100",
);

/** From the neck over the shoulder down to the hand, and up to the armpit. */
const ARM: readonly Spot[] = spots(
  "438 128, 434 150, 396 157, 300 180, 222 212, 182 264, 166 350, 158 460, 148 560, 140 670, 130 730, 134 776, 150 800, 166 782, 172 730, 178 670, 190 560, 202 450, 214 330",
);

const HEAD: readonly Spot[] = spots(
  "438 130, 424 104, 414 62, 434 16, 500 -4, 566 16, 586 62, 576 104, 562 130, 560 150, 440 150, 438 130",
);

/** Half of the trunk with its leg, down from the neck. */
const HALF: readonly Spot[] = [
  ...spots("500 130, 438 130, 434 150, 396 157, 300 180, 222 212"),
  ...FLANK,
  ...spots("240 1112, 460 1112, 478 1100, 488 1040, 500 1012"),
];

/** From the neck to the thighs. */
export const TRUNK: readonly Spot[] = [...HALF, ...mirrored(HALF).toReversed()];

/** The closed shapes of the body, which meet beneath each other. */
export const FILLED: readonly (readonly Spot[])[] = [HEAD, ARM, mirrored(ARM), TRUNK];

/** Organs that the one anatomy paints. */
export const PAINTED: readonly Outline[] = [
  ...paintedOutlines(["rightLung", "leftLung", "liver"]),
  { name: "diaphragm", points: diaphragmLine() },
];

export const ORGANS: readonly Outline[] = [
  ...PAINTED,
  {
    name: "brain",
    points: spots(
      "452 96, 438 74, 444 40, 468 20, 500 14, 532 20, 556 40, 562 74, 548 96, 520 104, 480 104, 452 96",
    ),
  },
  // The colon's frame, and coils of small bowel within it.
  {
    name: "gut",
    width: 30,
    points: spots(
      "372 896, 356 846, 362 790, 420 780, 520 792, 620 776, 716 762, 734 790, 730 850, 716 914, 650 944, 560 968, 500 990",
    ),
  },
  {
    name: "gut",
    width: 22,
    points: spots(
      "690 800, 640 812, 560 818, 470 814, 414 824, 412 850, 460 852, 560 854, 660 846, 690 864, 650 884, 560 888, 460 884, 416 892, 410 914, 440 924",
    ),
  },
  {
    name: "rightKidney",
    points: spots("346 696, 312 698, 288 722, 286 758, 306 786, 342 790, 358 770, 348 742, 358 718, 346 696"),
  },
  {
    name: "leftKidney",
    points: spots("678 664, 712 666, 736 690, 738 726, 718 754, 682 758, 666 738, 676 718, 666 686, 678 664"),
  },
];
