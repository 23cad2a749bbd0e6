/**
 * The schematic of the whole circulation, as a table: what joins what in each stage, and where it lies.
 * A plane of our own, 1000 wide and 1100 high, y down, seen from the front: the body's right is on the left.
 */

import type { Stage } from "../../sim/parameters/request.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import { chestVessels, TWO_VENTRICLES } from "./chest-plan.ts";
import { type Blood, type Vessel, vessel } from "./vessel.ts";

const ARTERIES: readonly Vessel[] = [
  vessel("liverArtery", ["splanchnic", "arterial"], 10, "584 552, 560 580, 500 600, 426 604", { share: 0.2 }),
  vessel("gutArtery", ["splanchnic", "arterial"], 14, "602 640, 640 650, 676 680", { share: 0.4 }),
  vessel("rightKidneyArtery", ["splanchnic", "arterial"], 11, "597 792, 520 790, 400 790, 352 788", {
    share: 0.2,
    behind: true,
  }),
  vessel("leftKidneyArtery", ["splanchnic", "arterial"], 11, "597 792, 640 790, 672 788", { share: 0.2 }),
  vessel("rightLegArtery", ["legs", "arterial"], 16, "596 874, 560 910, 470 950, 396 1000, 384 1076", {
    share: 0.5,
    behind: true,
  }),
  vessel("leftLegArtery", ["legs", "arterial"], 16, "596 874, 620 920, 636 1000, 640 1076", { share: 0.5 }),
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
  vessel("gutBed", ["splanchnic", "arterial"], 52, "676 680, 716 706, 690 742, 628 736, 570 716, 530 704", {
    share: 0.4,
    becomes: "ivc",
    bed: true,
  }),
  vessel("rightKidneyBed", ["splanchnic", "arterial"], 26, "354 788, 324 790, 312 808, 324 826, 354 828", {
    share: 0.2,
    becomes: "ivc",
    bed: true,
  }),
  vessel("leftKidneyBed", ["splanchnic", "arterial"], 26, "670 788, 700 790, 712 808, 700 826, 670 828", {
    share: 0.2,
    becomes: "ivc",
    bed: true,
  }),
  vessel("rightLegBed", ["legs", "arterial"], 26, "384 1074, 380 1090, 364 1096, 348 1090, 344 1074", {
    share: 0.5,
    becomes: "ivc",
    bed: true,
  }),
  vessel("leftLegBed", ["legs", "arterial"], 26, "640 1074, 644 1090, 660 1096, 676 1090, 680 1074", {
    share: 0.5,
    becomes: "ivc",
    bed: true,
  }),
];

const VEINS: readonly Vessel[] = [
  vessel("jugular", ["upper", "svc"], 24, "462 96, 466 140, 468 186"),
  vessel("portal", ["splanchnic", "ivc"], 18, "532 704, 492 676, 448 650, 414 622", { share: 0.4 }),
  vessel("hepatic", ["splanchnic", "ivc"], 22, "402 552, 440 546, 466 520", { share: 0.6 }),
  vessel("rightKidneyVein", ["splanchnic", "ivc"], 13, "352 828, 410 826, 468 812", { share: 0.2 }),
  vessel("leftKidneyVein", ["splanchnic", "ivc"], 13, "672 828, 600 832, 530 826, 468 806", { share: 0.2 }),
  vessel("rightLegVein", ["legs", "ivc"], 20, "346 1076, 352 1000, 396 944, 456 896, 468 850", {
    share: 0.5,
  }),
  vessel("leftLegVein", ["legs", "ivc"], 20, "678 1076, 670 1000, 630 950, 550 920, 484 890, 468 850", {
    share: 0.5,
  }),
  vessel("lowerIvc", ["ivc", "ivc"], 30, "468 856, 468 700, 468 520"),
];

const PULMONARY_ARTERIES: readonly Vessel[] = [
  vessel("rightPulmonaryArtery", ["right", "pulmonaryArtery"], 26, "468 276, 410 276, 372 290, 350 304"),
  vessel("leftPulmonaryArtery", ["left", "pulmonaryArtery"], 26, "468 276, 540 274, 600 266, 634 286"),
];

const COLLATERALS: readonly Vessel[] = [
  vessel("collaterals", ["collaterals", "arterial"], 6, "590 330, 630 340, 660 322, 672 300"),
];

const SVC_TO_LUNGS: Vessel = vessel("svc", ["svc", "svc"], 28, "468 182, 468 230, 468 276");

/** What lies between the great veins and the pulmonary arteries or the heart. */
const CENTRE: Readonly<Record<Stage, readonly Vessel[]>> = {
  "two-ventricle": [
    vessel("svc", ["svc", "svc"], 28, "468 182, 466 260, 464 352", { behind: true }),
    vessel("ivc", ["ivc", "ivc"], 32, "468 524, 462 470, 458 408", { behind: true }),
    vessel("rightPulmonaryArtery", ["right", "pulmonaryArtery"], 26, "574 284, 540 268, 420 274, 350 304", {
      behind: true,
    }),
    vessel("leftPulmonaryArtery", ["left", "pulmonaryArtery"], 26, "574 284, 600 270, 620 274, 634 286"),
    vessel("lungTrunk", ["pulmonary", "pulmonaryArtery"], 32, "506 446, 516 392, 556 330, 576 282"),
  ],
  glenn: [
    SVC_TO_LUNGS,
    ...PULMONARY_ARTERIES,
    vessel("ivc", ["ivc", "ivc"], 32, "468 524, 466 470, 470 400"),
  ],
  atriopulmonary: [
    vessel("svc", ["svc", "svc"], 28, "468 182, 464 260, 456 340", { behind: true }),
    vessel("ivc", ["ivc", "ivc"], 32, "468 524, 464 470, 454 416", { behind: true }),
    vessel("chamber", ["pulmonary", "pulmonaryArtery"], 36, "448 380, 464 330, 480 276"),
    vessel("rightPulmonaryArtery", ["right", "pulmonaryArtery"], 26, "480 280, 440 270, 380 286, 350 304"),
    vessel("leftPulmonaryArtery", ["left", "pulmonaryArtery"], 26, "480 280, 540 272, 600 266, 634 286"),
  ],
  "lateral-tunnel": [
    SVC_TO_LUNGS,
    ...PULMONARY_ARTERIES,
    vessel("tunnel", ["ivc", "ivc"], 36, "468 524, 466 450, 464 360, 468 276"),
  ],
  extracardiac: [
    SVC_TO_LUNGS,
    ...PULMONARY_ARTERIES,
    vessel("conduit", ["ivc", "ivc"], 34, "468 524, 454 470, 444 390, 452 320, 468 276"),
  ],
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
  "two-ventricle": TWO_VENTRICLES,
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

/** Every vessel of a stage, those behind first. `open`: the fenestration is open. */
export function vesselsOf(stage: Stage, open: boolean): readonly Vessel[] {
  const hole = open ? FENESTRATION[stage] : null;
  const all = [
    ...ARTERIES,
    ...BEDS,
    ...VEINS,
    ...chestVessels(stage),
    ...(stage === "two-ventricle" ? [] : COLLATERALS),
    ...CENTRE[stage],
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
