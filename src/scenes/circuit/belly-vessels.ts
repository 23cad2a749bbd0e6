/**
 * Vessels of the belly. The model has one stream for gut, spleen, liver and kidneys: shares are parts of it as drawn.
 * Branching and order along the aorta: common anatomy, from memory; levels between the vertebrae T12 and L4.
 */
import { entryAt } from "../../sim/checked/present.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import { BOWEL_LOOPS } from "./outlines.ts";
import { type Vessel, vessel } from "./vessel.ts";

const ARTERY = ["splanchnic", "arterial"] as const;
const VEIN = ["splanchnic", "ivc"] as const;

/** Behind the veins: they leave the aorta at its sides, below the superior mesenteric artery. */
export const KIDNEY_ARTERIES: readonly Vessel[] = [
  vessel("rightKidneyArtery", ARTERY, 12, "530 694, 490 698, 440 714, 398 722", {
    share: 0.2,
    under: true,
    joins: "aorta",
  }),
  vessel("leftKidneyArtery", ARTERY, 12, "530 686, 560 690, 602 706", {
    share: 0.2,
    under: true,
    joins: "aorta",
  }),
];

/** The left one before the aorta. */
export const KIDNEY_VEINS: readonly Vessel[] = [
  vessel("rightKidneyVein", VEIN, 15, "398 738, 436 742, 468 730", {
    share: 0.2,
    under: true,
    joins: "belowLiver",
  }),
  vessel("leftKidneyVein", VEIN, 15, "602 722, 566 720, 530 714, 468 706", {
    share: 0.2,
    under: true,
    joins: "belowLiver",
  }),
];

/** A loop of small bowel with its capillaries, and the branches that reach it in the mesentery. */
interface Loop {
  readonly artery: string;
  readonly bed: string;
  readonly vein: string;
}
const LOOPS: readonly Loop[] = [
  {
    artery: "573 776, 590 782, 606 790",
    bed: BOWEL_LOOPS[0],
    vein: "612 828, 584 824, 550 810",
  },
  {
    artery: "571 836, 590 846, 606 856",
    bed: BOWEL_LOOPS[1],
    vein: "614 892, 584 878, 543 850",
  },
  {
    artery: "556 876, 578 898, 598 916",
    bed: BOWEL_LOOPS[2],
    vein: "590 952, 562 920, 526 874",
  },
  {
    artery: "526 902, 546 922, 562 944",
    bed: BOWEL_LOOPS[3],
    vein: "512 946, 508 920, 500 890",
  },
  {
    artery: "496 912, 490 930, 486 948",
    bed: BOWEL_LOOPS[4],
    vein: "428 944, 432 924, 440 908",
  },
  {
    artery: "462 922, 432 932, 402 948",
    bed: BOWEL_LOOPS[5],
    vein: "346 940, 358 920, 388 914",
  },
];
const LOOP = 0.05;
const eachLoop = (make: (loop: Loop, number: string) => Vessel): readonly Vessel[] =>
  LOOPS.map((loop, i) => make(loop, i === 0 ? "" : String(i + 1)));

/** To the liver's hilum and to the spleen from one trunk, to the bowel from another below it. */
export const BELLY_ARTERIES: readonly Vessel[] = [
  vessel("coeliacTrunk", ARTERY, 15, "531 660, 531 642", { share: 0.3, joins: "coeliac" }),
  vessel("liverArtery", ARTERY, 11, "531 646, 526 633, 508 627, 482 622, 452 612, 428 604", {
    share: 0.2,
    joins: "coeliac",
  }),
  vessel("liverRightArtery", ARTERY, 6, "430 604, 398 616, 356 636, 312 648, 274 648", {
    share: 0.1,
    joins: "coeliac",
  }),
  vessel("liverAnteriorArtery", ARTERY, 6, "410 610, 384 594, 358 572, 342 550", {
    share: 0.05,
    joins: "coeliac",
  }),
  vessel("liverLeftArtery", ARTERY, 6, "446 610, 474 598, 516 584, 566 572", {
    share: 0.05,
    joins: "coeliac",
  }),
  vessel("gutSplenicArtery", ARTERY, 10, "531 646, 537 634, 566 633, 600 624, 636 630, 672 616, 716 624", {
    share: 0.1,
    joins: "coeliac",
  }),
  vessel("gutArtery", ARTERY, 13, "532 664, 556 684, 571 740, 573 800", { share: 0.3, joins: "mesenteric" }),
  vessel("gutLowerArtery", ARTERY, 9, "573 796, 571 838, 552 878, 516 906, 462 922", {
    share: 0.2,
    joins: "mesenteric",
  }),
  ...eachLoop(({ artery }, number) =>
    vessel(`gutBranch${number}`, ARTERY, 7, artery, { share: LOOP, joins: "mesenteric" }),
  ),
];

/** Bowel and spleen drain to the liver's hilum, before the inferior vena cava; it branches to the liver's lobes. */
export const PORTAL_VEINS: readonly Vessel[] = [
  vessel("gutVein", VEIN, 16, "546 840, 550 800, 546 744, 528 702, 500 676", { share: 0.3, joins: "portal" }),
  vessel("gutLowerVein", VEIN, 11, "388 914, 446 906, 500 890, 532 866, 547 830", {
    share: 0.2,
    joins: "portal",
  }),
  ...eachLoop(({ vein }, number) =>
    vessel(`gutVeinBranch${number}`, VEIN, 8, vein, { share: LOOP, joins: "portal" }),
  ),
  vessel("gutSplenicVein", VEIN, 12, "716 640, 668 640, 612 656, 556 664, 496 662", {
    share: 0.1,
    joins: "portal",
  }),
  vessel("portal", VEIN, 20, "500 690, 492 654, 466 634, 424 618", { share: 0.4, joins: "portal" }),
  vessel("liverRightPortal", VEIN, 13, "428 619, 384 638, 340 652", { share: 0.2, joins: "portal" }),
  vessel("liverRightPortal2", VEIN, 8, "346 648, 312 657, 282 657, 262 650", { share: 0.1, joins: "portal" }),
  vessel("liverRightPortal3", VEIN, 7, "352 648, 326 643, 302 634", { share: 0.1, joins: "portal" }),
  vessel("liverAnteriorPortal", VEIN, 11, "426 620, 396 608, 366 586, 346 556", {
    share: 0.1,
    joins: "portal",
  }),
  vessel("liverLeftPortal", VEIN, 10, "426 618, 462 608, 510 594, 560 580, 592 572", {
    share: 0.1,
    joins: "portal",
  }),
];

/** What the hepatic veins' branches gather from. */
const TWIGS = [
  "250 636, 245 629, 242 618",
  "296 612, 292 607, 290 598",
  "400 610, 406 598, 411 584",
  "560 563, 550 560, 536 556",
];

/** They leave at the liver's back, right under the diaphragm. */
export const HEPATIC_VEINS: readonly Vessel[] = [
  ...TWIGS.map((way, i) => vessel(`hepaticTwig${i + 1}`, VEIN, 6, way, { share: 0.03, joins: "cavae" })),
  vessel("hepatic", VEIN, 15, "320 545, 370 531, 424 528, 467 524", { share: 0.35, joins: "cavae" }),
  vessel("hepaticBranch", VEIN, 9, "242 622, 250 592, 278 562, 324 544", { share: 0.2, joins: "cavae" }),
  vessel("hepaticBranch2", VEIN, 7, "290 602, 306 576, 334 541", { share: 0.15, joins: "cavae" }),
  vessel("hepaticMiddle", VEIN, 10, "410 588, 420 564, 440 543, 466 527", { share: 0.1, joins: "cavae" }),
  vessel("hepaticLeft", VEIN, 12, "540 557, 506 550, 470 530", { share: 0.15, joins: "cavae" }),
  vessel("hepaticLeftBranch", VEIN, 7, "612 567, 576 562, 536 556", { share: 0.15, joins: "cavae" }),
];

const bed = (name: string, width: number, share: number, way: string): Vessel =>
  vessel(name, ARTERY, width, way, { share, becomes: "ivc", bed: true });

/** Capillaries all along from one vessel to another. */
function between(
  name: string,
  blood: "arterial" | "ivc",
  share: number,
  ...ways: readonly [from: string, to: string]
): Vessel {
  const [from, to] = [spots(ways[0]), spots(ways[1])] as const;
  const middle = (side: readonly Spot[]) => entryAt(side, Math.floor(side.length / 2));
  const reach = [from, to].map((side) =>
    Math.max(...side.map(([x, y]) => Math.hypot(x - middle(side)[0], y - middle(side)[1]))),
  );
  return {
    name,
    flow: "splanchnic",
    blood,
    becomes: "ivc",
    bed: true,
    width: 2 * Math.max(...reach) + 4,
    points: [middle(from), middle(to)],
    between: [from, to],
    share,
  };
}

/** Of the liver, where the portal vein's branches reach between the hepatic veins: one field, and the arteries' own way into it. */
const SINUSOIDS: readonly Vessel[] = [
  between("liverPortalBed", "ivc", 0.15, "318 640, 290 656, 262 648", "296 596, 250 592, 238 624"),
  between("liverPortalBed2", "ivc", 0.08, "384 632, 352 648, 318 640", "342 540, 306 576, 288 604"),
  between("liverPortalBed3", "ivc", 0.05, "392 606, 366 586, 346 556", "432 529, 384 529, 330 542"),
  between("liverPortalBed4", "ivc", 0.05, "436 612, 396 608, 372 590", "414 586, 420 564, 440 543"),
  between("liverPortalBed5", "ivc", 0.07, "436 614, 520 590, 606 570", "428 576, 500 548, 612 566"),
  between("liverBed", "arterial", 0.1, "390 618, 340 642, 280 648", "346 541, 306 570, 262 582"),
  between("liverBed2", "arterial", 0.05, "392 600, 366 580, 342 550", "434 530, 386 529, 334 541"),
  between("liverBed3", "arterial", 0.05, "452 608, 510 586, 566 572", "452 544, 510 551, 576 562"),
];

export const BELLY_BEDS: readonly Vessel[] = [
  ...SINUSOIDS,
  ...eachLoop((loop, number) => bed(`gutBed${number}`, 22, LOOP, loop.bed)),
  bed("gutSpleenBed", 26, 0.1, "714 624, 738 604, 756 626, 742 652, 714 640"),
  bed("rightKidneyBed", 26, 0.2, "400 722, 380 692, 352 698, 342 730, 352 762, 382 768, 400 738"),
  bed("leftKidneyBed", 26, 0.2, "600 706, 620 676, 648 682, 658 714, 648 746, 618 752, 600 722"),
];

/** Names of all that the liver's and the bowel's blood passes. */
export const namesOf = (organ: "liver" | "gut"): readonly string[] =>
  [...BELLY_ARTERIES, ...PORTAL_VEINS, ...BELLY_BEDS, ...HEPATIC_VEINS]
    .map(({ name }) => name)
    .filter((name) => (organ === "gut" ? /^(gut|portal)/ : /^(liver|hepatic)/).test(name));
