/** Vessels of the belly. The model has one stream for gut, spleen, liver and kidneys: shares are parts of it as drawn. */
import { type Vessel, vessel } from "./vessel.ts";

const ARTERY = ["splanchnic", "arterial"] as const;
const VEIN = ["splanchnic", "ivc"] as const;

/** Behind the veins: they leave the aorta at its sides, below the superior mesenteric artery. */
export const KIDNEY_ARTERIES: readonly Vessel[] = [
  vessel("rightKidneyArtery", ARTERY, 12, "530 700, 490 708, 440 742, 398 752", {
    share: 0.2,
    under: true,
    joins: "aorta",
  }),
  vessel("leftKidneyArtery", ARTERY, 12, "530 692, 560 702, 602 736", {
    share: 0.2,
    under: true,
    joins: "aorta",
  }),
];

/** The left one before the aorta. */
export const KIDNEY_VEINS: readonly Vessel[] = [
  vessel("rightKidneyVein", VEIN, 15, "398 766, 436 766, 468 752", {
    share: 0.2,
    under: true,
    joins: "belowLiver",
  }),
  vessel("leftKidneyVein", VEIN, 15, "602 750, 566 744, 530 732, 468 724", {
    share: 0.2,
    under: true,
    joins: "belowLiver",
  }),
];

/** To the liver's hilum and to the spleen from one trunk, to the bowel from another below it. */
export const BELLY_ARTERIES: readonly Vessel[] = [
  vessel("coeliacTrunk", ARTERY, 15, "531 660, 531 642", { share: 0.3, joins: "coeliac" }),
  vessel("liverArtery", ARTERY, 11, "531 646, 526 633, 508 627, 482 622, 452 612, 428 600", {
    share: 0.2,
    joins: "coeliac",
  }),
  vessel("gutSplenicArtery", ARTERY, 10, "531 646, 537 634, 566 633, 600 624, 636 630, 672 616, 716 624", {
    share: 0.1,
    joins: "coeliac",
  }),
  vessel("gutArtery", ARTERY, 14, "532 664, 556 690, 568 760, 578 832, 592 866", { share: 0.3 }),
];

/** Bowel and spleen drain to the liver's hilum, before the inferior vena cava. */
export const PORTAL_VEINS: readonly Vessel[] = [
  vessel("gutVein", VEIN, 16, "562 886, 520 868, 500 820, 498 750, 500 676", { share: 0.3, joins: "portal" }),
  vessel("gutSplenicVein", VEIN, 12, "716 640, 668 640, 612 656, 556 664, 496 662", {
    share: 0.1,
    joins: "portal",
  }),
  vessel("portal", VEIN, 20, "500 690, 492 652, 466 632, 424 614", { share: 0.4, joins: "portal" }),
];

/** They leave at the liver's back, right under the diaphragm. */
export const HEPATIC_VEINS: readonly Vessel[] = [
  vessel("hepatic", VEIN, 16, "384 538, 424 534, 466 522", { share: 0.45, joins: "cavae" }),
  vessel("hepaticLeft", VEIN, 10, "544 562, 506 552, 470 528", { share: 0.15, joins: "cavae" }),
];

const bed = (name: string, blood: "arterial" | "ivc", width: number, share: number, way: string): Vessel =>
  vessel(name, ["splanchnic", blood], width, way, { share, becomes: "ivc", bed: true });

export const BELLY_BEDS: readonly Vessel[] = [
  bed("liverPortalBed", "ivc", 92, 0.25, "424 614, 356 624, 288 604, 270 570, 318 544, 386 537"),
  bed("liverBed", "arterial", 66, 0.2, "428 602, 416 590, 404 572, 394 554, 388 538"),
  bed("liverLeftBed", "ivc", 40, 0.15, "440 608, 474 594, 514 588, 556 582, 574 572, 542 562"),
  bed("gutBed", "arterial", 56, 0.3, "590 866, 640 840, 690 868, 690 924, 640 946, 588 928, 560 886"),
  bed("gutSpleenBed", "arterial", 26, 0.1, "714 624, 738 604, 756 626, 742 652, 714 640"),
  bed("rightKidneyBed", "arterial", 24, 0.2, "400 752, 380 722, 354 730, 344 760, 354 790, 382 796, 400 766"),
  bed("leftKidneyBed", "arterial", 24, 0.2, "600 736, 620 706, 646 714, 656 744, 646 774, 618 780, 600 750"),
];
