/** Lymph vessels: initial ones, whose wall cells overlap as flaps that let water in, and the collecting one with its valves. */
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import { tissue } from "../anatomy/tones.ts";
import type { Curve, Spot } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { INITIAL_HALF, LYMPH_HALF, type TissuePlan } from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";
import { beside, fillTube, headingAt } from "./tube.ts";

/** Where along the collecting vessel its valves stand, and the part of its way that their cusps reach. */
const VALVES = [0.2, 0.47, 0.74] as const;
const CUSP = 0.052;
/** Plane units along the wall from one cell to the next, by which each overlaps it, and how far its free end stands inward. */
const CELL = 58;
const OVERLAP = 20;
const FLAP = 13;
const THICK = 5.5;
/** Plane units that an anchoring filament reaches into the tissue. */
const FILAMENT = 46;

type Width = (part: number) => number;

/** Round at its blind end, as wide as the collecting vessel where it joins that. */
const initialWidth =
  ({ length }: Curve): Width =>
  (part) => {
    const from = Math.min(1, (part * length) / INITIAL_HALF);
    const joined = Math.max(0, (part - 0.6) / 0.4);
    return (INITIAL_HALF - (INITIAL_HALF - LYMPH_HALF) * joined) * Math.sqrt(1 - (1 - from) ** 2);
  };

/** It bulges behind the cusps of each valve. */
const collectingWidth: Width = (part) =>
  LYMPH_HALF + VALVES.reduce((sum, at) => sum + 8 * Math.exp(-(((part - at - 0.035) / 0.03) ** 2)), 0);

export function paintLymph(ink: Ink, { lymph, initial }: TissuePlan, theme: Theme): void {
  const { edge, shade, body, light } = tissueTone("lymph", theme);
  const vessels = [
    ...initial.map(({ line }) => ({ line, width: initialWidth(line) })),
    { line: lymph, width: collectingWidth },
  ];
  for (const { line } of initial) paintFilaments(ink, line, tissueTone("ground", theme).edge);
  for (const [share, more, colour] of [
    [1, 3, edge],
    [1, 0, shade],
    [0.82, 0, mix(shade, body, 0.55)],
    [0.62, 0, body],
    [0.34, 0, mix(body, light, 0.55)],
  ] as const)
    for (const { line, width } of vessels) fillTube(ink, line, (part) => share * width(part) + more, colour);
  for (const { line } of initial) paintWall(ink, line, initialWidth(line), theme);
  for (const at of VALVES) paintValve(ink, lymph, at, theme);
}

/** Filaments hold the wall's cells to the fibres around, so that swelling pulls the flaps open. */
function paintFilaments(ink: Ink, line: Curve, colour: string): void {
  ink.lineWidth = 2.2;
  ink.strokeStyle = colour;
  const width = initialWidth(line);
  const count = Math.floor((0.62 * line.length) / 20);
  ink.beginPath();
  for (let k = 0; k <= count; k++)
    for (const side of [-1, 1]) {
      const part = 0.03 + (0.6 * k) / count;
      const reach = FILAMENT * (0.7 + 0.3 * Math.sin(5 * k + side));
      const [x, y] = beside(line, part, side * width(part));
      const [tx, ty] = beside(line, part - (0.1 * (4 - k)) / count / 2, side * (width(part) + reach));
      ink.moveTo(x, y);
      ink.quadraticCurveTo((x + tx) / 2 + 4, (y + ty) / 2 - 4, tx, ty);
    }
  ink.stroke();
}

/** Cells like shingles: the end of each stands a little inward of where the next begins, as a door that opens inward only. */
function paintWall(ink: Ink, line: Curve, width: Width, theme: Theme): void {
  const tone = tissueTone("lymph", theme);
  const nucleus = tissueTone("nucleus", theme);
  const count = Math.floor((0.66 * line.length - 20) / CELL);
  for (const side of [-1, 1])
    for (let k = 0; k < count; k++) {
      const [from, to] = [(16 + k * CELL) / line.length, (16 + (k + 1) * CELL + OVERLAP) / line.length];
      const at = (share: number, off: number): Spot => {
        const part = from + (to - from) * share;
        const inward = FLAP * Math.max(0, (share - 0.55) / 0.45) ** 1.6;
        return beside(line, part, side * (width(part) + 2 - inward + off));
      };
      const shares = Array.from({ length: 17 }, (_, i) => i / 16);
      const thick = (share: number) => (THICK / 2) * Math.min(1, 6 * share, 5 * (1 - share) + 0.25);
      trace(
        ink,
        [
          ...shares.map((share) => at(share, thick(share))),
          ...shares.toReversed().map((share) => at(share, -thick(share))),
        ],
        true,
      );
      ink.fillStyle = mix(tone.light, tone.shade, 0.35);
      ink.fill();
      ink.lineWidth = 1.6;
      ink.strokeStyle = tone.edge;
      ink.stroke();
      ink.beginPath();
      ink.ellipse(...at(0.36, 1), 12, 4.6, headingAt(line, from + (to - from) * 0.36), 0, 2 * Math.PI);
      ink.fillStyle = nucleus.body;
      ink.fill();
      ink.lineWidth = 1.2;
      ink.strokeStyle = nucleus.edge;
      ink.stroke();
    }
}

/** Two cusps from the wall into the stream, their pockets behind them. */
function paintValve(ink: Ink, line: Curve, at: number, theme: Theme): void {
  const tone = tissue("valve", theme);
  for (const side of [-1, 1]) {
    const [hinge, belly, free] = [
      beside(line, at, side * collectingWidth(at)),
      beside(line, at + 0.35 * CUSP, side * 0.35 * LYMPH_HALF),
      beside(line, at + CUSP, side * 0.22 * LYMPH_HALF),
    ];
    for (const [width, colour] of [
      [6.5, mix(tone.edge, tissueTone("lymph", theme).edge, 0.5)],
      [3.6, tone.body],
    ] as const) {
      ink.beginPath();
      ink.moveTo(...hinge);
      ink.quadraticCurveTo(...belly, ...free);
      ink.lineWidth = width;
      ink.strokeStyle = colour;
      ink.stroke();
    }
  }
}

/** Where drops enter an initial vessel: between two cells of its wall. @param index any whole number */
export function mouthOf(
  { line }: TissuePlan["initial"][number],
  index: number,
): { part: number; spot: Spot } {
  const count = Math.floor((0.66 * line.length - 20) / CELL);
  const part = (16 + (1 + (index % Math.max(1, count - 1))) * CELL) / line.length;
  return { part, spot: beside(line, part, (index % 2 ? 1 : -1) * INITIAL_HALF) };
}
