/** A small picture in the tissue's: where the lymph goes, up the thoracic duct to a vein at the neck, or to the atrium where the duct has been joined to that. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { wordSetting } from "../../sim/parameters/parameters.ts";
import type { Stage } from "../../sim/parameters/request.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { type Ink, strokes, trace } from "../anatomy/painted-sheet.ts";
import { roundOf, type Tissue, tissue } from "../anatomy/tones.ts";
import { CHEST_AT, chestFrame, onPlane } from "../circuit/chest-plan.ts";
import { FIGURE, HEAD } from "../circuit/figure-shape.ts";
import { skinOf, upright } from "../circuit/paint-figure.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import type { Note } from "../drawing/lettering.ts";
import { type Fit, placed } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { BREAK, LYMPH_HALF, type TissuePlan, TORN_AT } from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";

/** Plane units: the inset's left and upper border, its width, the least height, and what it keeps from the collecting vessel. */
const [LEFT, TOP, WIDE] = [18, TORN_AT + BREAK + 10, 250];
const MIN_HIGH = 110;
const CLEAR = 24;
/** Sizes of type that it is wide at least, or its number would not be read. */
const LEGIBLE = 8;

/** Plane of `circuit/figure-shape.ts`: what of the body is seen. */
const SEEN = { top: -230, bottom: 600 } as const;

export interface Inset extends Box {
  /** where the collecting vessel leaves the picture, plane units down */
  readonly from: number;
}

/** Between capillary and collecting vessel, in plane units of the tissue; null where there is no room. @param type CSS px */
export function insetIn({ lymph }: TissuePlan, { scale }: Pick<Fit, "scale">, type: number): Inset | null {
  const within = Array.from(lymph.x, (x, i) => ({ x, y: entryAt(lymph.y, i) })).filter(
    ({ x }) => x > 0 && x < LEFT + WIDE,
  );
  const from = lastOf(within).y;
  const height = Math.min(...within.map(({ y }) => y)) - LYMPH_HALF - CLEAR - TOP;
  if (height < MIN_HIGH || WIDE * scale < LEGIBLE * type) return null;
  return { x: LEFT, y: TOP, width: WIDE, height: Math.min(height, WIDE), from };
}

/** Plane units of a body's unit in it. */
const scaleIn = ({ height }: Inset): number => height / (SEEN.bottom - SEEN.top);

const DUCT = spots(
  "510 650, 508 560, 505 470, 506 400, 518 330, 534 256, 552 178, 580 132, 602 138, 606 162",
);
const [JOINS] = [lastOf(DUCT)];
/** Veins of both sides of the neck and both arms, to the superior vena cava; in the order in which they lie. */
const UPPER: readonly (readonly Spot[])[] = [
  spots("434 20, 444 120, 466 208"),
  spots("226 214, 330 176, 430 184, 466 212"),
  spots("466 208, 468 240, 468 290"),
];
const NECK: readonly (readonly Spot[])[] = [
  spots("566 20, 572 100, 604 164"),
  spots("778 214, 690 176, 604 164"),
];
const ONWARD = {
  vein: spots("604 164, 548 194, 490 208, 468 240, 468 290"),
  // Turned down to the heart.
  atrium: spots("604 164, 592 220, 574 290, 560 366"),
} as const;
/** Arteries of the lungs, and from below the inferior vena cava; where that ends at each stage. */
const LUNG_ARTERIES = spots("352 326, 404 296, 468 288, 548 284, 634 300");
const LOWER: Readonly<Record<Stage, readonly Spot[]>> = {
  "two-ventricle": spots("462 640, 464 540, 474 440"),
  glenn: spots("462 640, 464 540, 478 440"),
  atriopulmonary: spots("462 640, 466 540, 468 430, 468 290"),
  "lateral-tunnel": spots("462 640, 466 540, 468 430, 468 290"),
  extracardiac: spots("462 640, 466 540, 468 430, 468 290"),
};
/** Widths of veins and duct there, and where on the duct its arrows stand. */
const [VEIN, WAY] = [36, 24];
const ARROWS = [1, 5] as const;

/** Part of the width where the body's middle is: beside its neck there is room for a number. */
const BODY_AT = 0.24;
/** Part of the width beside head and neck. */
const BESIDE = 0.56;
/** Plane units: round corners, and the part of the lower border from which it points to the vessel. */
const ROUND = 12;
const [FROM, TO] = [26, 62];

/** @param ink in plane units of the tissue, y down */
export function paintInset(ink: Ink, inset: Inset, circulation: Circulation, theme: Theme): void {
  const { colour } = theme;
  tracePlate(ink, inset);
  ink.fillStyle = colour.plate;
  ink.fill();
  ink.lineWidth = 2;
  ink.strokeStyle = colour.plateRim;
  ink.stroke();
  ink.save();
  const { x, y, width, height } = inset;
  ink.beginPath();
  ink.roundRect(x + 1, y + 1, width - 2, height - 2, ROUND);
  ink.clip();
  const scale = scaleIn(inset);
  ink.translate(x + BODY_AT * width, y);
  ink.scale(scale, -scale);
  ink.translate(-500, SEEN.top);
  paintBody(ink, theme);
  paintOrgans(ink, circulation, theme);
  paintVeins(ink, circulation, theme);
  const { edge, body, light } = tissueTone("lymph", theme);
  strokes(ink, upright(DUCT), WAY, [
    [1, edge],
    [0.62, body],
    [0.25, light],
  ]);
  for (const at of ARROWS) paintArrow(ink, entryAt(DUCT, at), entryAt(DUCT, at + 1), colour.origin[2]);
  ink.beginPath();
  ink.arc(JOINS[0], -JOINS[1], 58, 0, 2 * Math.PI);
  ink.lineWidth = 9;
  ink.strokeStyle = colour.accent;
  ink.stroke();
  ink.restore();
}

/** With a point in the vessel where that leaves the picture. */
function tracePlate(ink: Ink, { x, y, width, height, from }: Inset): void {
  const [right, bottom] = [x + width, y + height];
  ink.beginPath();
  ink.moveTo(x + ROUND, y);
  ink.arcTo(right, y, right, bottom, ROUND);
  ink.arcTo(right, bottom, x, bottom, ROUND);
  ink.lineTo(x + TO, bottom);
  ink.lineTo(6, from);
  ink.lineTo(x + FROM, bottom);
  ink.arcTo(x, bottom, x, y, ROUND);
  ink.arcTo(x, y, right, y, ROUND);
  ink.closePath();
}

function paintBody(ink: Ink, theme: Theme): void {
  const skin = skinOf(theme);
  for (const part of [FIGURE, HEAD]) {
    trace(ink, upright(part), true);
    ink.fillStyle = skin.body;
    ink.fill();
    ink.lineWidth = 7;
    ink.strokeStyle = skin.edge;
    ink.stroke();
  }
}

/** Lungs, heart and aorta, faintly: among them the duct lies. */
function paintOrgans(ink: Ink, { request, saturations }: Circulation, theme: Theme): void {
  const { lungs, heart, before } = anatomyOf(chestFrame(request.stage));
  const upward = (points: readonly Point[]) => upright(points.map(onPlane));
  const outlined = (outline: readonly Point[], { body, edge }: Tissue) => {
    trace(ink, upward(outline), true);
    ink.fillStyle = body;
    ink.fill();
    ink.lineWidth = 6;
    ink.strokeStyle = edge;
    ink.stroke();
  };
  for (const { outline } of lungs) outlined(outline, tissue("lung", theme));
  outlined(heart.atrium, tissue("atrium", theme));
  outlined(heart.ventricle, tissue("muscle", theme));
  const { wall, body, light } = roundOf(saturations.arterial, theme);
  for (const { line, from } of before)
    strokes(ink, upward(line), 0.9 * from * CHEST_AT.scale, [
      [1.2, wall],
      [1, body],
      [0.35, light],
    ]);
}

function paintVeins(ink: Ink, { request, saturations }: Circulation, theme: Theme): void {
  const joined = wordSetting(request, "thoracicDuct") === "atrium" ? "atrium" : "vein";
  const { wall, body, light } = roundOf(saturations.svc, theme);
  const lines = [LUNG_ARTERIES, LOWER[request.stage], ...UPPER, ...NECK, ONWARD[joined]].map(upright);
  for (const [share, tone] of [
    [1.25, wall],
    [1, body],
    [0.35, light],
  ] as const)
    for (const line of lines) strokes(ink, line, VEIN, [[share, tone]]);
}

/** Beside the duct, the way that it goes. */
function paintArrow(ink: Ink, [ax, ay]: Spot, [bx, by]: Spot, colour: string): void {
  const turn = Math.atan2(-(by - ay), bx - ax);
  ink.save();
  ink.translate((ax + bx) / 2 + 62, -(ay + by) / 2);
  ink.rotate(turn);
  trace(
    ink,
    [
      [-52, 11],
      [0, 11],
      [0, 34],
      [54, 0],
      [0, -34],
      [0, -11],
      [-52, -11],
    ],
    true,
  );
  ink.fillStyle = colour;
  ink.fill();
  ink.restore();
}

/** The pressure where the duct ends, and what else is said of it, beside the neck in the inset. @param type CSS px */
export function insetNote(
  { inset, ...fit }: Fit & { readonly inset: Inset },
  [pressure, ...more]: readonly string[],
  type: number,
  theme: Theme,
): Note {
  const { x, y, width } = placed(fit, inset);
  return {
    lines: [
      { words: pressure ?? "", size: type, colour: theme.colour.ink, bold: true },
      ...more.map((words) => ({ words, size: type, colour: theme.colour.inkSoft })),
    ],
    x: x + width - 0.5 * type,
    y: y + 0.4 * type,
    anchor: [1, 0],
    wrap: BESIDE * width,
    bare: true,
  };
}
