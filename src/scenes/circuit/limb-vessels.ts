/** Vessels of head, arms and legs, on both sides. The model has one stream for the upper body and one for the legs: shares are parts of it as drawn. */
import { mirrored } from "./figure-shape.ts";
import { type Vessel, vessel } from "./vessel.ts";

/** The left one by its name, and before it its mirror image on the body's right. */
function pair(name: string, ...rest: Rest): readonly [right: Vessel, left: Vessel] {
  const left = vessel(name, ...rest);
  const other = name.replace("left", "right").replace("Left", "Right");
  return [{ ...left, name: other, points: mirrored(left.points) }, left];
}
type Rest = Parameters<typeof vessel> extends readonly [string, ...infer Others] ? Others : never;

/** Parts of the upper body's stream for each half of the head and each arm. */
const HEAD = 0.3;
const ARM = 0.2;

const [, leftArm] = pair(
  "upperLimbArteryLeft",
  ["upper", "arterial"],
  10,
  "584 227, 592 206, 612 186, 644 178, 690 180, 734 198, 776 242, 808 304, 832 390, 843 480, 850 580, 864 690, 869 800, 871 918",
  { share: ARM, joins: "arch" },
);
/** From the bifurcation of the brachiocephalic artery over the lung's apex. */
const rightArm = {
  ...leftArm,
  name: "upperLimbArteryRight",
  points: [[492, 174], [470, 152], [432, 146], [388, 154], ...mirrored(leftArm.points).slice(4)],
} as const;

/** Behind the veins at the root of the neck. */
export const NECK_ARTERIES: readonly Vessel[] = [
  leftArm,
  rightArm,
  vessel(
    "leftCarotid",
    ["upper", "arterial"],
    11,
    "555 225, 555 200, 546 156, 532 110, 531 70, 535 28, 541 -8, 559 -52",
    {
      share: HEAD,
      joins: "arch",
    },
  ),
  vessel(
    "rightCarotid",
    ["upper", "arterial"],
    11,
    "490 170, 478 140, 468 110, 469 70, 465 28, 459 -8, 441 -52",
    {
      share: HEAD,
      joins: "arch",
    },
  ),
];

const upperVein = { joins: "upperVeins" } as const;

export const UPPER_VEINS: readonly Vessel[] = [
  ...pair(
    "upperLimbVeinLeft",
    ["upper", "svc"],
    10,
    "888 922, 888 850, 888 760, 884 670, 870 590, 864 500, 860 410, 850 320, 824 252, 784 214, 736 196, 684 196, 632 180, 592 160, 562 148",
    { share: ARM, ...upperVein },
  ),
  ...pair("leftJugular", ["upper", "svc"], 13, "577 -54, 564 -10, 552 28, 551 66, 556 110, 562 150", {
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
  vessel("upperCava", ["svc", "svc"], 28, "468 196, 468 240", { ...upperVein, runsOn: true }),
];

/** Beds of the two halves of the brain and of the hands. */
export const UPPER_BEDS: readonly Vessel[] = [
  ...pair(
    "leftHeadBed",
    ["upper", "arterial"],
    38,
    "559 -50, 538 -72, 516 -100, 530 -136, 562 -132, 580 -96, 577 -52",
    {
      share: HEAD,
      becomes: "svc",
      bed: true,
    },
  ),
  ...pair(
    "leftHandBed",
    ["upper", "arterial"],
    22,
    "871 916, 866 950, 868 984, 879 1000, 892 986, 894 952, 888 920",
    {
      share: ARM,
      becomes: "svc",
      bed: true,
    },
  ),
];

/** Of each leg's stream, what a thigh's muscle takes; the rest goes on down. */
const THIGH = 0.2;

/** They go on beyond the thighs, in whose muscle a branch ends. The right artery crosses before the left vein. */
const legArtery = { joins: "legArteries", share: 0.5 } as const;
export const LEG_ARTERIES: readonly Vessel[] = [
  vessel("aorticFork", ["legs", "arterial"], 24, "527 840, 526 868", { joins: "legArteries" }),
  vessel(
    "rightLegArtery",
    ["legs", "arterial"],
    16,
    "526 858, 512 890, 470 930, 406 986, 370 1050, 354 1140, 352 1238",
    { ...legArtery, fades: "end" },
  ),
  vessel(
    "leftLegArtery",
    ["legs", "arterial"],
    16,
    "526 858, 540 890, 572 930, 616 986, 634 1050, 646 1140, 648 1238",
    { ...legArtery, fades: "end" },
  ),
  ...pair("leftThighArtery", ["legs", "arterial"], 10, "634 1050, 648 1068, 666 1078", {
    ...legArtery,
    share: THIGH,
  }),
];

const legVein = { joins: "belowLiver", under: true, share: 0.5 } as const;
export const LEG_VEINS: readonly Vessel[] = [
  vessel("rightLegVein", ["legs", "ivc"], 20, "384 1238, 388 1140, 400 1050, 424 996, 454 950, 470 904", {
    ...legVein,
    fades: "start",
  }),
  vessel(
    "leftLegVein",
    ["legs", "ivc"],
    20,
    "616 1238, 612 1140, 604 1050, 586 996, 546 954, 500 930, 470 896",
    { ...legVein, fades: "start" },
  ),
  ...pair("leftThighVein", ["legs", "ivc"], 12, "664 1186, 636 1180, 611 1160", { ...legVein, share: THIGH }),
];

export const LEG_BEDS: readonly Vessel[] = pair(
  "leftThighBed",
  ["legs", "arterial"],
  32,
  "666 1078, 690 1090, 705 1118, 705 1150, 690 1175, 664 1186",
  { share: THIGH, becomes: "ivc", bed: true },
);
