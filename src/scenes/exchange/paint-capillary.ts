/** The capillary, whose blood gives its oxygen away along it; its endothelium has clefts between the cells, through which water passes. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import { type Round, roundOf } from "../anatomy/tones.ts";
import { placeOn, type Spot } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { strokeLine } from "./paint-tissue.ts";
import { CAPILLARY, LUMEN, WALL, WIDTH } from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";

/** Endothelial cells on each side, and the part of the way that each leaves open at both ends. */
export const WALL_CELLS = 9;
const GAP = 0.011;
const STOPS = 12;
const CELL_STEPS = 24;

export function paintCapillary(ink: Ink, { saturations }: Circulation, theme: Theme): void {
  const { arterial, ivc } = saturations;
  const tint = (read: (round: Round) => string) => {
    const tints = ink.createLinearGradient(0, 0, WIDTH, 0);
    for (let k = 0; k <= STOPS; k++)
      tints.addColorStop(k / STOPS, read(roundOf(arterial + ((ivc - arterial) * k) / STOPS, theme)));
    return tints;
  };
  strokeLine(
    ink,
    CAPILLARY,
    2 * LUMEN,
    tint(({ edge }) => edge),
  );
  strokeLine(
    ink,
    CAPILLARY,
    1.7 * LUMEN,
    tint(({ edge, body }) => mix(edge, body, 0.55)),
  );
  strokeLine(
    ink,
    CAPILLARY,
    1.3 * LUMEN,
    tint(({ body }) => body),
  );
  strokeLine(
    ink,
    CAPILLARY,
    0.6 * LUMEN,
    tint(({ body, light }) => mix(body, light, 0.3)),
  );
  for (const side of [-1, 1])
    for (let k = 0; k < WALL_CELLS; k++)
      paintWallCell(ink, [k / WALL_CELLS + GAP, (k + 1) / WALL_CELLS - GAP], side, theme);
}

/** A flat cell along the wall, thicker over its nucleus. */
function paintWallCell(
  ink: Ink,
  [from, to]: readonly [number, number],
  side: number,
  theme: Pick<Theme, "name">,
): void {
  const tone = tissueTone("endothelium", theme);
  const nucleus = tissueTone("nucleus", theme);
  const out = new Float64Array(4);
  const at = (part: number, reach: number): Spot => {
    placeOn(CAPILLARY, from + (to - from) * part, out);
    const [x, y, dx, dy] = [entryAt(out, 0), entryAt(out, 1), entryAt(out, 2), entryAt(out, 3)];
    return [x - dy * side * reach, y + dx * side * reach];
  };
  const thick = (part: number) => WALL * Math.min(1, 8 * part, 8 * (1 - part)) ** 0.5;
  const belly = (part: number) => 9 * Math.exp(-(((part - 0.5) / 0.16) ** 2));
  const between = (low: number, high: number): readonly Spot[] => {
    const parts = Array.from({ length: CELL_STEPS + 1 }, (_, i) => i / CELL_STEPS);
    const reach = (part: number, share: number) =>
      LUMEN + WALL / 2 - thick(part) / 2 + share * (thick(part) + belly(part));
    return [
      ...parts.map((part) => at(part, reach(part, high))),
      ...parts.toReversed().map((part) => at(part, reach(part, low))),
    ];
  };
  trace(ink, between(0, 1), true);
  ink.fillStyle = tone.shade;
  ink.strokeStyle = tone.edge;
  ink.lineWidth = 2;
  ink.fill();
  ink.stroke();
  trace(ink, between(0.2, 0.9), true);
  ink.fillStyle = tone.body;
  ink.fill();
  trace(ink, between(0.5, 0.75), true);
  ink.fillStyle = tone.light;
  ink.fill();
  const [x, y] = at(0.5, LUMEN + WALL / 2 + 4);
  for (const [rx, ry, colour] of [
    [20, 8, nucleus.shade],
    [17, 6, nucleus.body],
    [9, 2.4, nucleus.light],
  ] as const) {
    ink.beginPath();
    ink.ellipse(x, y, rx, ry, Math.atan2(entryAt(out, 3), entryAt(out, 2)), 0, 2 * Math.PI);
    ink.fillStyle = colour;
    ink.fill();
  }
}
