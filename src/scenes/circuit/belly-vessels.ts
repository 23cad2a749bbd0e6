/**
 * Vessels of the belly. The model has one stream for gut, spleen, liver and kidneys: shares are parts of it as drawn.
 * Branching and order along the aorta: common anatomy, from memory; levels between the vertebrae T12 and L4.
 */

import { entryAt } from "../../sim/checked/present.ts";
import { KIDNEY_SHARE } from "../../sim/parameters/organ-flow.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { KIDNEY_ARC, KIDNEY_AT } from "./outlines.ts";
import { net, type Vessel, vessel } from "./vessel.ts";

const ARTERY = ["splanchnic", "arterial"] as const;
const PORTAL = ["splanchnic", "portal"] as const;
const HEPATIC = ["splanchnic", "hepatic"] as const;
const RENAL = ["splanchnic", "kidneys"] as const;

const EACH_KIDNEY = KIDNEY_SHARE / 2;

/** Within each kidney the vessels fan out from its hilum between the pyramids to arcs around these, and capillaries lie in the cortex beyond. */
function kidney(side: "right" | "left") {
  const place = KIDNEY_AT[side];
  const arc = (part: number) =>
    KIDNEY_ARC.map(([x, y]): Spot => place([382 + part * (x - 382), 728 + part * (y - 728)]));
  const [inner, outer] = [arc(0.66), arc(0.9)];
  const fan = (name: string, width: number, from: Spot, to: readonly Spot[]) =>
    to.map((end, i): Vessel => {
      const share = EACH_KIDNEY / to.length;
      return {
        name: `${side}Kidney${name}${i + 1}`,
        flow: "splanchnic",
        blood: "arterial",
        width,
        points: [place(from), end],
        share,
        under: true,
        tapers: "end",
        joins: "aorta",
      };
    });
  const veins = fan(
    "VeinBranch",
    7,
    [400, 738],
    [1, 3, 5].map((i) => entryAt(outer, i)),
  );
  return {
    arteries: fan(
      "Branch",
      5,
      [400, 722],
      [0, 2, 4, 6].map((i) => entryAt(inner, i)),
    ),
    veins: veins.map(
      ({ points, ...vein }): Vessel => ({
        ...vein,
        blood: "kidneys",
        tapers: "start",
        points: points.toReversed(),
        joins: "belowLiver",
      }),
    ),
    bed: {
      ...net(`${side}KidneyBed`, "splanchnic", ["arterial", "kidneys"], EACH_KIDNEY, inner, outer),
      fine: true,
      under: true,
    } as const,
  };
}
const RIGHT_KIDNEY = kidney("right");
const LEFT_KIDNEY = kidney("left");

/** Behind the veins: they leave the aorta at its sides, below the superior mesenteric artery. */
export const KIDNEY_ARTERIES: readonly Vessel[] = [
  vessel("rightKidneyArtery", ARTERY, 10, "530 694, 490 700, 440 720, 398 730", {
    share: EACH_KIDNEY,
    under: true,
    joins: "aorta",
  }),
  vessel("leftKidneyArtery", ARTERY, 10, "530 686, 560 688, 602 702", {
    share: EACH_KIDNEY,
    under: true,
    joins: "aorta",
  }),
  ...RIGHT_KIDNEY.arteries,
  ...LEFT_KIDNEY.arteries,
];

/** The left one before the aorta. */
export const KIDNEY_VEINS: readonly Vessel[] = [
  vessel("rightKidneyVein", RENAL, 13, "398 746, 436 748, 468 734", {
    share: EACH_KIDNEY,
    under: true,
    joins: "belowLiver",
  }),
  vessel("leftKidneyVein", RENAL, 13, "602 718, 566 717, 530 713, 468 706", {
    share: EACH_KIDNEY,
    under: true,
    joins: "belowLiver",
  }),
  ...RIGHT_KIDNEY.veins,
  ...LEFT_KIDNEY.veins,
];

/** A loop of small bowel: the artery's branch along one limb, the vein's along the other, capillaries over the mesentery between. */
interface Loop {
  readonly artery: string;
  readonly from: string;
  readonly to: string;
  readonly vein: string;
}
const LOOPS: readonly Loop[] = [
  {
    artery: "544 768, 572 780, 606 790, 650 784, 690 798",
    from: "610 789, 650 784, 686 796",
    to: "614 827, 650 832, 690 824",
    vein: "694 820, 650 832, 612 828, 578 822, 504 784",
  },
  {
    artery: "542 814, 574 838, 606 856, 650 858, 694 866",
    from: "610 856, 650 858, 690 865",
    to: "616 891, 658 899, 694 890",
    vein: "698 888, 658 900, 614 892, 576 872, 503 812",
  },
  {
    artery: "529 854, 566 890, 598 916, 634 932, 672 942",
    from: "602 918, 634 932, 668 941",
    to: "594 952, 632 970, 670 964",
    vein: "674 960, 632 971, 590 952, 556 910, 498 834",
  },
  {
    artery: "510 881, 540 912, 562 944, 560 976, 550 992",
    from: "562 948, 561 968, 552 990",
    to: "513 950, 516 972, 524 992",
    vein: "526 994, 516 970, 512 946, 504 906, 483 860",
  },
  {
    artery: "484 905, 486 924, 486 948, 482 980, 470 996",
    from: "486 950, 483 972, 472 994",
    to: "429 948, 434 968, 444 992",
    vein: "446 994, 434 966, 428 944, 432 918, 446 894",
  },
  {
    artery: "462 922, 432 932, 402 948, 400 980, 388 996",
    from: "402 952, 400 974, 390 994",
    to: "347 944, 352 966, 362 990",
    vein: "364 992, 352 964, 346 940, 358 920, 388 914",
  },
];
const LOOP = 0.05;
const eachLoop = (make: (loop: Loop, number: string) => Vessel): readonly Vessel[] =>
  LOOPS.map((loop, i) => make(loop, i === 0 ? "" : String(i + 1)));

/** To the liver's hilum and to the spleen. */
export const COELIAC_ARTERIES: readonly Vessel[] = [
  vessel("coeliacTrunk", ARTERY, 15, "531 660, 531 642", { share: 0.25, joins: "coeliac" }),
  vessel("liverArtery", ARTERY, 11, "531 646, 526 633, 508 627, 482 622, 452 612, 428 604", {
    share: 0.15,
    joins: "coeliac",
  }),
  vessel("liverRightArtery", ARTERY, 4.6, "430 604, 400 618, 362 633, 322 640", {
    deep: true,
    share: 0.075,
    tapers: "end",
    joins: "coeliac",
  }),
  vessel("liverAnteriorArtery", ARTERY, 4, "412 610, 390 592, 378 574", {
    deep: true,
    share: 0.0375,
    tapers: "end",
    joins: "coeliac",
  }),
  vessel("liverLeftArtery", ARTERY, 4.6, "446 610, 474 597, 512 583, 546 576", {
    deep: true,
    share: 0.0375,
    tapers: "end",
    joins: "coeliac",
  }),
  vessel(
    "gutSplenicArtery",
    ARTERY,
    10,
    "531 646, 537 634, 566 633, 600 624, 636 630, 672 616, 716 624, 738 608, 752 592",
    {
      share: 0.1,
      tapers: "end",
      joins: "coeliac",
    },
  ),
];

/** The superior mesenteric artery, before the aorta and its left border, and its branches to the bowel. */
export const GUT_ARTERIES: readonly Vessel[] = [
  vessel("gutArtery", ARTERY, 11, "532 664, 542 692, 546 732, 544 784", { share: 0.3, joins: "mesenteric" }),
  vessel("gutLowerArtery", ARTERY, 7, "544 780, 541 818, 528 856, 504 888, 462 922", {
    share: 0.2,
    joins: "mesenteric",
  }),
  ...eachLoop(({ artery }, number) =>
    vessel(`gutBranch${number}`, ARTERY, 4.6, artery, { share: LOOP, joins: "mesenteric", tapers: "end" }),
  ),
];

/** Plane units up to which a vein of gut or liver is a twig. */
const MAX_TWIG = 7;

const toPortal = (name: string, width: number, share: number, way: string) =>
  vessel(name, PORTAL, width, way, {
    share,
    joins: "portal",
    // Towards the liver's capillaries, or from the bowel's.
    ...(width > MAX_TWIG ? {} : { tapers: name.startsWith("liver") ? "end" : "start" }),
  });

/**
 * The superior mesenteric vein, to the right of its artery, meets that of the spleen behind the pancreas' neck, before the inferior vena
 * cava; the portal vein goes on to the liver's hilum, branches in the lobes and ends in twigs.
 */
export const PORTAL_VEINS: readonly Vessel[] = [
  toPortal("gutVein", 13, 0.3, "497 836, 503 796, 505 744, 502 706, 499 676"),
  toPortal("gutLowerVein", 9.5, 0.2, "388 914, 440 898, 474 873, 494 842, 503 800"),
  ...eachLoop(({ vein }, number) => toPortal(`gutVeinBranch${number}`, 5.4, LOOP, vein)),
  toPortal("gutSplenicVein", 12, 0.1, "752 662, 736 652, 716 640, 668 640, 612 656, 556 664, 496 662"),
  { ...toPortal("portal", 18, 0.4, "500 690, 492 654, 466 634, 424 618"), opens: "end" },
];

/** Deep in the liver, behind the hepatic veins. */
export const LIVER_PORTAL: readonly Vessel[] = [
  toPortal("liverRightPortal", 12, 0.25, "428 619, 394 634, 352 644"),
  toPortal("liverRightPortal2", 8, 0.1, "358 643, 322 651, 288 651"),
  toPortal("liverRightPortal3", 5, 0.05, "324 651, 302 641, 282 634"),
  toPortal("liverRightPortal4", 6, 0.1, "356 643, 336 628, 316 622"),
  toPortal("liverAnteriorPortal", 9, 0.1, "420 622, 398 606, 382 590, 372 578"),
  toPortal("liverAnteriorPortal2", 5, 0.05, "396 604, 370 602, 352 596"),
  toPortal("liverLeftPortal", 10, 0.1, "426 618, 464 606, 508 593"),
  toPortal("liverLeftPortal2", 7, 0.06, "502 595, 536 587, 564 580"),
  toPortal("liverLeftPortal3", 5, 0.05, "470 604, 482 590, 484 578"),
].map((each) => ({ ...each, joins: "liverPortal", deep: true as const }));

const toCava = (name: string, width: number, share: number, way: string) =>
  vessel(name, HEPATIC, width, way, {
    share,
    joins: "cavae",
    ...(width > MAX_TWIG ? {} : { tapers: "start" }),
  });

/** Three, between the portal vein's branches; they meet the vena cava at the liver's back, right under the diaphragm. */
export const HEPATIC_VEINS: readonly Vessel[] = [
  toCava("hepatic", 9, 0.29, "296 596, 346 572, 404 548, 467 526"),
  toCava("hepaticBranch", 6, 0.12, "250 624, 272 610, 300 594"),
  toCava("hepaticBranch2", 5, 0.06, "276 568, 308 572, 340 574"),
  toCava("hepaticBranch3", 4.4, 0.06, "318 546, 350 556, 386 555"),
  toCava("hepaticMiddle", 8, 0.14, "426 588, 434 568, 450 546, 467 528"),
  toCava("hepaticMiddle2", 4.4, 0.05, "402 580, 416 570, 433 566"),
  toCava("hepaticLeft", 8, 0.12, "556 562, 524 556, 492 544, 470 528"),
  toCava("hepaticLeftBranch", 4.6, 0.06, "612 566, 586 567, 552 561"),
  toCava("hepaticLeftBranch2", 4.4, 0.05, "520 574, 514 562, 502 549"),
];

/** Of the liver, from the portal vein's twigs to those of the hepatic veins; and the arteries' own way into it. */
const SINUSOIDS: readonly Vessel[] = (
  [
    ["liverPortalBed", "portal", 0.15, "318 624, 300 636, 284 650", "304 580, 276 582, 252 606"],
    ["liverPortalBed2", "portal", 0.12, "376 582, 356 597, 318 622", "364 540, 336 560, 304 590"],
    ["liverPortalBed3", "portal", 0.06, "424 612, 398 600, 376 578", "424 582, 412 564, 388 542"],
    ["liverPortalBed4", "portal", 0.07, "446 610, 484 590, 562 580", "444 546, 510 550, 600 561"],
    ["liverBed", "arterial", 0.075, "386 622, 350 636, 322 640", "356 544, 314 566, 272 584"],
    ["liverBed2", "arterial", 0.0375, "398 600, 388 588, 378 574", "430 566, 410 566, 386 545"],
    ["liverBed3", "arterial", 0.0375, "462 602, 510 584, 546 576", "456 542, 510 550, 570 558"],
  ] as const
).map(([name, blood, share, from, to]) => ({
  ...net(name, "splanchnic", [blood, "hepatic"], share, from, to),
  fine: true,
}));

export const BELLY_BEDS: readonly Vessel[] = [
  ...SINUSOIDS,
  ...eachLoop(({ from, to }, number) =>
    net(`gutBed${number}`, "splanchnic", ["arterial", "portal"], LOOP, from, to),
  ),
  net(
    "gutSpleenBed",
    "splanchnic",
    ["arterial", "portal"],
    0.1,
    "726 616, 740 606, 754 592",
    "726 646, 740 654, 754 660",
  ),
];
export const KIDNEY_BEDS: readonly Vessel[] = [RIGHT_KIDNEY.bed, LEFT_KIDNEY.bed];

/** Names of all that the liver's and the bowel's blood passes. */
export const namesOf = (organ: "liver" | "gut"): readonly string[] =>
  [...GUT_ARTERIES, ...COELIAC_ARTERIES, ...PORTAL_VEINS, ...LIVER_PORTAL, ...BELLY_BEDS, ...HEPATIC_VEINS]
    .map(({ name }) => name)
    .filter((name) => (organ === "gut" ? /^(gut|portal)/ : /^(liver|hepatic)/).test(name));
