/**
 * The schematic of the whole circulation, as a table: what joins what in each stage, and where it lies.
 * A plane of our own, 1000 wide and 1100 high, y down, seen from the front: the body's right is on the left.
 */

import { entryAt } from "../../sim/checked/present.ts";
import type { Stage } from "../../sim/parameters/request.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";

/** Blood of one oxygen level: keys of the circulation's saturations, or the mixture that the model gives for the pulmonary arteries. */
export type Blood = "arterial" | "svc" | "ivc" | "pulmonaryArtery" | "pulmonaryVein";

export interface Vessel {
  readonly name: string;
  /** name of the flow trace ("a+b" adds two) that moves its blood, from the first point to the last */
  readonly flow: string;
  readonly points: readonly Spot[];
  readonly width: number;
  /** oxygen at its beginning and, where it changes within (organs, lungs), at its end */
  readonly blood: Blood;
  readonly becomes?: Blood;
  /** drawn beneath the heart and the lungs' vessels */
  readonly behind?: true;
  /** fine strands side by side: a bed of capillaries */
  readonly bed?: true;
  /** the part of the trace's flow that is drawn as going this way; the model has one stream for gut, liver and kidneys, and one for both legs */
  readonly share?: number;
}

const vessel = (
  name: string,
  [flow, blood]: readonly [flow: string, blood: Blood],
  width: number,
  way: string,
  more: Partial<Vessel> = {},
): Vessel => ({ name, flow, blood, width, points: spots(way), ...more });

const ARTERIES: readonly Vessel[] = [
  vessel("arch", ["aorta", "arterial"], 30, "548 405, 536 320, 536 250, 562 214, 606 226, 618 290"),
  vessel("carotid", ["upper", "arterial"], 18, "566 214, 562 170, 552 130, 548 96"),
  vessel("descending", ["splanchnic+legs", "arterial"], 26, "618 286, 618 400, 606 560, 598 700, 596 880", {
    behind: true,
  }),
  vessel("liverArtery", ["splanchnic", "arterial"], 10, "606 566, 560 584, 500 600, 426 604", { share: 0.2 }),
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
  vessel("upperBed", ["upper", "arterial"], 46, "548 98, 530 56, 500 44, 470 56, 452 98", {
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
  vessel("jugular", ["upper", "svc"], 24, "452 96, 446 140, 440 186"),
  vessel("portal", ["splanchnic", "ivc"], 18, "532 704, 480 680, 452 648, 430 616", { share: 0.4 }),
  vessel("hepatic", ["splanchnic", "ivc"], 22, "402 552, 428 544, 440 520", { share: 0.6 }),
  vessel("rightKidneyVein", ["splanchnic", "ivc"], 13, "352 828, 400 826, 440 812", { share: 0.2 }),
  vessel("leftKidneyVein", ["splanchnic", "ivc"], 13, "672 828, 600 832, 520 826, 440 806", { share: 0.2 }),
  vessel("rightLegVein", ["legs", "ivc"], 20, "346 1076, 352 1000, 388 944, 432 896, 440 850", {
    share: 0.5,
  }),
  vessel("leftLegVein", ["legs", "ivc"], 20, "678 1076, 670 1000, 630 950, 540 920, 460 890, 440 850", {
    share: 0.5,
  }),
  vessel("lowerIvc", ["ivc", "ivc"], 30, "440 856, 440 700, 440 520"),
];

const LUNGS: readonly Vessel[] = [
  vessel(
    "rightBed",
    ["right", "pulmonaryArtery"],
    84,
    "352 276, 300 258, 252 306, 240 390, 286 432, 352 372",
    {
      becomes: "pulmonaryVein",
      bed: true,
    },
  ),
  vessel("leftBed", ["left", "pulmonaryArtery"], 84, "672 276, 706 256, 748 306, 760 390, 722 432, 672 372", {
    becomes: "pulmonaryVein",
    bed: true,
  }),
  vessel("rightPulmonaryVein", ["right", "pulmonaryVein"], 20, "350 372, 400 372, 480 366", { behind: true }),
  vessel("leftPulmonaryVein", ["left", "pulmonaryVein"], 20, "674 372, 630 370, 560 364"),
];

const PULMONARY_ARTERIES: readonly Vessel[] = [
  vessel("rightPulmonaryArtery", ["right", "pulmonaryArtery"], 24, "440 276, 390 274, 350 276"),
  vessel("leftPulmonaryArtery", ["left", "pulmonaryArtery"], 24, "440 276, 520 274, 620 272, 674 276"),
];

const COLLATERALS: readonly Vessel[] = [
  vessel("collaterals", ["collaterals", "arterial"], 6, "618 306, 650 326, 670 322, 690 290"),
];

const SVC_TO_LUNGS: Vessel = vessel("svc", ["svc", "svc"], 26, "440 182, 440 230, 440 276");

/** What lies between the great veins and the pulmonary arteries or the heart. */
const CENTRE: Readonly<Record<Stage, readonly Vessel[]>> = {
  "two-ventricle": [
    vessel("svc", ["svc", "svc"], 26, "440 182, 438 260, 446 350"),
    vessel("ivc", ["ivc", "ivc"], 30, "440 524, 438 460, 446 380"),
    vessel("lungTrunk", ["pulmonary", "pulmonaryArtery"], 28, "492 430, 500 350, 496 276"),
    vessel("rightPulmonaryArtery", ["right", "pulmonaryArtery"], 24, "498 290, 470 272, 390 274, 350 276"),
    vessel("leftPulmonaryArtery", ["left", "pulmonaryArtery"], 24, "498 290, 530 272, 620 272, 674 276"),
  ],
  glenn: [
    SVC_TO_LUNGS,
    ...PULMONARY_ARTERIES,
    vessel("ivc", ["ivc", "ivc"], 30, "440 524, 440 460, 470 392"),
  ],
  atriopulmonary: [
    vessel("svc", ["svc", "svc"], 26, "440 182, 432 260, 424 340"),
    vessel("ivc", ["ivc", "ivc"], 30, "440 524, 436 470, 424 400"),
    vessel("chamber", ["pulmonary", "pulmonaryArtery"], 34, "424 372, 446 330, 462 276"),
    vessel("rightPulmonaryArtery", ["right", "pulmonaryArtery"], 24, "462 282, 430 270, 380 274, 350 276"),
    vessel("leftPulmonaryArtery", ["left", "pulmonaryArtery"], 24, "462 282, 500 272, 620 272, 674 276"),
  ],
  "lateral-tunnel": [
    SVC_TO_LUNGS,
    ...PULMONARY_ARTERIES,
    vessel("tunnel", ["ivc", "ivc"], 34, "440 524, 438 450, 436 360, 440 276"),
  ],
  extracardiac: [
    SVC_TO_LUNGS,
    ...PULMONARY_ARTERIES,
    vessel("conduit", ["ivc", "ivc"], 32, "440 524, 424 470, 410 380, 424 320, 440 276"),
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

const SINGLE: readonly Chamber[] = [
  { volume: "atrium", centre: [508, 372], radii: [50, 40], lean: -0.1, blood: "pulmonaryVein" },
  { volume: "ventricle", centre: [560, 452], radii: [66, 52], lean: 0.6, blood: "arterial" },
];

export const CHAMBERS: Readonly<Record<Stage, readonly Chamber[]>> = {
  "two-ventricle": [
    { volume: "rightAtrium", centre: [448, 366], radii: [38, 44], lean: 0, blood: "pulmonaryArtery" },
    { volume: "rightVentricle", centre: [498, 456], radii: [54, 46], lean: 0.5, blood: "pulmonaryArtery" },
    { volume: "atrium", centre: [550, 362], radii: [42, 34], lean: 0, blood: "pulmonaryVein" },
    { volume: "ventricle", centre: [582, 446], radii: [56, 44], lean: 0.75, blood: "arterial" },
  ],
  glenn: SINGLE,
  atriopulmonary: [
    { volume: "pathway", centre: [424, 372], radii: [46, 58], lean: 0, blood: "pulmonaryArtery" },
    ...SINGLE,
  ],
  "lateral-tunnel": [
    { volume: "atrium", centre: [488, 372], radii: [78, 50], lean: 0, blood: "pulmonaryVein" },
    entryAt(SINGLE, 1),
  ],
  extracardiac: SINGLE,
};

/** Where the pathway's hole opens to the atrium, for the stages that can have one. */
const FENESTRATION: Readonly<Record<Stage, readonly Spot[] | null>> = {
  "two-ventricle": null,
  glenn: null,
  atriopulmonary: spots("430 376, 456 374, 486 370"),
  "lateral-tunnel": spots("438 376, 462 374, 490 370"),
  extracardiac: spots("412 384, 446 380, 486 372"),
};

/** Every vessel of a stage, those behind first. `open`: the fenestration is open. */
export function vesselsOf(stage: Stage, open: boolean): readonly Vessel[] {
  const hole = open ? FENESTRATION[stage] : null;
  const all = [
    ...ARTERIES,
    ...BEDS,
    ...VEINS,
    ...LUNGS,
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
