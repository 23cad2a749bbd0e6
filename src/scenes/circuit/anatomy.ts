/**
 * The schematic of the whole circulation, as a table: what joins what in each stage, and where it lies.
 * A plane of our own, 1000 wide and 1100 high, y down, seen from the front: the body's right is on the left.
 */

import type { Stage } from "../../sim/parameters/request.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import { chestVessels, TRUNKS } from "./chest-plan.ts";
import { closeVessels } from "./two-ventricles/close-courses.ts";
import { twoVentricleVessels } from "./two-ventricles/courses.ts";
import { type Blood, type Vessel, vessel } from "./vessel.ts";

const ARTERIES: readonly Vessel[] = [
  vessel("liverArtery", ["splanchnic", "arterial"], 10, "594 584, 560 590, 500 600, 432 602", { share: 0.2 }),
  vessel("gutArtery", ["splanchnic", "arterial"], 14, "599 640, 640 680, 672 730, 676 776", { share: 0.4 }),
  vessel("rightKidneyArtery", ["splanchnic", "arterial"], 11, "597 702, 520 704, 400 716, 352 722", {
    share: 0.2,
    behind: true,
  }),
  vessel("leftKidneyArtery", ["splanchnic", "arterial"], 11, "597 702, 640 700, 672 698", { share: 0.2 }),
  vessel("rightLegArtery", ["legs", "arterial"], 16, "596 874, 560 910, 450 948, 366 1000, 348 1076", {
    share: 0.5,
  }),
  vessel("leftLegArtery", ["legs", "arterial"], 16, "596 874, 626 920, 670 1000, 678 1076", { share: 0.5 }),
];

const BEDS: readonly Vessel[] = [
  vessel("upperBed", ["upper", "arterial"], 46, "548 98, 534 56, 504 44, 476 56, 462 98", {
    becomes: "svc",
    bed: true,
  }),
  vessel("liverBed", ["splanchnic", "arterial"], 58, "428 604, 360 606, 300 596, 290 566, 340 552, 404 552", {
    share: 0.6,
    becomes: "ivc",
    bed: true,
  }),
  vessel("gutBed", ["splanchnic", "arterial"], 52, "676 776, 716 802, 690 838, 628 832, 570 812, 530 800", {
    share: 0.4,
    becomes: "ivc",
    bed: true,
  }),
  vessel("rightKidneyBed", ["splanchnic", "arterial"], 26, "354 722, 324 724, 312 742, 324 760, 354 762", {
    share: 0.2,
    becomes: "ivc",
    bed: true,
  }),
  vessel("leftKidneyBed", ["splanchnic", "arterial"], 26, "670 698, 700 700, 712 718, 700 736, 670 738", {
    share: 0.2,
    becomes: "ivc",
    bed: true,
  }),
  vessel("rightLegBed", ["legs", "arterial"], 26, "348 1074, 352 1090, 366 1096, 380 1090, 384 1074", {
    share: 0.5,
    becomes: "ivc",
    bed: true,
  }),
  vessel("leftLegBed", ["legs", "arterial"], 26, "678 1074, 674 1090, 660 1096, 646 1090, 642 1074", {
    share: 0.5,
    becomes: "ivc",
    bed: true,
  }),
];

const VEINS: readonly Vessel[] = [
  vessel("jugular", ["upper", "svc"], 28, "462 96, 466 140, 468 186", { joins: "upperCava" }),
  vessel("hepatic", ["splanchnic", "ivc"], 22, "402 552, 440 546, 466 520", {
    share: 0.6,
    joins: "lowerCava",
  }),
  vessel("rightKidneyVein", ["splanchnic", "ivc"], 13, "352 762, 410 754, 468 738", {
    share: 0.2,
    joins: "lowerCava",
  }),
  vessel("leftKidneyVein", ["splanchnic", "ivc"], 13, "672 738, 600 742, 530 736, 468 716", {
    share: 0.2,
    joins: "lowerCava",
  }),
  vessel("rightLegVein", ["legs", "ivc"], 20, "384 1076, 390 1006, 420 950, 456 900, 468 850", {
    share: 0.5,
    behind: true,
  }),
  vessel("leftLegVein", ["legs", "ivc"], 20, "642 1076, 636 1006, 604 950, 540 916, 484 890, 468 850", {
    share: 0.5,
    behind: true,
  }),
  vessel("lowerIvc", ["ivc", "ivc"], 30, "468 856, 468 700, 468 520", { under: true, joins: "lowerCava" }),
  // Before the inferior vena cava, to the same hilum of the liver as the artery.
  vessel("portal", ["splanchnic", "ivc"], 18, "532 800, 520 740, 486 670, 432 612", { share: 0.4 }),
];

const PULMONARY_ARTERIES: readonly Vessel[] = [
  vessel("rightPulmonaryArtery", ["right", "pulmonaryArtery"], 26, "468 276, 410 276, 372 290, 350 304", {
    joins: "upperCava",
  }),
  vessel("leftPulmonaryArtery", ["left", "pulmonaryArtery"], 26, "468 276, 540 274, 600 266, 634 286", {
    joins: "upperCava",
  }),
];

const COLLATERALS: readonly Vessel[] = [
  vessel("collaterals", ["collaterals", "arterial"], 6, "590 330, 630 340, 660 322, 672 300"),
];

const SVC_TO_LUNGS: Vessel = vessel("svc", ["svc", "svc"], 28, "468 182, 468 230, 468 276", {
  joins: "upperCava",
});

const trunk = (name: string, { width, points }: Pick<Vessel, "width" | "points">): Vessel => ({
  name,
  flow: "ivc",
  blood: "ivc",
  width,
  points,
  joins: "upperCava",
});

/** What lies between the great veins and the pulmonary arteries or the heart. */
const CENTRE: Readonly<Record<Stage, readonly Vessel[]>> = {
  "two-ventricle": [],
  glenn: [
    SVC_TO_LUNGS,
    ...PULMONARY_ARTERIES,
    vessel("ivc", ["ivc", "ivc"], 32, "468 524, 466 470, 470 400", { joins: "lowerCava" }),
  ],
  atriopulmonary: [
    vessel("svc", ["svc", "svc"], 28, "468 182, 464 260, 456 340", { behind: true }),
    vessel("ivc", ["ivc", "ivc"], 32, "468 524, 464 470, 454 416", { behind: true }),
    vessel("chamber", ["pulmonary", "pulmonaryArtery"], 36, "448 380, 464 330, 480 276"),
    vessel("rightPulmonaryArtery", ["right", "pulmonaryArtery"], 26, "480 280, 440 270, 380 286, 350 304"),
    vessel("leftPulmonaryArtery", ["left", "pulmonaryArtery"], 26, "480 280, 540 272, 600 266, 634 286"),
  ],
  "lateral-tunnel": [SVC_TO_LUNGS, ...PULMONARY_ARTERIES, trunk("tunnel", TRUNKS["lateral-tunnel"])],
  extracardiac: [SVC_TO_LUNGS, ...PULMONARY_ARTERIES, trunk("conduit", TRUNKS.extracardiac)],
};

/** A chamber's resting outline; the scene swells it by the chamber's computed volume. */
export interface Chamber {
  /** name of the volume trace */
  readonly volume: string;
  readonly centre: Spot;
  readonly radii: Spot;
  /** radians, clockwise on the screen */
  readonly lean: number;
  readonly blood: Blood;
}

/** Chambers beside those of the one anatomy, which paints the atrium and the ventricle of the body's side. */
export const CHAMBERS: Readonly<Record<Stage, readonly Chamber[]>> = {
  "two-ventricle": [],
  glenn: [],
  atriopulmonary: [
    { volume: "pathway", centre: [452, 376], radii: [44, 58], lean: 0, blood: "pulmonaryArtery" },
  ],
  "lateral-tunnel": [],
  extracardiac: [],
};

/** Where the pathway's hole opens to the atrium, for the stages that can have one. */
const FENESTRATION: Readonly<Record<Stage, readonly Spot[] | null>> = {
  "two-ventricle": null,
  glenn: null,
  atriopulmonary: spots("458 380, 488 376, 516 372"),
  "lateral-tunnel": spots("466 380, 492 376, 520 372"),
  extracardiac: spots("446 384, 476 380, 516 374"),
};

/** Every vessel of a stage, those behind first. `open`: the fenestration is open. `close`: heart and lungs fill the picture. */
export function vesselsOf(stage: Stage, open: boolean, close = false): readonly Vessel[] {
  if (close && stage === "two-ventricle") return closeVessels();
  const hole = open ? FENESTRATION[stage] : null;
  const all = [
    ...VEINS,
    ...ARTERIES,
    ...BEDS,
    ...(stage === "two-ventricle" ? [] : COLLATERALS),
    // The ascending aorta lies before the pulmonary arteries.
    ...CENTRE[stage],
    ...(stage === "two-ventricle" ? twoVentricleVessels() : chestVessels(stage)),
    ...(hole
      ? [
          {
            name: "fenestration",
            flow: "fenestration",
            blood: "pulmonaryArtery",
            width: 11,
            points: hole,
          } as const,
        ]
      : []),
  ];
  return [...all.filter((vessel) => vessel.behind), ...all.filter((vessel) => !vessel.behind)];
}
