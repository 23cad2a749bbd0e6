/** Organs of the body without flow of their own: brain, kidneys, spleen, stomach, bowel, and what the one anatomy paints. Plane of `anatomy.ts`. */
import { entryAt } from "../../sim/checked/present.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import { EARS, FIGURE, HEAD, mirrored } from "./figure-shape.ts";
import { diaphragmLine, paintedOutlines } from "./painted-outlines.ts";

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
  "502 -66, 502 -196, 530 -203, 564 -190, 588 -160, 600 -118, 598 -84, 590 -54, 573 -38, 555 -42, 546 -62, 524 -70, 502 -66",
);
export const BRAIN: readonly Outline[] = [
  { name: "brain", points: mirrored(HEMISPHERE) },
  { name: "brain", points: HEMISPHERE },
];

/** Bean-shaped, upper poles nearer to the spine; the right one lies lower, under the liver. From T12 to L3, as the aorta's branches lie. */
const KIDNEY: readonly Spot[] = spots(
  "384 654, 406 670, 411 698, 400 718, 398 734, 409 758, 404 784, 376 800, 347 788, 331 758, 328 722, 335 684, 356 660, 384 654",
);
/** Plane units by which the left one lies higher. */
export const LEFT_HIGHER = 16;
export const KIDNEYS: readonly Outline[] = [
  { name: "rightKidney", points: KIDNEY },
  { name: "leftKidney", points: mirrored(KIDNEY).map(([x, y]) => [x, y - LEFT_HIGHER] as const) },
];
/** The right one's outer border, from the upper pole to the lower. */
export const KIDNEY_ARC: readonly Spot[] = [0, 12, 11, 10, 9, 8, 7].map((i) => entryAt(KIDNEY, i));

export const SPLEEN: Outline = {
  name: "spleen",
  points: spots("730 566, 756 578, 771 610, 770 648, 752 678, 734 686, 722 664, 716 632, 714 600, 730 566"),
};

/** Its head fills the duodenum's bend. */
export const PANCREAS: Outline = {
  name: "pancreas",
  points: spots(
    "452 690, 480 664, 510 656, 560 654, 620 642, 680 618, 706 616, 712 630, 690 648, 630 670, 566 684, 524 692, 506 716, 484 734, 456 730, 440 708, 452 690",
  ),
};

/** From the pylorus around the pancreas' head, across before the great vessels, and up to the jejunum. */
export const DUODENUM: Outline = {
  name: "gut",
  width: 25,
  points: spots("452 676, 436 671, 424 692, 422 740, 436 784, 478 802, 534 798, 572 782, 584 750"),
};

/** Muscles of the left leg from the front, as they lie one over another (common anatomy, from memory). */
const LEG_MUSCLES: readonly Outline[] = [
  // adductors, vastus lateralis, rectus femoris, vastus medialis
  "508 1078, 536 1076, 580 1100, 616 1160, 624 1240, 608 1330, 586 1388, 566 1350, 544 1270, 524 1180, 514 1120, 508 1078",
  "748 1056, 782 1106, 788 1170, 776 1260, 749 1350, 718 1416, 692 1442, 682 1412, 702 1320, 722 1220, 734 1130, 748 1056",
  "698 1016, 726 1066, 742 1150, 738 1230, 712 1330, 680 1398, 654 1414, 636 1388, 640 1320, 650 1220, 666 1110, 682 1046, 698 1016",
  "630 1236, 650 1290, 650 1370, 638 1424, 612 1454, 590 1442, 580 1400, 590 1340, 606 1280, 630 1236",
  // calf's two heads beside the shin, and the muscles before its bones
  "592 1508, 614 1532, 618 1620, 612 1710, 596 1774, 580 1734, 566 1664, 563 1600, 573 1546, 592 1508",
  "698 1514, 712 1560, 713 1640, 700 1726, 682 1800, 672 1750, 684 1660, 688 1580, 698 1514",
  "656 1506, 682 1536, 688 1620, 678 1720, 662 1820, 648 1900, 640 1880, 642 1790, 644 1690, 642 1600, 640 1540, 656 1506",
].map((way) => ({ name: "muscle", points: spots(way) }));
/** From the front of the hip across the thigh to the inner side of the knee. */
const SARTORIUS: Outline = {
  name: "muscle",
  width: 22,
  points: spots("766 1012, 744 1066, 700 1136, 652 1214, 610 1310, 584 1400, 580 1460, 592 1506"),
};
const SHIN: Outline = {
  name: "shin",
  points: spots(
    "624 1504, 642 1520, 640 1580, 634 1680, 624 1800, 616 1900, 612 1960, 602 1956, 604 1880, 610 1760, 610 1640, 612 1560, 608 1516, 624 1504",
  ),
};
const onBothLegs = (each: Outline): readonly Outline[] => [{ ...each, points: mirrored(each.points) }, each];
export const MUSCLES: readonly Outline[] = [...LEG_MUSCLES, SARTORIUS].flatMap(onBothLegs);
export const SHINS: readonly Outline[] = onBothLegs(SHIN);

/** From the throat behind heart and aorta's arch to the stomach, left of the midline at the diaphragm. */
export const OESOPHAGUS: Outline = {
  name: "oesophagus",
  width: 19,
  points: spots("500 60, 503 170, 506 280, 512 380, 522 450, 536 500, 556 538, 584 562"),
};

/** Fundus under the left dome, pylorus right of the midline. */
export const STOMACH: Outline = {
  name: "stomach",
  points: spots(
    "572 556, 596 566, 616 550, 646 532, 686 530, 714 552, 724 596, 714 644, 684 686, 634 708, 576 712, 520 704, 480 692, 460 686, 449 683, 447 668, 460 665, 484 664, 530 672, 578 666, 612 646, 622 618, 610 594, 584 578, 572 556",
  ),
};

/** Where the small bowel's capillaries are drawn, from the duodenum's end to the ileum's. */
const BOWEL_LOOPS = [
  "606 790, 650 784, 690 800, 694 822, 650 832, 612 828",
  "606 856, 650 860, 696 866, 700 888, 660 900, 614 892",
  "598 916, 634 934, 674 940, 676 962, 632 972, 590 952",
  "562 944, 560 976, 544 998, 526 996, 516 970, 512 946",
  "486 948, 482 982, 464 1002, 444 994, 434 966, 428 944",
  "402 948, 400 982, 382 1002, 360 990, 352 964, 346 940",
] as const;

/** From the jejunum's beginning in loops at the mesentery's edge to the caecum, behind the great vessels and the mesentery's; further coils lie behind. */
export const SMALL_BOWEL: readonly Outline[] = [
  {
    name: "gut",
    width: 26,
    points: spots(
      "700 812, 640 806, 560 830, 600 872, 690 842, 700 912, 610 908, 520 880, 420 896, 330 868, 318 832, 360 858, 440 872, 520 900, 560 930, 480 930, 380 896, 330 904, 340 930, 420 940, 500 962, 580 960, 660 944, 690 930, 640 998, 560 1006, 470 976, 400 968, 340 962",
    ),
  },
  {
    name: "gut",
    width: 27,
    points: spots(
      [
        "584 750, 588 774",
        BOWEL_LOOPS[0],
        "598 842",
        BOWEL_LOOPS[1],
        "596 902",
        BOWEL_LOOPS[2],
        "572 936",
        BOWEL_LOOPS[3],
        "500 936",
        BOWEL_LOOPS[4],
        "414 938",
        BOWEL_LOOPS[5],
        "330 924, 304 914",
      ].join(", "),
    ),
  },
];

/** The caecum with its vermiform appendix below the small bowel's end; up on the right, across before the great vessels, down on the left, and through the pelvis. */
export const COLON: Outline = {
  name: "gut",
  width: 38,
  points: spots(
    "296 966, 284 940, 276 890, 272 820, 272 750, 282 708, 300 704, 312 734, 318 780, 346 822, 402 848, 470 856, 540 850, 608 828, 656 790, 688 740, 706 704, 724 696, 736 724, 742 790, 740 860, 732 916, 710 966, 668 1000, 620 1000, 576 976, 540 976, 516 1000, 504 1060",
  ),
};
export const APPENDIX: Outline = {
  name: "gut",
  width: 10,
  points: spots("302 962, 322 972, 336 992, 334 1014, 346 1026"),
};

/** Under the liver's edge, beside the duodenum. */
export const GALLBLADDER: Outline = {
  name: "gallbladder",
  points: spots("396 640, 406 648, 402 666, 388 684, 374 686, 369 674, 378 654, 396 640"),
};

export const ORGANS: readonly Outline[] = [...PAINTED, ...BRAIN, ...KIDNEYS, DUODENUM, ...SMALL_BOWEL, COLON];
