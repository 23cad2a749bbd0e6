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
/** Where each lies: the right one lower by half a vertebra, of which a kidney's height is some three (common anatomy, from memory). */
export const KIDNEY_AT: Readonly<Record<"right" | "left", (spot: Spot) => Spot>> = {
  right: ([x, y]) => [x, y + 8],
  left: ([x, y]) => [1000 - x, y - 20],
};
export const KIDNEYS: readonly Outline[] = [
  { name: "rightKidney", points: KIDNEY.map(KIDNEY_AT.right) },
  { name: "leftKidney", points: KIDNEY.map(KIDNEY_AT.left) },
];
/** The outer border, from the upper pole to the lower. */
export const KIDNEY_ARC: readonly Spot[] = [0, 12, 11, 10, 9, 8, 7].map((i) => entryAt(KIDNEY, i));

export const SPLEEN: Outline = {
  name: "spleen",
  points: spots("730 566, 756 578, 771 610, 770 648, 752 678, 734 686, 722 664, 716 632, 714 600, 730 566"),
};

/** Its head fills the duodenum's bend. */
export const PANCREAS: Outline = {
  name: "pancreas",
  points: spots(
    "448 704, 472 678, 506 662, 558 660, 616 648, 672 628, 704 616, 714 630, 696 656, 644 684, 574 706, 536 712, 520 734, 496 762, 464 770, 442 748, 438 722, 448 704",
  ),
};

/** From the pylorus around the pancreas' head, across before the great vessels, and up to the jejunum. */
export const DUODENUM: Outline = {
  name: "gut",
  width: 25,
  points: spots("452 676, 436 671, 424 692, 422 740, 436 784, 478 802, 534 798, 572 782, 584 750"),
};

/** From the throat behind heart and aorta's arch to the stomach, left of the midline at the diaphragm. */
export const OESOPHAGUS: Outline = {
  name: "oesophagus",
  width: 19,
  points: spots("500 60, 503 170, 506 280, 512 380, 522 450, 536 500, 556 538, 584 562"),
};

/** Fundus beneath the left dome, pylorus right of the midline. */
export const STOMACH: Outline = {
  name: "stomach",
  points: spots(
    "572 554, 594 558, 606 566, 626 562, 650 549, 682 535, 708 537, 723 560, 727 598, 713 638, 684 668, 634 686, 576 692, 520 690, 480 687, 460 684, 449 681, 447 666, 460 662, 484 658, 530 660, 576 652, 606 636, 616 614, 606 594, 584 578, 572 554",
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
  width: 8,
  points: spots("304 958, 320 972, 334 984, 346 980"),
};

/** Behind the pubic bone, before the rectum; and from each kidney's hilum down to it. */
export const BLADDER: Outline = {
  name: "bladder",
  points: spots(
    "500 990, 516 995, 534 1008, 545 1026, 540 1042, 520 1052, 500 1055, 480 1052, 460 1042, 455 1026, 466 1008, 484 995, 500 990",
  ),
};
export const URETERS: readonly Outline[] = [
  "404 748, 424 790, 436 850, 432 920, 438 980, 458 1026",
  "596 720, 578 780, 564 850, 568 920, 562 980, 542 1026",
].map((way) => ({ name: "ureter", width: 6, points: spots(way) }));

/** Under the liver's edge, beside the duodenum. */
export const GALLBLADDER: Outline = {
  name: "gallbladder",
  points: spots("396 640, 406 648, 402 666, 388 684, 374 686, 369 674, 378 654, 396 640"),
};

export const ORGANS: readonly Outline[] = [...PAINTED, ...BRAIN, ...KIDNEYS, DUODENUM, ...SMALL_BOWEL, COLON];
