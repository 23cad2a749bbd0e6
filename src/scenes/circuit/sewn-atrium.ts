/** A right atrium that is the pathway itself, from outside: both great veins enter it, the upper one before the pulmonary artery, to which its roof is sewn. */
import { Container, Graphics } from "pixi.js";
import { lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { stitches } from "../anatomy/paint-graft.ts";
import { paintOrgan } from "../anatomy/paint-organ.ts";
import { laidOver, scratch } from "../anatomy/paint-tube.ts";
import {
  boundsOf,
  dash,
  eraseAlong,
  type Ink,
  servesAt,
  sheet,
  strokes,
  trace,
} from "../anatomy/painted-sheet.ts";
import { smoothLine } from "../anatomy/placing.ts";
import { rootOutline, seatOf } from "../anatomy/root-shape.ts";
import { chamberSize } from "../anatomy/standing.ts";
import { roundOf, type Tissue, threadOf, tissue } from "../anatomy/tones.ts";
import { spots } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { ARCH, CHEST_AT, chestFrame, inChest } from "./chest-plan.ts";
import { saturationOf } from "./circuit-blood.ts";
import type { Emphasis } from "./emphasis.ts";

/** mm of the chest, from plane units. */
const way = (spotted: string): readonly Point[] => spots(spotted).map(inChest);

/** Distended to the patient's right and downwards; its roof lies before the artery's lower edge. */
const OUTLINE = closedOutline(
  way(
    "466 279, 446 279, 428 278, 411 281, 398 290, 389 303, 384 318, 377 333, 372 352, 371 374, 376 396, 386 416, 401 432, 421 441, 440 447, 449 458, 466 461, 482 457, 490 446, 504 434, 514 412, 517 384, 514 350, 508 318, 500 294, 486 281",
  ),
  6,
);
/** Where it is sewn to the artery. */
const SEAM = smoothLine(way("392 299, 399 290, 411 282, 428 279, 446 280, 466 281, 486 282, 502 296"));
/** Hidden edges of the artery: behind the upper vein, and behind the roof. */
const HIDDEN = [
  smoothLine(way("452 257, 467 257, 482 257")),
  smoothLine(way("396 296, 412 290, 432 288, 452 289, 484 290")),
];
/** The groove that follows the terminal crest within. */
const GROOVE = smoothLine(way("446 300, 436 330, 431 366, 435 402, 447 438"));
/** Muscles that show through its thin wall; mm by which each bows up in its middle. */
const BOWS = 1.25;
const RIDGES = [
  "438 320, 404 304",
  "434 338, 390 326",
  "431 354, 381 350",
  "431 370, 378 374",
  "433 386, 382 396",
  "436 404, 393 416",
  "441 420, 409 430",
].map((ends) => {
  const [from, to] = way(ends) as [Point, Point];
  return smoothLine([from, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2 + BOWS], to]);
});
/** Broad and lobed, over the groove to the right ventricle, beside the aorta's root. */
const APPENDAGE = closedOutline(
  way(
    "484 392, 494 384, 506 392, 512 404, 522 410, 526 422, 534 432, 530 442, 518 442, 512 452, 501 449, 493 455, 482 446, 476 430, 477 410",
  ),
  6,
);
const COMB = ["488 398, 500 410, 516 432", "484 408, 494 424, 504 444", "481 420, 486 434, 490 448"].map(
  (each) => smoothLine(way(each)),
);
/** mm: where the great veins' fronts are whole, and where they have gone over into it; half of their widths. */
const UPPER = { whole: -9, gone: -16, at: -2, half: 4.9 } as const;
const LOWER = { whole: -57, gone: -50, at: -0.6, half: 5.4 } as const;

const BOUNDS = boundsOf([OUTLINE, APPENDAGE, ...HIDDEN], 4);
/** Its roof is held by the artery, its width by what lies beside it. */
const PIVOT: Point = [0, 0];
const HELD = 0.5;

/** mm of the aorta, drawn beneath it. */
const AORTA = (ARCH + 3) / CHEST_AT.scale;

/** How much of its colour is its thin wall's. */
const WALL = 0.3;

/** Lit as the vessels are, in its blood's colour. */
function lookOf(circulation: Circulation, theme: Theme): Tissue {
  const { edge, body, light, wall } = roundOf(saturationOf(circulation, "pulmonaryArtery"), theme);
  const flesh = tissue("atrium", theme);
  return {
    shade: mix(edge, flesh.shade, WALL),
    body: mix(body, flesh.body, WALL),
    light: mix(light, flesh.light, WALL),
    edge: mix(wall, flesh.edge, 0.5),
  };
}

function paint(ink: Ink, look: Tissue, theme: Theme): void {
  const own = scratch(ink, BOUNDS);
  paintOrgan(own, OUTLINE, look, { depth: 5, edge: 1.1 });
  own.save();
  own.globalCompositeOperation = "source-atop";
  own.globalAlpha = 0.5;
  for (const ridge of RIDGES) strokes(own, ridge, 1, [[1.1, look.light]]);
  strokes(own, GROOVE, 1, [
    [1.8, look.shade],
    [0.6, look.edge],
  ]);
  own.restore();
  strokes(own, SEAM, 1, [
    [2.2, look.edge],
    [1.5, look.light],
  ]);
  stitches(own, SEAM, 0.9, threadOf(theme));
  clearVeins(own);
  paintOrgan(own, APPENDAGE, look, { depth: 2.4, edge: 0.7 });
  own.globalAlpha = 0.6;
  for (const muscle of COMB) strokes(own, muscle, 1, [[0.9, look.light]]);
  own.globalAlpha = 1;
  laidOver(ink, own, BOUNDS, 1.6);
  for (const edge of HIDDEN) {
    trace(ink, edge);
    dash(ink, 1, mix(look.edge, theme.colour.ink, 0.2), { wide: 0.55, lengths: [1.5, 1], alpha: 1 });
  }
  clearAorta(ink);
}

/** The aorta, as the plane draws it, lies before it with its root. */
function clearAorta(ink: Ink): void {
  const anatomy = anatomyOf(chestFrame("atriopulmonary"));
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  trace(ink, lastOf(anatomy.before).line);
  ink.lineWidth = AORTA;
  ink.stroke();
  trace(ink, rootOutline(seatOf(anatomy)), true);
  ink.fill();
  ink.restore();
}

/** The veins' fronts go over into its own. */
function clearVeins(own: Ink): void {
  for (const [{ whole, gone, at, half }, end] of [
    [UPPER, 2],
    [LOWER, -62],
  ] as const)
    eraseAlong(own, [0, gone], [0, whole], [at - half, Math.min(gone, end), at + half, Math.max(gone, end)]);
}

export interface SewnAtrium {
  /** in mm of the chest, y up */
  readonly view: Container;
  /** @param density device pixels a millimetre */
  draw(
    moved: { readonly circulation: Circulation; readonly time: number; readonly still: boolean },
    density: number,
    theme: Theme,
    emphasis: Emphasis,
  ): void;
  release(): void;
}

export function sewnAtrium(): SewnAtrium {
  const view = new Container();
  const painted = sheet();
  const light = new Graphics();
  view.addChild(light, painted.view);
  let known = "";
  let fine = 0;
  return {
    view,
    draw({ circulation, time, still }, density, theme, { lit, dim }) {
      view.visible = circulation.request.stage === "atriopulmonary";
      if (!view.visible) return;
      const look = lookOf(circulation, theme);
      const key = `${theme.name} ${look.body}`;
      if (key !== known || !servesAt(fine, density)) {
        [known, fine] = [key, density];
        painted.paint(BOUNDS, density, PIVOT, (ink) => paint(ink, look, theme));
      }
      const size = still ? 1 : chamberSize(circulation, "pathway", time);
      painted.view.scale.set(1 + HELD * (size - 1), size);
      const shown = lit.has("pathway");
      light.clear();
      if (shown) light.poly(OUTLINE.flat()).stroke({ color: theme.colour.accent, width: 3, join: "round" });
      painted.view.alpha = lit.size > 0 && !shown ? 1 - dim * 0.8 : 1;
    },
    release: painted.release,
  };
}
