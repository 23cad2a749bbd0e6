/** The still part of the tissue, painted once: the interstitium with its fibres, lymph vessels, the serous cavity with its drain. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Ink } from "../anatomy/painted-sheet.ts";
import { type Tissue, tissue } from "../anatomy/tones.ts";
import { type Curve, placeOn, type Spot } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { LYMPH_HALF, type TissuePlan, WIDTH } from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";

/** Where along the vessel its valves stand, and the part of its way that their leaflets reach. */
const VALVES = [0.2, 0.45, 0.7] as const;
const LEAFLET = 0.06;

export function paintTissue(ink: Ink, plan: TissuePlan, theme: Theme): void {
  paintGround(ink, plan, tissueTone("ground", theme));
  paintCavity(ink, plan, theme);
  const lymph = tissueTone("lymph", theme);
  const vessels = [...plan.initial, plan.lymph];
  for (const line of plan.initial) paintAnchors(ink, line, tissueTone("ground", theme).light);
  for (const [width, colour] of [
    [2 * LYMPH_HALF + 6, lymph.edge],
    [2 * LYMPH_HALF, lymph.shade],
    [1.5 * LYMPH_HALF, lymph.body],
    [0.6 * LYMPH_HALF, mix(lymph.body, lymph.light, 0.5)],
  ] as const)
    for (const line of vessels) strokeLine(ink, line, width, colour);
  for (const at of VALVES) paintValve(ink, plan.lymph, at, theme);
}

function paintGround(ink: Ink, { height, fibres }: TissuePlan, tone: Tissue): void {
  const deep = ink.createLinearGradient(0, 0, 0, height);
  deep.addColorStop(0, tone.body);
  deep.addColorStop(1, tone.shade);
  ink.fillStyle = deep;
  ink.fillRect(0, 0, WIDTH, height);
  fibres.forEach((line, i) => {
    ink.globalAlpha = 0.22 + 0.16 * (i % 3);
    strokeLine(ink, line, 2 + (i % 3) * 1.4, tone.light);
  });
  ink.globalAlpha = 1;
}

export function strokeLine(ink: Ink, line: Curve, width: number, style: string | CanvasGradient): void {
  ink.beginPath();
  line.x.forEach((x, i) => {
    ink.lineTo(x, entryAt(line.y, i));
  });
  ink.lineWidth = width;
  ink.strokeStyle = style;
  ink.stroke();
}

const out = new Float64Array(4);

/** A place `across` plane units beside the line. */
function beside(line: Curve, part: number, across: number): Spot {
  placeOn(line, part, out);
  const [x, y, dx, dy] = [entryAt(out, 0), entryAt(out, 1), entryAt(out, 2), entryAt(out, 3)];
  return [x - dy * across, y + dx * across];
}

/** Anchoring filaments, which hold an initial lymph vessel open in the tissue. */
function paintAnchors(ink: Ink, line: Curve, colour: string): void {
  ink.lineWidth = 2;
  ink.strokeStyle = colour;
  ink.globalAlpha = 0.8;
  ink.beginPath();
  for (let k = 0; k < 5; k++)
    for (const side of [-1, 1]) {
      ink.moveTo(...beside(line, 0.08 + 0.13 * k, side * LYMPH_HALF));
      ink.lineTo(...beside(line, 0.02 + 0.13 * k, side * (LYMPH_HALF + 24 + 5 * (k % 2))));
    }
  ink.stroke();
  ink.globalAlpha = 1;
}

/** Two leaflets from the wall into the stream, which let lymph go one way only. */
function paintValve(ink: Ink, line: Curve, at: number, theme: Theme): void {
  const tone = tissue("valve", theme);
  const edge = mix(tone.edge, tissueTone("lymph", theme).shade, 0.5);
  for (const side of [-1, 1]) {
    ink.beginPath();
    ink.moveTo(...beside(line, at, side * LYMPH_HALF));
    ink.quadraticCurveTo(
      ...beside(line, at + 0.6 * LEAFLET, side * LYMPH_HALF * 0.95),
      ...beside(line, at + LEAFLET, side * LYMPH_HALF * 0.22),
    );
    ink.quadraticCurveTo(
      ...beside(line, at + 0.3 * LEAFLET, side * LYMPH_HALF * 0.5),
      ...beside(line, at - 0.25 * LEAFLET, side * LYMPH_HALF),
    );
    ink.closePath();
    ink.fillStyle = tone.body;
    ink.strokeStyle = edge;
    ink.lineWidth = 2;
    ink.fill();
    ink.stroke();
  }
}

/** Where the rest collects: a sac of serous membrane, open to the tissue above, with a drain. */
function paintCavity(ink: Ink, { cavity, drain }: TissuePlan, theme: Theme): void {
  const { left, right, top, bottom } = cavity;
  const tone = tissueTone("endothelium", theme);
  const sac = (air: number) => {
    ink.beginPath();
    ink.roundRect(left - air, top - air, right - left + 2 * air, bottom - top + 2 * air, 34 + air);
  };
  sac(12);
  ink.fillStyle = tone.edge;
  ink.fill();
  for (const [air, colour] of [
    [10, tone.shade],
    [6, tone.body],
    [3, tone.shade],
    [1, theme.colour.lumen],
  ] as const) {
    sac(air);
    ink.fillStyle = colour;
    ink.fill();
  }
  // Gaps between the cells of its lining, by which fluid comes in.
  for (let k = 0; k < 5; k++) {
    ink.fillStyle = theme.colour.lumen;
    ink.fillRect(left + 60 + (k * (right - left - 120)) / 4 - 8, top - 13, 16, 20);
  }
  strokeLine(ink, drain, 30, tone.edge);
  strokeLine(ink, drain, 26, tone.body);
  strokeLine(ink, drain, 18, theme.colour.lumen);
}
