/** A small picture in the tissue's: where the lymph goes, up the thoracic duct to a vein at the neck, or to the atrium where the duct has been joined to that. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { wordSetting } from "../../sim/parameters/parameters.ts";
import { type Ink, strokes, trace } from "../anatomy/painted-sheet.ts";
import { roundOf } from "../anatomy/tones.ts";
import { FIGURE, HEAD } from "../circuit/figure-shape.ts";
import { skinOf, upright } from "../circuit/paint-figure.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import type { Note } from "../drawing/lettering.ts";
import type { Fit } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { LYMPH_HALF, type TissuePlan } from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";

/** Plane units: the inset's left and upper border and its width, the least height of its body, and what it keeps from the collecting vessel. */
const [LEFT, TOP, WIDE] = [18, 292, 232];
const MIN_BODY = 120;
const CLEAR = 22;
/** Lines of type under its body, and their height in sizes of type; CSS px of width that these need. */
const LINES = 3;
const LINE = 1.28;
const LEGIBLE = 8;

/** Plane of `circuit/figure-shape.ts`: what of the body is seen. */
const SEEN = { top: -240, bottom: 690 } as const;

export interface Inset extends Box {
  /** plane units of the body in it */
  readonly body: number;
}

/** Between capillary and collecting vessel, in plane units of the tissue; null where there is no room. @param type CSS px */
export function insetIn({ lymph }: TissuePlan, { scale }: Pick<Fit, "scale">, type: number): Inset | null {
  const over = Array.from(lymph.x, (x, i) => (x > LEFT && x < LEFT + WIDE ? entryAt(lymph.y, i) : Infinity));
  const room = Math.min(...over) - LYMPH_HALF - CLEAR - TOP;
  const words = ((LINES + 0.5) * LINE * type) / scale;
  const body = Math.min(room - words, WIDE);
  if (body < MIN_BODY || WIDE * scale < LEGIBLE * type) return null;
  return { x: LEFT, y: TOP, width: WIDE, height: body + words, body };
}

const DUCT = spots(
  "486 650, 488 560, 484 460, 492 370, 516 300, 532 236, 552 168, 580 132, 602 138, 606 162",
);
const [JOINS] = [lastOf(DUCT)];
/** Veins of both sides, to the superior vena cava and the arteries of the lungs; in the order in which they lie. */
const TO_LUNGS: readonly (readonly Spot[])[] = [
  spots("352 388, 420 352, 470 342, 540 338, 640 380"),
  spots("434 20, 444 120, 466 208"),
  spots("226 214, 330 176, 430 184, 466 212"),
];
const NECK: readonly (readonly Spot[])[] = [
  spots("566 20, 572 100, 604 164"),
  spots("778 214, 690 176, 604 164"),
];
const ONWARD = {
  vein: spots("604 164, 548 194, 490 208, 470 236, 468 300, 468 342"),
  // Turned down to the heart.
  atrium: spots("604 164, 596 220, 570 300, 556 400"),
} as const;
/** Widths of veins and duct there, and where on the duct its arrows stand. */
const [VEIN, WAY] = [36, 26];
const ARROWS = [2, 5] as const;

/** @param ink in plane units of the tissue, y down */
export function paintInset(
  ink: Ink,
  { x, y, width, height, body }: Inset,
  circulation: Circulation,
  theme: Theme,
): void {
  const { colour } = theme;
  ink.beginPath();
  ink.roundRect(x, y, width, height, 12);
  ink.fillStyle = colour.plate;
  ink.fill();
  ink.lineWidth = 2;
  ink.strokeStyle = colour.plateRim;
  ink.stroke();
  ink.save();
  ink.beginPath();
  ink.rect(x, y, width, body);
  ink.clip();
  const scale = body / (SEEN.bottom - SEEN.top);
  ink.translate(x + width / 2, y);
  ink.scale(scale, -scale);
  ink.translate(-500, SEEN.top);
  paintBody(ink, theme);
  paintVeins(ink, circulation, theme);
  const { edge, body: own, light } = tissueTone("lymph", theme);
  const line = upright(DUCT);
  strokes(ink, line, WAY, [
    [1, edge],
    [0.62, own],
    [0.25, light],
  ]);
  for (const at of ARROWS) paintArrow(ink, entryAt(DUCT, at), entryAt(DUCT, at + 1), colour.origin[2]);
  ink.beginPath();
  ink.arc(JOINS[0], -JOINS[1], 62, 0, 2 * Math.PI);
  ink.lineWidth = 11;
  ink.strokeStyle = colour.accent;
  ink.stroke();
  ink.restore();
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

function paintVeins(ink: Ink, circulation: Circulation, theme: Theme): void {
  const joined = wordSetting(circulation.request, "thoracicDuct") === "atrium" ? "atrium" : "vein";
  const { wall, body, light } = roundOf(circulation.saturations.svc, theme);
  const lines = [...TO_LUNGS, spots("466 208, 468 300, 468 342"), ...NECK, ONWARD[joined]].map(upright);
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

/** Where a box of the plane lies on the screen. */
export const placed = ({ x, y, scale }: Fit, box: Box): Box => ({
  x: x + scale * box.x,
  y: y + scale * box.y,
  width: scale * box.width,
  height: scale * box.height,
});

/** The words under the body in the inset. @param type CSS px */
export function insetNote(
  { inset, ...fit }: Fit & { readonly inset: Inset },
  words: string,
  type: number,
  theme: Theme,
): Note {
  const { x, y, width } = placed(fit, inset);
  return {
    lines: [{ words, size: type, colour: theme.colour.ink }],
    x: x + 0.5 * type,
    y: y + fit.scale * inset.body + 0.25 * type,
    bare: true,
    wrap: width - type,
  };
}
