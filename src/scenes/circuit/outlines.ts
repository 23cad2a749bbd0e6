/** Organs of the body without flow of their own: brain, kidneys, spleen, stomach, bowel, and what the one anatomy paints. Plane of `anatomy.ts`. */
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import { diaphragmLine, paintedOutlines } from "./chest-plan.ts";
import { EARS, FIGURE, HEAD, mirrored } from "./figure-shape.ts";

export interface Outline {
  readonly name: string;
  /** points of a smooth line; closed when the last equals the first */
  readonly points: readonly Spot[];
  /** a tube of this width along them */
  readonly width?: number;
}

/** The closed shapes of the body, which meet beneath each other. */
export const FILLED: readonly (readonly Spot[])[] = [FIGURE, ...EARS, HEAD];

/** Organs that the one anatomy paints. */
export const PAINTED: readonly Outline[] = [
  ...paintedOutlines(["rightLung", "leftLung", "liver"]),
  { name: "diaphragm", points: diaphragmLine() },
];

export const LIVER: readonly Spot[] = PAINTED.find(({ name }) => name === "liver")?.points ?? [];

const HEMISPHERE: readonly Spot[] = spots(
  "502 -60, 502 -152, 528 -156, 558 -144, 579 -116, 582 -86, 568 -64, 540 -56, 518 -62, 502 -60",
);
export const BRAIN: readonly Outline[] = [
  { name: "brain", points: mirrored(HEMISPHERE) },
  { name: "brain", points: HEMISPHERE },
];

/** Bean-shaped, upper poles nearer to the spine; the right one lies lower, under the liver. */
const KIDNEY: readonly Spot[] = spots(
  "384 684, 406 700, 411 728, 400 748, 398 764, 409 788, 404 814, 376 830, 347 818, 331 788, 328 752, 335 714, 356 690, 384 684",
);
export const KIDNEYS: readonly Outline[] = [
  { name: "rightKidney", points: KIDNEY },
  { name: "leftKidney", points: mirrored(KIDNEY).map(([x, y]) => [x, y - 16] as const) },
];

export const SPLEEN: Outline = {
  name: "spleen",
  points: spots("730 566, 756 578, 771 610, 770 648, 752 678, 734 686, 722 664, 716 632, 714 600, 730 566"),
};

export const PANCREAS: Outline = {
  name: "pancreas",
  points: spots(
    "470 668, 496 650, 540 656, 600 646, 660 626, 700 616, 708 628, 690 644, 620 668, 556 680, 516 686, 500 716, 476 712, 470 668",
  ),
};

/** Seen through: the splenic vessels run behind it. */
export const STOMACH: Outline = {
  name: "stomach",
  points: spots(
    "572 556, 594 572, 618 560, 650 538, 692 534, 722 562, 724 614, 704 662, 656 696, 596 702, 546 690, 530 674, 544 656, 590 662, 622 646, 626 618, 604 594, 576 580, 572 556",
  ),
};

/** One coil from the duodenum's end to the caecum, behind the great vessels and the mesentery's. */
export const SMALL_BOWEL: Outline = {
  name: "gut",
  width: 26,
  points: spots(
    "548 706, 566 752, 620 786, 690 800, 700 822, 650 836, 580 834, 556 850, 600 866, 690 864, 706 886, 670 900, 590 898, 500 884, 420 866, 352 848, 334 866, 366 886, 440 900, 540 916, 640 932, 696 924, 704 946, 650 962, 560 950, 470 936, 380 914, 338 916, 344 938, 420 958, 440 976, 400 986, 350 966, 312 942",
  ),
};

/** Up on the right, across before the great vessels, down on the left, and through the pelvis. */
export const COLON: Outline = {
  name: "gut",
  width: 40,
  points: spots(
    "330 966, 300 944, 284 890, 282 820, 284 752, 300 716, 324 734, 338 786, 380 832, 450 850, 540 848, 622 818, 668 760, 690 706, 716 696, 732 756, 734 830, 726 910, 704 956, 662 984, 612 986, 568 966, 528 964, 506 992, 500 1060",
  ),
};

export const ORGANS: readonly Outline[] = [...PAINTED, ...BRAIN, ...KIDNEYS, SMALL_BOWEL, COLON];
