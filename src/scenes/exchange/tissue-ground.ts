/** The still part of the tissue, on a plane of its own (y down): capillary, cells, lymph vessels, and the hollow with its drain. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { type Curve, curve, placeOn, spots, traceCurve } from "../drawing/curve-drawing.ts";
import { groundColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type DayFigures, swelling } from "./day.ts";

export const PLANE = { width: 1000, height: 760 } as const;
export const CAPILLARY = curve(spots("-20 96, 160 92, 340 120, 520 108, 700 124, 860 96, 1020 100"));
export const LYMPH = curve(spots("720 470, 560 500, 380 482, 220 470, 90 420, 20 330, -20 240"));
const FINGERS = ["720 470, 800 440, 850 404", "640 490, 700 540, 770 548", "420 486, 470 440, 480 400"].map(
  (way) => curve(spots(way)),
);
export const HOLLOW = { left: 520, right: 900, top: 610, bottom: 744 } as const;
const DRAIN = curve(spots("880 716, 950 726, 1000 744, 1030 770"));
const CELLS = [
  [110, 250, 62, 34],
  [250, 236, 58, 36],
  [390, 262, 60, 34],
  [540, 240, 62, 36],
  [690, 262, 58, 34],
  [840, 244, 62, 36],
  [170, 344, 60, 36],
  [320, 352, 58, 34],
  [610, 352, 60, 34],
  [750, 350, 52, 32],
  [910, 350, 56, 36],
  [940, 480, 52, 40],
] as const;

const stroke = (
  ink: Graphics,
  line: Curve,
  style: { readonly color: string; readonly width: number; readonly alpha?: number },
): void => {
  traceCurve(ink, line);
  ink.stroke({ ...style, cap: "round", join: "round" });
};

/** Cells, hollow and lymph vessels. @param full mL that fill the hollow */
export function drawGround(ground: Graphics, figures: DayFigures, full: number, theme: Theme): void {
  const { colour } = theme;
  const size = swelling(figures.interstitialPressure);
  ground.clear();
  for (const [x, y, rx, ry] of CELLS) {
    // As the spaces fill, the cells move apart from the middle of the tissue.
    const [cx, cy] = [500 + (x - 500) * size, 330 + (y - 330) * size];
    ground
      .ellipse(cx, cy, rx, ry)
      .fill({ color: colour.backdrop })
      .stroke({ color: colour.backdropEdge, width: 2 });
    ground.circle(cx + rx * 0.2, cy, ry * 0.3).fill({ color: colour.backdropEdge, alpha: 0.7 });
  }
  drawHollow(ground, figures.collected / (full || 1), theme);
  stroke(ground, DRAIN, { color: colour.hair, width: 26 });
  stroke(ground, DRAIN, { color: colour.stage, width: 20 });
  const lymph = [LYMPH, ...FINGERS];
  for (const line of lymph)
    stroke(ground, line, { color: mix(colour.stage, colour.origin[2], 0.75), width: 34 });
  for (const line of lymph)
    stroke(ground, line, { color: mix(colour.lumen, colour.origin[2], 0.22), width: 28 });
}

/** The hollow where the rest collects. @param filled part of it that is, 0..1 */
function drawHollow(ground: Graphics, filled: number, { colour }: Theme): void {
  const { left, right, top, bottom } = HOLLOW;
  const level = bottom - 6 - (bottom - top - 30) * Math.min(1, filled);
  ground
    .roundRect(left, level, right - left, bottom - level, 14)
    .fill({ color: colour.pressure, alpha: 0.34 });
  ground
    .moveTo(left + 6, level)
    .lineTo(right - 6, level)
    .stroke({ color: colour.pressure, width: 3 });
  ground
    .moveTo(left, top)
    .lineTo(left, bottom - 20)
    .quadraticCurveTo(left, bottom, left + 20, bottom)
    .lineTo(right - 20, bottom)
    .quadraticCurveTo(right, bottom, right, bottom - 20)
    .lineTo(right, top)
    .stroke({ color: colour.hair, width: 3, cap: "round" });
}

/** Cells of the capillary's wall on each side, and the part of the way that each leaves open to the next. */
export const WALL_CELLS = 9;
const GAP = 0.011;
/** Half the lumen, and the wall's thickness. */
const HALF = 36;
const THICK = 13;

/** The capillary, whose blood gives its oxygen away along it; its wall is of cells with gaps between them, through which water passes. */
export function drawCapillary(vessels: Graphics, { saturations }: Circulation, { colour }: Theme): void {
  const from = saturations.arterial;
  const to = saturations.ivc;
  vessels.clear();
  const last = CAPILLARY.x.length - 1;
  for (let k = 0; k < PIECES; k++) {
    const [a, b] = [
      Math.round((k * last) / PIECES),
      Math.min(last, Math.round(((k + 1) * last) / PIECES) + 1),
    ];
    vessels
      .moveTo(entryAt(CAPILLARY.x, a), entryAt(CAPILLARY.y, a))
      .lineTo(entryAt(CAPILLARY.x, b), entryAt(CAPILLARY.y, b));
    vessels.stroke({ color: groundColour(colour, from + ((to - from) * k) / PIECES), width: 2 * HALF });
  }
  for (const side of [-1, 1])
    for (let k = 0; k < WALL_CELLS; k++)
      drawWallCell(vessels, [k / WALL_CELLS + GAP, (k + 1) / WALL_CELLS - GAP], side, colour);
}

/** A flat cell along the wall, thicker over its nucleus. */
function drawWallCell(
  vessels: Graphics,
  [from, to]: readonly [number, number],
  side: number,
  colour: Theme["colour"],
): void {
  const out = new Float64Array(4);
  const [outer, inner]: [number[], number[]] = [[], []];
  for (let i = 0; i <= CELL_STEPS; i++) {
    const part = i / CELL_STEPS;
    placeOn(CAPILLARY, from + (to - from) * part, out);
    const ends = Math.min(1, 8 * part, 8 * (1 - part)) ** 0.5;
    const belly = 7 * Math.exp(-(((part - 0.5) / 0.16) ** 2));
    const at = (reach: number) => [
      entryAt(out, 0) - entryAt(out, 3) * side * reach,
      entryAt(out, 1) + entryAt(out, 2) * side * reach,
    ];
    outer.push(...at(HALF + THICK / 2 + (ends * THICK) / 2 + belly));
    inner.unshift(...at(HALF + THICK / 2 - (ends * THICK) / 2));
  }
  vessels
    .poly([...outer, ...inner])
    .fill({ color: colour.wall })
    .stroke({ color: colour.wallEdge, width: 2 });
  placeOn(CAPILLARY, (from + to) / 2, out);
  const middle = HALF + THICK / 2 + 3;
  vessels
    .ellipse(
      entryAt(out, 0) - entryAt(out, 3) * side * middle,
      entryAt(out, 1) + entryAt(out, 2) * side * middle,
      17,
      6,
    )
    .fill({ color: mix(colour.wall, colour.stageDeep, 0.5) });
}

const PIECES = 40;
const CELL_STEPS = 16;
