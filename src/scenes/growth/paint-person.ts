/** A person of an age, standing, dressed, in thousandths of the body's height, y up from between the feet; in the chest a round window. */
import type { SweepPoint } from "../../chain/running-sweep.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { paintOrgan } from "../anatomy/paint-organ.ts";
import { type Bounds, type Ink, trace } from "../anatomy/painted-sheet.ts";
import type { Tissue } from "../anatomy/tones.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { CHEST_AT } from "../circuit/chest-plan.ts";
import { EARS, FIGURE, mirrored } from "../circuit/figure-shape.ts";
import { muted } from "../circuit/paint-figure.ts";
import { buildOf } from "../circuit/proportions.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import { youthOf } from "../drawing/youth.ts";
import { tonesOf } from "../exercise/person-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { saturationsOf } from "../theme/unsolved.ts";
import { carry } from "./grown-figure.ts";
import { paintHead, smooth } from "./paint-head.ts";
import { paintWindow } from "./paint-window.ts";

/** Thousandths of the height: all that is painted. */
export const ROOM: Bounds = [-210, -20, 210, 1030];

/** What is mixed with the skin's own colour, and how much of that is left: no vessels lie on it. */
const LIT = { dark: { with: "#dcb6a3", own: 0.18 }, light: { with: "#d9a78f", own: 0.8 } } as const;

/** Folds and roundings of skin and cloth, over both. */
const SKIN_FOLDS = [
  "616 1428, 640 1412, 664 1428",
  "620 1476, 640 1486, 660 1476",
  "590 1560, 584 1640, 592 1720",
].map(spots);
const CLOTH_FOLDS = [
  "796 350, 770 410, 752 424",
  "790 640, 750 680, 700 694",
  "786 800, 740 826, 690 830",
  "500 1098, 500 1010",
  "540 1120, 600 1150, 660 1156",
].map(spots);

/** Whose shirt the others wear: of the chosen colour a paler one, which is muddy on the dark stage. */
const OTHERS = { dark: "other", light: "beside" } as const;

/** The plane's left halves: shirt, shorts, and shoe. Further out than 798 is arm. */
const SHIRT = spots(
  "500 150, 530 144, 556 122, 580 118, 616 132, 690 147, 766 165, 832 200, 872 262, 890 340, 893 440, 818 452, 802 372, 795 420, 797 500, 795 600, 788 690, 776 770, 784 850, 796 930, 798 985, 650 1000, 500 1003",
);
const SHORTS = spots(
  "500 950, 790 940, 798 1010, 798 1090, 798 1150, 797 1240, 795 1262, 660 1280, 528 1268, 516 1180, 506 1120, 500 1096",
);
const SHOE = spots(
  "590 2008, 632 2020, 676 2006, 686 2032, 712 2060, 742 2086, 752 2110, 740 2128, 700 2134, 640 2134, 606 2128, 594 2096, 590 2050, 590 2008",
);

/** Where in the chest the window is; its middle in the plane, and how wide, in mm of the plane's chest. */
const WINDOW = { middle: [522, 340], reach: 76 } as const;

/** Thousandths of the height. */
export function windowOf(years: number): { readonly at: Point; readonly radius: number } {
  const carried = carry(years);
  const [x, y] = WINDOW.middle;
  const [[left], [middle, level]] = [carried([x - WINDOW.reach * CHEST_AT.scale, y]), carried([x, y])];
  return { at: [1000 * middle, 1000 * level], radius: 1000 * (middle - left) };
}

/** @param lit the body of the state on the stage */
export function paintPerson(
  ink: Ink,
  { request, circulation }: SweepPoint,
  lit: boolean,
  theme: Theme,
): void {
  const years = request.body.ageYears;
  const carried = carry(years);
  const at = (spot: Spot): Point => {
    const [x, y] = carried(spot);
    return [1000 * x, 1000 * y];
  };
  const whole = (half: readonly Spot[]) => smooth([...half, ...mirrored(half).toReversed()].map(at));
  const skin = muted(legTissue("skin", theme), LIT[theme.name].with, LIT[theme.name].own);
  const { shirt, cloth, shoe, hair } = tonesOf(theme, lit ? "own" : OTHERS[theme.name], 0);
  for (const ear of EARS) paintOrgan(ink, smooth(ear.map(at)), skin, { depth: 3, edge: 1.6 });
  paintOrgan(ink, smooth(FIGURE.map(at)), skin, { depth: 12, edge: 1.8 });
  for (const side of [SHOE, mirrored(SHOE)])
    paintOrgan(ink, smooth(side.map(at)), clothOf(shoe), { depth: 6, edge: 1.6 });
  paintOrgan(ink, whole(SHORTS), clothOf(cloth), { depth: 14, edge: 1.6 });
  paintOrgan(ink, whole(SHIRT), clothOf(shirt), { depth: 16, edge: 1.8 });
  for (const [folds, tone] of [
    [SKIN_FOLDS, skin.edge],
    [CLOTH_FOLDS, "#00000059"],
  ] as const)
    for (const fold of folds.flatMap((each) => [each, mirrored(each)])) {
      trace(ink, smooth(fold.map(at)));
      ink.globalAlpha = 0.5;
      ink.lineWidth = 1.6;
      ink.strokeStyle = tone;
      ink.stroke();
      ink.globalAlpha = 1;
    }
  paintHead(ink, at, youthOf(buildOf(years).head), { skin, hair, dark: mix(hair, "#000000", 0.4) });
  paintWindow(ink, request, saturationsOf(circulation), windowOf(years), theme);
}

const clothOf = (tone: string): Tissue => ({
  shade: mix(tone, "#000000", 0.3),
  body: tone,
  light: mix(tone, "#ffffff", 0.2),
  edge: mix(tone, "#000000", 0.4),
});
