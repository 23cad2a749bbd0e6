/** The capillary, whose blood gives its oxygen away along it: one layer of flat cells with clefts between them, through which water passes, on a basement membrane. */

import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import { type Round, roundOf } from "../anatomy/tones.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { CAPILLARY, LUMEN, WALL, WALL_CELLS, WIDTH } from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";
import { beside, fillTube, headingAt, strokeBeside } from "./tube.ts";

/** Part of the way that a cell of the wall leaves open at both ends. */
const GAP = 0.011;
const STOPS = 12;
const CELL_STEPS = 40;

export function paintCapillary(ink: Ink, { saturations }: Circulation, theme: Theme): void {
  const { arterial, ivc } = saturations;
  const tint = (read: (round: Round) => string) => {
    const tints = ink.createLinearGradient(0, 0, WIDTH, 0);
    for (let k = 0; k <= STOPS; k++)
      tints.addColorStop(k / STOPS, read(roundOf(arterial + ((ivc - arterial) * k) / STOPS, theme)));
    return tints;
  };
  const membrane = tissueTone("ground", theme);
  for (const side of [-1, 1]) {
    strokeBeside(ink, CAPILLARY, side * (LUMEN + WALL + 6), 5, membrane.edge);
    strokeBeside(ink, CAPILLARY, side * (LUMEN + WALL + 6), 2.4, membrane.light);
  }
  const bands: readonly (readonly [number, (round: Round) => string])[] = [
    [1, ({ edge, body }) => mix(edge, body, 0.4)],
    [0.86, ({ body }) => body],
    [0.66, ({ body, light }) => mix(body, light, 0.35)],
    [0.4, ({ body, light }) => mix(body, light, 0.6)],
  ];
  for (const [share, read] of bands) fillTube(ink, CAPILLARY, () => share * LUMEN, tint(read));
  for (const side of [-1, 1])
    for (let k = -1; k <= WALL_CELLS; k++) {
      // Cells on one side lie against the clefts of the other.
      const from = (k + (side < 0 ? 0.5 : 0)) / WALL_CELLS;
      paintWallCell(ink, [from + GAP, from + 1 / WALL_CELLS - GAP], side, theme);
    }
}

/** A flat cell along the wall, which bulges over its nucleus. */
function paintWallCell(
  ink: Ink,
  [from, to]: readonly [number, number],
  side: number,
  theme: Pick<Theme, "name">,
): void {
  if (to <= 0 || from >= 1) return;
  const tone = tissueTone("endothelium", theme);
  const nucleus = tissueTone("nucleus", theme);
  const on = (part: number) => from + (to - from) * part;
  const thick = (part: number) => WALL * Math.min(1, 14 * part + 0.2, 14 * (1 - part) + 0.2) ** 0.6;
  const belly = (part: number) => Math.exp(-(((part - 0.5) / 0.09) ** 2));
  const between = (low: number, high: number): readonly Spot[] => {
    const parts = Array.from({ length: CELL_STEPS + 1 }, (_, i) => i / CELL_STEPS).filter(
      (part) => on(part) >= 0 && on(part) <= 1,
    );
    const reach = (part: number, share: number) => {
      const inner = LUMEN + WALL / 2 - thick(part) / 2 - 4 * belly(part);
      return inner + share * (thick(part) + 13 * belly(part));
    };
    return [
      ...parts.map((part) => beside(CAPILLARY, on(part), side * reach(part, high))),
      ...parts.toReversed().map((part) => beside(CAPILLARY, on(part), side * reach(part, low))),
    ];
  };
  trace(ink, between(0, 1), true);
  ink.fillStyle = tone.shade;
  ink.strokeStyle = tone.edge;
  ink.lineWidth = 2;
  ink.fill();
  ink.stroke();
  trace(ink, between(0.15, 0.85), true);
  ink.fillStyle = tone.body;
  ink.fill();
  trace(ink, between(0.45, 0.75), true);
  ink.fillStyle = tone.light;
  ink.fill();
  if (on(0.5) < 0 || on(0.5) > 1) return;
  for (const [rx, ry, colour] of [
    [25, 7.4, nucleus.edge],
    [23.6, 6.2, nucleus.shade],
    [20, 4.6, nucleus.body],
    [11, 2, nucleus.light],
  ] as const) {
    ink.beginPath();
    ink.ellipse(
      ...beside(CAPILLARY, on(0.5), side * (LUMEN + WALL / 2 + 3)),
      rx,
      ry,
      headingAt(CAPILLARY, on(0.5)),
      0,
      2 * Math.PI,
    );
    ink.fillStyle = colour;
    ink.fill();
  }
}
