/** The figure around the circulation, standing, from the front with its palms turned forward and its feet a little outwards. Plane of `anatomy.ts`. */
import { type Spot, spots } from "../drawing/curve-drawing.ts";

/** The other side, about the midline x = 500. */
export const mirrored = (points: readonly Spot[]): readonly Spot[] =>
  points.map(([x, y]) => [1000 - x, y] as const);

/** Outline on both sides of the midline from its left half, which starts and ends there. */
const bothSides = (half: readonly Spot[]): readonly Spot[] => [...half, ...mirrored(half).toReversed()];

/** Lengths from the chin, so that the head is a seventh to an eighth of the body (Domljan et al., Appl. Sci. 2024;14:7185). */
export const CHIN = 78;
const HEADED = 1.17;
const headed = (text: string): readonly Spot[] =>
  spots(text).map(([x, y]) => [500 + HEADED * (x - 500), CHIN + HEADED * (y - CHIN)] as const);

const SHOULDER = spots("500 44, 566 40, 567 84, 578 112, 614 134, 690 152, 764 170");
const OUTER_ARM = spots(
  "828 204, 866 262, 882 340, 887 430, 885 520, 896 600, 907 680, 908 760, 902 850, 898 912",
);
/** Thumb outwards, then the four fingers to the little one. */
const HAND: readonly Spot[] = spots(
  "910 940, 926 966, 938 992, 940 1018, 932 1026, 924 1014, 916 992, 913 990, 919 1014, 921 1042, 920 1070, 913 1080, 906 1070, 905 1044, 904 1018, 903 1044, 902 1080, 895 1092, 888 1080, 887 1048, 886 1018, 885 1046, 884 1074, 877 1084, 870 1074, 870 1044, 869 1014, 868 1034, 867 1054, 861 1061, 855 1052, 854 1014, 852 976, 857 944",
);
const INNER_ARM = spots(
  "862 912, 854 820, 846 720, 838 640, 824 580, 820 500, 814 420, 800 350, 792 322, 788 336",
);
const FLANK = spots("787 420, 789 500, 788 600, 778 690, 758 770, 764 850, 788 930, 798 1010, 797 1090");
/** Down its outer side over knee and ankle, and up its inner one; the crotch lies at 0.45 of the height (0.47 when grown: Stratz 1909, from memory). */
const OUTER_LEG = spots(
  "796 1150, 784 1240, 758 1340, 724 1424, 710 1468, 709 1506, 717 1560, 716 1630, 702 1730, 682 1830, 669 1910, 666 1956, 671 1984, 673 2004",
);
const FOOT = spots(
  "682 2032, 708 2064, 734 2088, 745 2104, 738 2115, 722 2117, 700 2120, 676 2122, 650 2124, 628 2124, 612 2116, 606 2098, 604 2066, 600 2030",
);
const INNER_LEG = spots(
  "592 2006, 586 1982, 591 1952, 592 1880, 582 1780, 567 1690, 559 1610, 562 1548, 575 1496, 580 1456, 573 1410, 556 1330, 536 1230, 518 1140, 508 1092, 500 1070",
);

const LEG = [...OUTER_LEG, ...FOOT, ...INNER_LEG];

/** Neck, trunk, arms with hands, and legs. */
export const FIGURE: readonly Spot[] = bothSides([
  ...SHOULDER,
  ...OUTER_ARM,
  ...HAND,
  ...INNER_ARM,
  ...FLANK,
  ...LEG,
]);

/** Without the arms: what lies inside ends at its skin. */
export const TRUNK: readonly Spot[] = bothSides([
  ...SHOULDER,
  ...spots("806 240, 800 300, 788 336"),
  ...FLANK,
  ...LEG,
]);

export const HEAD: readonly Spot[] = bothSides(
  headed("500 -176, 541 -171, 575 -150, 594 -118, 598 -84, 593 -46, 586 -8, 572 30, 547 60, 521 75, 500 78"),
);

/** From where to where it lies before the neck's vessels, thicker from the brow down to the cheeks. */
export const FACE = { top: -72, full: -14, bottom: 80 } as const;

/** 0..1: how much of the face lies before what is at a height of the plane. */
export const faceAt = (y: number): number =>
  y > FACE.bottom ? 0 : Math.min(1, Math.max(0, (y - FACE.top) / (FACE.full - FACE.top)));

const EAR: readonly Spot[] = headed("590 -52, 602 -62, 610 -50, 608 -24, 600 -4, 591 0, 588 -26, 590 -52");
export const EARS: readonly (readonly Spot[])[] = [EAR, mirrored(EAR)];

/** Lines of the face, of collar bones, navel and folds: drawn faintly. */
export const FEATURES: readonly (readonly Spot[])[] = [
  ...[
    // brow, upper and lower lid, the nose's side, collar bone, breast, groin, elbow, kneecap, toes
    headed("518 -50, 536 -56, 556 -50"),
    headed("522 -32, 534 -40, 550 -32"),
    headed("524 -31, 536 -27, 549 -31"),
    headed("508 -34, 506 -10, 514 8, 512 14, 504 15"),
    spots("528 138, 580 150, 660 158, 744 178"),
    spots("776 416, 748 440, 706 446"),
    spots("770 950, 700 1010, 590 1064"),
    spots("856 590, 870 596, 884 592"),
    spots("612 1420, 640 1404, 668 1420, 676 1452, 660 1484, 638 1492, 618 1478"),
    spots("646 2096, 648 2108, 642 2122"),
    spots("672 2092, 676 2104, 670 2120"),
    spots("696 2088, 701 2100, 696 2118"),
    spots("716 2084, 722 2096, 718 2115"),
  ].flatMap((line) => [line, mirrored(line)]),
  headed("472 40, 488 36, 500 39, 512 36, 528 40"),
  headed("480 46, 500 53, 520 46"),
];
