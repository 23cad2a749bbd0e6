/**
 * The schematic of the whole circulation, as a table: what joins what in each stage, and where it lies.
 * A plane of our own, 1000 wide, from -180 to 1170, y down, seen from the front: the body's right is on the left.
 */

import type { Stage } from "../../sim/parameters/request.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import {
  BELLY_BEDS,
  COELIAC_ARTERIES,
  GUT_ARTERIES,
  HEPATIC_VEINS,
  KIDNEY_ARTERIES,
  KIDNEY_BEDS,
  KIDNEY_VEINS,
  LIVER_PORTAL,
  PORTAL_VEINS,
} from "./belly-vessels.ts";
import { chestVessels, TRUNKS, throughChamber } from "./chest-plan.ts";
import { LEG_ARTERIES, LEG_BEDS, LEG_VEINS, NECK_ARTERIES, UPPER_BEDS, UPPER_VEINS } from "./limb-vessels.ts";
import { closeVessels } from "./two-ventricles/close-courses.ts";
import { twoVentricleVessels } from "./two-ventricles/heart-courses.ts";
import { BELOW_LIVER, type Vessel, vessel } from "./vessel.ts";

/** On the back wall of the belly: the aorta before the vena cava's veins, of which the left kidney's crosses it. Each part holds what has come in below. */
const INFERIOR_VENA_CAVA: readonly Vessel[] = [
  vessel("infrarenalCava", ["legs", "legs"], 26, "470 904, 468 700", { under: true, joins: "belowLiver" }),
  vessel("lowerIvc", [BELOW_LIVER, "belowLiver"], 30, "468 728, 468 518", {
    under: true,
    joins: "belowLiver",
  }),
];

/** Each ends in the stem of its lung's tree, along that and as wide, so that no rim of it stands out. */
const artery = (side: "right" | "left", way: string) =>
  vessel(`${side}PulmonaryArtery`, [side, "pulmonaryArtery"], 32, way, { joins: "cavae", opens: "end" });

const PULMONARY_ARTERIES: readonly Vessel[] = [
  artery("right", "468 276, 440 269, 414 271, 399 281, 385 290, 367 300"),
  artery("left", "468 276, 530 270, 564 257, 589 257, 608 270, 618 278, 634 289"),
];

const COLLATERALS: readonly Vessel[] = [
  vessel("collaterals", ["collaterals", "arterial"], 6, "594 392, 618 366, 646 340, 672 312", {
    behind: true,
  }),
];

const SVC_TO_LUNGS: Vessel = vessel("svc", ["svc", "svc"], 28, "468 222, 468 276", {
  joins: "cavae",
});

const trunk = (name: string, { width, points }: Pick<Vessel, "width" | "points">): Vessel => ({
  name,
  flow: "ivc",
  blood: "ivc",
  width,
  points,
  joins: "cavae",
});

/** What lies between the great veins and the pulmonary arteries or the heart. */
const CENTRE: Readonly<Record<Stage, readonly Vessel[]>> = {
  "two-ventricle": [],
  glenn: [
    SVC_TO_LUNGS,
    ...PULMONARY_ARTERIES,
    vessel("ivc", ["ivc", "ivc"], 32, "468 524, 466 470, 470 438", { behind: true }),
    // Through the atrium that was made one, behind the aorta.
    vessel("throughSeptum", ["ivc", "ivc"], 38, "474 446, 470 414, 476 384, 498 368, 530 370, 584 390", {
      becomes: "arterial",
      painted: true,
    }),
  ],
  atriopulmonary: [
    ...PULMONARY_ARTERIES.map((each) => ({ ...each, joins: "lungs" })),
    // Before the artery, into an atrium that is painted.
    vessel("svc", ["svc", "svc"], 28, "468 222, 466 270, 461 330", { joins: "cavae" }),
    vessel("ivc", ["ivc", "ivc"], 32, "468 524, 464 470, 454 416", { behind: true }),
    throughChamber(
      "chamber",
      ["pulmonary", "pulmonaryArtery"],
      [
        spots("454 444, 418 424, 394 392, 388 350, 402 316, 426 292"),
        spots("474 446, 486 420, 492 388, 492 350, 488 316, 478 294"),
      ],
    ),
  ],
  "lateral-tunnel": [SVC_TO_LUNGS, ...PULMONARY_ARTERIES, trunk("tunnel", TRUNKS["lateral-tunnel"])],
  extracardiac: [SVC_TO_LUNGS, ...PULMONARY_ARTERIES, trunk("conduit", TRUNKS.extracardiac)],
};

/** Where the pathway's hole opens to the atrium, for the stages that can have one. */
const FENESTRATION: Readonly<Record<Stage, readonly Spot[] | null>> = {
  "two-ventricle": null,
  glenn: null,
  atriopulmonary: spots("458 380, 488 376, 516 372"),
  "lateral-tunnel": spots("466 380, 492 376, 520 372"),
  extracardiac: spots("462 384, 488 380, 520 374"),
};

/** Every vessel of a stage, those behind first. `open`: the fenestration is open. `close`: heart and lungs fill the picture. */
export function vesselsOf(stage: Stage, open: boolean, close = false): readonly Vessel[] {
  const all = close ? closeTo(stage, open) : wholeVessels(stage, open);
  // Blood on the back wall is seen with that behind the heart, through liver and diaphragm.
  return all.map((each) => (each.under ? { ...each, behind: true } : each));
}

/** Without the arms, whose skin isn't in the picture. */
const closeTo = (stage: Stage, open: boolean): readonly Vessel[] =>
  stage === "two-ventricle"
    ? closeVessels()
    : wholeVessels(stage, open).filter(({ name }) => !name.startsWith("upperLimb"));

function wholeVessels(stage: Stage, open: boolean): readonly Vessel[] {
  const hole = open ? FENESTRATION[stage] : null;
  const chest = stage === "two-ventricle" ? twoVentricleVessels() : chestVessels(stage);
  const isAorta = ({ joins }: Vessel) => joins === "aorta";
  const all = [
    ...chest.filter(isAorta),
    ...KIDNEY_ARTERIES,
    ...INFERIOR_VENA_CAVA,
    ...KIDNEY_VEINS,
    ...KIDNEY_BEDS,
    ...LEG_VEINS,
    ...LEG_BEDS,
    ...BELLY_BEDS,
    ...UPPER_BEDS,
    ...LIVER_PORTAL,
    ...HEPATIC_VEINS,
    ...LEG_ARTERIES,
    // The spleen's vein crosses before the bowel's artery, the liver's artery lies before the portal vein.
    ...GUT_ARTERIES,
    ...PORTAL_VEINS,
    ...COELIAC_ARTERIES,
    ...(stage === "two-ventricle" ? [] : COLLATERALS),
    // The ascending aorta lies before the pulmonary arteries.
    ...CENTRE[stage],
    ...chest.filter((each) => !isAorta(each)),
    ...NECK_ARTERIES,
    ...UPPER_VEINS,
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
