/** Vessels of head, arms and legs, on both sides. The model has one stream for the upper body and one for the legs: shares are parts of it as drawn. */
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import { mirrored } from "./figure-shape.ts";
import { type Blood, net, type Vessel, vessel } from "./vessel.ts";

/** A left one, and before it its mirror image on the body's right. */
const twice = (left: Vessel): readonly [right: Vessel, left: Vessel] => [
  {
    ...left,
    name: left.name.replace("left", "right").replace("Left", "Right"),
    points: mirrored(left.points),
    ...(left.between ? { between: [mirrored(left.between[0]), mirrored(left.between[1])] as const } : {}),
  },
  left,
];
const pair = (...of: Parameters<typeof vessel>) => twice(vessel(...of));
const netPair = (
  name: string,
  [flow, becomes]: readonly [flow: string, becomes: Blood],
  ...rest: readonly [share: number, from: string, to: string]
) => twice(net(name, flow, ["arterial", becomes], ...rest));

/** Parts of the upper body's stream for each half of the head and each arm. */
const HEAD = 0.3;
const ARM = 0.2;

const [, leftArm] = pair(
  "upperLimbArteryLeft",
  ["upper", "arterial"],
  10,
  "563 245, 574 216, 602 188, 644 176, 690 176, 736 191, 778 232, 808 290, 828 356, 840 430, 848 510, 855 590, 864 690, 869 800, 868 918, 865 962, 870 990, 886 1002, 904 996",
  { share: ARM, joins: "arch", tapers: "end", opens: "start" },
);
/** From the bifurcation of the brachiocephalic artery over the lung's apex. */
const rightArm = {
  ...leftArm,
  name: "upperLimbArteryRight",
  points: [[492, 174], [470, 152], [432, 146], [388, 154], ...mirrored(leftArm.points).slice(4)],
} as const;

/** Of the brain's surface, half of which each branch of the fissure's artery feeds, and the veins between them. */
const BRAIN_ARTERIES = [
  "588 -84, 570 -96, 546 -98, 526 -92",
  "590 -92, 578 -124, 552 -142, 526 -142",
  "590 -90, 592 -122, 578 -158, 548 -182",
];
const BRAIN_VEINS = [
  "560 -116, 536 -120, 514 -112, 500 -100",
  "566 -164, 544 -178, 520 -184, 500 -186",
  "556 -76, 536 -78, 514 -74, 500 -66",
];
const twigs = (
  name: string,
  flow: readonly [string, Blood],
  ways: readonly string[],
  more: Partial<Vessel>,
) => ways.flatMap((way, i) => pair(`${name}${i + 1}`, flow, 5, way, { share: HEAD / ways.length, ...more }));

/** From the palm's arch to the tip of each finger, the thumb first. */
const FINGERS = [
  "904 996, 918 1003, 931 1014",
  "902 997, 911 1042, 913 1070",
  "890 1002, 893 1050, 894 1082",
  "878 998, 876 1044, 876 1074",
  "869 988, 862 1024, 860 1052",
];
const fingers = (name: string, blood: Blood, side: number, more: Partial<Vessel>) =>
  FINGERS.flatMap((way, i) =>
    twice({
      name: `${name}${i + 1}`,
      flow: "upper",
      blood,
      width: 3.6,
      points: spots(way).map(([x, y], k): Spot => [x + side * (k === 0 ? 0 : 3.4), y]),
      share: ARM / FINGERS.length,
      tapers: "end",
      ...more,
    }),
  );

/** Behind the veins at the root of the neck. */
export const NECK_ARTERIES: readonly Vessel[] = [
  leftArm,
  rightArm,
  ...fingers("leftFingerArtery", "arterial", -1, { joins: "arch" }),
  vessel(
    "leftCarotid",
    ["upper", "arterial"],
    11,
    "544 242, 546 206, 542 156, 532 110, 531 70, 533 28, 536 -20, 548 -56",
    {
      share: HEAD,
      joins: "arch",
    },
  ),
  vessel(
    "rightCarotid",
    ["upper", "arterial"],
    11,
    "490 170, 478 140, 468 110, 469 70, 467 28, 464 -20, 452 -56",
    {
      share: HEAD,
      joins: "arch",
    },
  ),
  // Up in the fissure between the brain's lobes.
  ...pair("leftHeadArtery", ["upper", "arterial"], 8, "547 -54, 564 -56, 582 -66, 590 -94", {
    share: HEAD,
    joins: "arch",
  }),
  ...twigs("leftHeadArtery", ["upper", "arterial"], BRAIN_ARTERIES, { joins: "arch", tapers: "end" }),
];

const upperVein = { joins: "upperVeins" } as const;

export const UPPER_VEINS: readonly Vessel[] = [
  ...fingers("leftFingerVein", "svc", 1, upperVein).map(
    (each): Vessel => ({ ...each, points: each.points.toReversed(), tapers: "start" }),
  ),
  ...pair(
    "upperLimbVeinLeft",
    ["upper", "svc"],
    10,
    "874 1014, 892 1014, 904 984, 897 950, 892 918, 888 850, 888 760, 884 690, 872 632, 850 574, 833 510, 824 430, 811 356, 792 296, 766 246, 732 208, 684 194, 632 180, 592 160, 562 148",
    { share: ARM, tapers: "start", ...upperVein },
  ),
  ...twigs("leftHeadVein", ["upper", "svc"], BRAIN_VEINS, {
    behind: true,
    tapers: "start",
    joins: "sinuses",
  }),
  // Between the brain's halves, round its back, and out at the skull's base.
  vessel("headSinus", ["upper", "svc"], 10, "500 -196, 500 -150, 500 -100, 500 -62", {
    share: 2 * HEAD,
    behind: true,
    joins: "sinuses",
  }),
  ...pair("leftHeadSinus", ["upper", "svc"], 10, "500 -66, 512 -50, 540 -40, 568 -34, 577 -12", {
    share: HEAD,
    behind: true,
    joins: "sinuses",
  }),
  ...pair("leftJugular", ["upper", "svc"], 13, "577 -18, 568 10, 555 40, 551 72, 556 110, 562 150", {
    share: HEAD,
    ...upperVein,
  }),
  vessel("leftBrachiocephalicVein", ["upper", "svc"], 20, "562 146, 545 164, 510 182, 470 204", {
    share: 0.5,
    ...upperVein,
  }),
  vessel("rightBrachiocephalicVein", ["upper", "svc"], 20, "438 146, 444 160, 458 178, 468 204", {
    share: 0.5,
    ...upperVein,
  }),
  vessel("upperCava", ["svc", "svc"], 28, "468 196, 468 248", { ...upperVein, opens: "end" }),
];

/** Beds of the two halves of the brain and of the hands. */
export const UPPER_BEDS: readonly Vessel[] = [
  ...netPair(
    "leftHeadBed",
    ["upper", "svc"],
    HEAD,
    "580 -64, 590 -92, 588 -128, 570 -166, 540 -188",
    "504 -72, 504 -100, 504 -130, 504 -160, 504 -190",
  ),
  ...netPair(
    "leftHandBed",
    ["upper", "svc"],
    ARM,
    "865 962, 867 980, 874 995, 886 1001",
    "896 950, 901 970, 899 998, 890 1014",
  ),
];

/** Of each leg's stream, what muscles of thigh and calf and the foot take. */
const [THIGH, CALF, FOOT] = [0.22, 0.18, 0.1];

/** The right artery crosses before the left vein. */
const legArtery = { joins: "legArteries" } as const;
export const LEG_ARTERIES: readonly Vessel[] = [
  vessel("aorticFork", ["legs", "arterial"], 24, "527 840, 526 868", legArtery),
  vessel("rightLegArtery", ["legs", "arterial"], 15, "526 858, 512 890, 470 930, 406 986, 366 1050", {
    ...legArtery,
    share: 0.5,
  }),
  vessel("leftLegArtery", ["legs", "arterial"], 15, "526 858, 540 890, 572 930, 616 986, 634 1050", {
    ...legArtery,
    share: 0.5,
  }),
  ...pair(
    "leftThighArtery",
    ["legs", "arterial"],
    11,
    "634 1050, 650 1078, 690 1110, 722 1170, 732 1250, 718 1330",
    {
      tapers: "end",
      ...legArtery,
      share: THIGH,
    },
  ),
  // Through the thigh to the hollow of the knee.
  ...pair(
    "leftLegFemoralArtery",
    ["legs", "arterial"],
    14,
    "634 1050, 646 1130, 648 1220, 640 1320, 630 1400, 632 1460, 634 1510",
    {
      ...legArtery,
      share: CALF + FOOT,
    },
  ),
  ...pair(
    "leftLegTibialArtery",
    ["legs", "arterial"],
    10,
    "634 1502, 628 1540, 621 1620, 619 1720, 620 1820, 622 1910, 622 1980, 630 2048",
    {
      tapers: "end",
      ...legArtery,
      share: CALF + FOOT / 2,
    },
  ),
  ...pair(
    "leftLegFrontArtery",
    ["legs", "arterial"],
    8,
    "630 1530, 642 1548, 656 1600, 660 1700, 652 1830, 644 1930, 646 2000, 654 2050",
    {
      tapers: "end",
      ...legArtery,
      share: FOOT / 2,
    },
  ),
];

const legVein = { joins: "belowLiver", under: true } as const;
export const LEG_VEINS: readonly Vessel[] = [
  vessel("rightLegVein", ["legs", "legs"], 18, "396 1064, 402 1040, 424 996, 454 950, 470 904", {
    ...legVein,
    share: 0.5,
  }),
  vessel("leftLegVein", ["legs", "legs"], 18, "604 1064, 602 1040, 586 996, 546 954, 500 930, 470 896", {
    ...legVein,
    share: 0.5,
  }),
  ...pair(
    "leftLegFemoralVein",
    ["legs", "legs"],
    18,
    "604 1508, 608 1460, 610 1400, 614 1320, 617 1220, 613 1130, 604 1052",
    {
      ...legVein,
      share: CALF + FOOT,
    },
  ),
  ...pair("leftThighVein", ["legs", "legs"], 12, "690 1346, 685 1260, 674 1180, 644 1130, 611 1110", {
    tapers: "start",
    ...legVein,
    share: THIGH,
  }),
  ...pair(
    "leftLegTibialVein",
    ["legs", "legs"],
    12,
    "617 2076, 610 2040, 604 1985, 604 1910, 601 1820, 590 1720, 582 1630, 590 1560, 606 1500",
    {
      tapers: "start",
      ...legVein,
      share: CALF + FOOT,
    },
  ),
];

export const LEG_BEDS: readonly Vessel[] = [
  ...netPair(
    "leftThighBed",
    ["legs", "legs"],
    THIGH,
    "706 1134, 724 1180, 732 1250, 718 1330",
    "664 1150, 676 1190, 686 1260, 690 1338",
  ),
  ...netPair(
    "leftLegCalfBed",
    ["legs", "legs"],
    CALF,
    "626 1566, 621 1620, 619 1690, 620 1760",
    "588 1566, 582 1630, 587 1690, 595 1760",
  ),
  ...netPair(
    "leftLegFootBed",
    ["legs", "legs"],
    FOOT,
    "630 2038, 642 2044, 656 2050, 688 2070",
    "616 2078, 634 2094, 664 2100, 700 2098",
  ),
];
