/** The still parts of the tissue, painted once: behind its cells the interstitium with its fibres; before them fibres, lymph vessels, the serous cavity beneath with its drain. */
import type { Graphics } from "pixi.js";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import { tissue } from "../anatomy/tones.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { type Curve, curve, type Spot } from "../drawing/curve-drawing.ts";
import { GOLDEN } from "../drawing/even-spread.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { paintCutLung } from "./cut-lung.ts";
import { paintLymph } from "./paint-lymph.ts";
import { BREAK, DRAIN, LINING, LINING_CELLS, type TissuePlan, TORN_AT, WIDTH } from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";
import { beside, fillTube, headingAt, strokeBeside } from "./tube.ts";

/** Water between the cells tints what is seen there. */
const WET = 0.045;

export function paintGround(ink: Ink, { height, fibres }: TissuePlan, theme: Theme): void {
  const tone = tissueTone("ground", theme);
  const deep = ink.createLinearGradient(0, 0, 0, height);
  deep.addColorStop(0, mix(tone.body, theme.colour.pressure, WET));
  deep.addColorStop(1, mix(tone.shade, theme.colour.pressure, WET));
  ink.fillStyle = deep;
  ink.fillRect(0, 0, WIDTH, height);
  for (const line of fibres) paintBundle(ink, line, tone.light, 0.8);
}

export function paintTissue(ink: Ink, plan: TissuePlan, theme: Theme): void {
  const tone = tissueTone("ground", theme);
  plan.fibres.forEach((line, i) => {
    if (i % 3 === 1) paintBundle(ink, line, tone.light, 0.38);
  });
  paintCavity(ink, plan, theme);
  paintLymph(ink, plan, theme);
}

/** Collagen: a few strands side by side. */
function paintBundle(ink: Ink, line: Curve, colour: string, alpha: number): void {
  ink.globalAlpha = alpha;
  for (const across of [-4.5, -1.6, 1.2, 4.2])
    strokeBeside(ink, line, across, across === -1.6 ? 2.2 : 1.3, colour);
  ink.globalAlpha = 1;
}

/** Plane units between two cells of the lining. */
const GAP = 9;
/** Plane units that the channel through the body's wall leaves free around the drain. */
const CUT = 7;

/** The space around the lung: under the tissue's edge, lined by flat cells; and at the body's scale the lung over the chest wall, until fluid parts them. */
function paintCavity(ink: Ink, plan: TissuePlan, theme: Theme): void {
  const { height, cavity } = plan;
  const { lining, bottom } = cavity;
  const inside = tissueTone("cavity", theme);
  const along = Array.from({ length: 61 }, (_, i): Spot => beside(lining, i / 60, 0));
  trace(ink, [...along, [WIDTH + 60, height], [-60, height]], true);
  const depth = ink.createLinearGradient(0, cavity.top - 10, 0, bottom);
  depth.addColorStop(0, inside.shade);
  depth.addColorStop(0.25, inside.body);
  depth.addColorStop(1, inside.light);
  ink.fillStyle = depth;
  ink.fill();
  paintCutLung(ink, [cavity.gap, bottom], WIDTH, theme);
  paintBodyWall(ink, bottom, height, theme);
  paintLining(ink, lining, -1, GAP, theme);
  // At the body's scale its cells are too small to be seen.
  const serosa = tissueTone("endothelium", theme);
  strokeBeside(ink, flat(bottom, 0), 0, LINING - 1, serosa.edge);
  strokeBeside(ink, flat(bottom, 0), 0, LINING - 4, serosa.body);
}

/** Before the fluid: the drain, and the way that was cut for it. */
export function paintDrainage(ink: Ink, plan: TissuePlan, theme: Theme): void {
  paintChannel(ink, plan, theme);
  paintDrain(ink, plan.drain, theme);
}

/** Plane units from one tooth of a torn edge to the next, and their height. */
const TOOTH = 27;
const TORN = 7;

/** The picture torn across, to go on at a smaller scale: what crosses is hidden between. */
export function drawTears(ink: Graphics, { cavity }: TissuePlan, { colour }: Theme): void {
  const edge = (y: number) =>
    Array.from(
      { length: Math.ceil(WIDTH / TOOTH) + 2 },
      (_, k): Spot => [(k - 0.5) * TOOTH, y + (k % 2 ? TORN : -TORN) * (0.7 + 0.3 * Math.sin(5 * k))],
    );
  ink.clear();
  for (const top of [TORN_AT, cavity.gap]) {
    const [upper, lower] = [edge(top), edge(top + BREAK)];
    ink.poly([...upper, ...lower.toReversed()].flat(), true).fill({ color: colour.stage });
    for (const line of [upper, lower])
      ink.poly(line.flat(), false).stroke({ color: colour.inkSoft, width: 2 });
  }
}

/** From the cavity outward: parts of the wall's thickness at which muscle, fat and skin end. */
const LAYERS = [
  ["muscle", 0.52],
  ["fat", 0.8],
  ["skin", 1],
] as const;

function paintBodyWall(ink: Ink, top: number, bottom: number, theme: Theme): void {
  let from = top;
  for (const [name, end] of LAYERS) {
    const tone = name === "muscle" ? tissue("muscle", theme) : legTissue(name, theme);
    const to = top + end * (bottom - top);
    ink.fillStyle = tone.body;
    ink.fillRect(0, from, WIDTH, to - from);
    if (name === "muscle")
      for (let share = 0.25; share < 1; share += 0.12)
        strokeBeside(
          ink,
          flat(from + share * (to - from), 2),
          0,
          1.4,
          share % 0.24 < 0.12 ? tone.light : tone.shade,
        );
    strokeBeside(ink, flat(to, 0), 0, 1.6, tone.edge);
    from = to;
  }
  paintRibs(ink, top, bottom - top, theme);
}

/** Ribs cut across: their middles, plane units, clear of the drain; half their length and breadth, and below the wall's upper edge. */
const RIBS = { at: [62, 212, 362, 512, 662, 985], half: [27, 12], deep: 0.27 } as const;

/** Each with spongy bone within. */
function paintRibs(ink: Ink, top: number, high: number, theme: Theme): void {
  const { light, body, shade, edge } = legTissue("bone", theme);
  const [a, b] = RIBS.half;
  const oval = (x: number, y: number, [rx, ry]: readonly [number, number], colour: string) => {
    ink.beginPath();
    ink.ellipse(x, y, rx, ry, 0, 0, 2 * Math.PI);
    ink.fillStyle = colour;
    ink.fill();
  };
  const y = top + RIBS.deep * high;
  for (const x of RIBS.at) {
    oval(x, y, [a + 1.6, b + 1.6], edge);
    oval(x, y, [a, b], light);
    oval(x, y, [a - 5, b - 4], body);
    for (let k = 0; k < 16; k++) {
      const [out, turn] = [0.85 * Math.sqrt((k * GOLDEN) % 1), 2.4 * k];
      oval(x + out * (a - 8) * Math.cos(turn), y + out * (b - 6) * Math.sin(turn), [2.2, 1.6], shade);
    }
  }
}

/** The way that was cut through the body's wall for the drain: its walls, and the dark between them and the drain. */
function paintChannel(ink: Ink, { height, cavity: { bottom }, drain }: TissuePlan, theme: Theme): void {
  const { shade, edge } = tissue("muscle", theme);
  // It begins where the drain leaves the cavity.
  const room = (part: number) => Math.min(1, Math.max(0, (beside(drain, part, 0)[1] - bottom + 22) / 24));
  ink.save();
  ink.beginPath();
  ink.rect(0, bottom - LINING, WIDTH, height);
  ink.clip();
  for (const [more, colour] of [
    [CUT + 3, edge],
    [CUT, mix(shade, edge, 0.4)],
  ] as const)
    fillTube(ink, drain, (part) => (DRAIN + more) * room(part), colour);
  ink.restore();
}

/** Across the picture, in a slight wave. */
const flat = (y: number, wave: number): Curve =>
  curve([0, 1, 2, 3, 4].map((k): Spot => [-60 + 280 * k, y + (k % 2 ? wave : -wave)]));

/** Flat cells beside each other, each with a brush of microvilli into the cavity. @param side of the line on which the tissue is */
function paintLining(ink: Ink, line: Curve, side: 1 | -1, gap: number, theme: Theme): void {
  const tone = tissueTone("endothelium", theme);
  const nucleus = tissueTone("nucleus", theme);
  const open = gap / line.length / 2;
  ink.strokeStyle = tone.edge;
  ink.lineWidth = 1.2;
  ink.globalAlpha = 0.6;
  ink.beginPath();
  for (let k = 0; k < 14 * LINING_CELLS; k++) {
    const part = (k + 0.5) / (14 * LINING_CELLS);
    if (Math.abs(part * LINING_CELLS - Math.round(part * LINING_CELLS)) / LINING_CELLS < open * 1.5) continue;
    ink.moveTo(...beside(line, part, -side * 0.4 * LINING));
    ink.lineTo(...beside(line, part, -side * (LINING + 5)));
  }
  ink.stroke();
  ink.globalAlpha = 1;
  for (let k = 0; k < LINING_CELLS; k++) {
    const [from, to] = [k / LINING_CELLS + open, (k + 1) / LINING_CELLS - open];
    const shares = Array.from({ length: 25 }, (_, i) => i / 24);
    const face = (way: number) =>
      shares.map((share): Spot => {
        const thick = Math.min(1, 9 * share + 0.3, 9 * (1 - share) + 0.3) ** 0.5;
        const belly = Math.exp(-(((share - 0.5) / 0.16) ** 2));
        return beside(line, from + (to - from) * share, way * (thick * LINING * 0.5 + 3 * belly));
      });
    trace(ink, [...face(1), ...face(-1).toReversed()], true);
    ink.fillStyle = tone.body;
    ink.fill();
    ink.lineWidth = 2;
    ink.strokeStyle = tone.edge;
    ink.stroke();
    ink.beginPath();
    const middle = (from + to) / 2;
    ink.ellipse(...beside(line, middle, 0), 17, 5, headingAt(line, middle), 0, 2 * Math.PI);
    ink.fillStyle = nucleus.body;
    ink.fill();
    ink.lineWidth = 1.2;
    ink.strokeStyle = nucleus.edge;
    ink.stroke();
  }
}

/** A soft tube with holes near its round tip. */
function paintDrain(ink: Ink, line: Curve, theme: Theme): void {
  const { shade, body, light, edge } = tissueTone("drain", theme);
  const round = (part: number) => Math.sqrt(1 - (1 - Math.min(1, (part * line.length) / DRAIN)) ** 2);
  for (const [share, more, colour] of [
    [1, 2, edge],
    [1, 0, shade],
    [0.82, 0, body],
    [0.62, 0, light],
  ] as const)
    fillTube(ink, line, (part) => (share * DRAIN + more) * round(part), colour);
  for (const part of [0.12, 0.25, 0.38]) {
    ink.beginPath();
    ink.ellipse(...beside(line, part, 0.4 * DRAIN), 9, 3.8, headingAt(line, part), 0, 2 * Math.PI);
    ink.fillStyle = edge;
    ink.fill();
  }
}
