/** What the capillary's blood carries at a moment: red cells one by one, and proteins between them. */

import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { bloodAlong, isRich } from "../circuit/circuit-blood.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { GOLDEN, part, STEPS } from "../drawing/even-spread.ts";
import { bloodColour, markColour, mix, tintOf } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type Mark, type Marks, RED_CELLS } from "./marks.ts";
import { CAPILLARY, LUMEN } from "./tissue-plan.ts";
import { tissueTone } from "./tissue-tones.ts";
import { beside, headingAt } from "./tube.ts";

/** Red cells in view, and proteins in all: too large for the clefts, and drawn many times as large as they are. */
const CELLS = 7;
const PROTEINS = 24;
/** Which of the shapes each has, one after another. */
const SHAPES = [0, 1, 0, 0, 1, 0, 1] as const;
/** Part of the way from one red cell to the next in which proteins can be seen, and how near to the wall. */
const PLASMA = 0.4;
const CLEAR = 13;
/** Of the size that they are painted in. */
const [CELL_SIZE, PROTEIN_SIZE] = [0.9, 0.85];

/** Of a red cell's colour, how much is that of blood in bulk, lighter than its marks elsewhere: here each is seen close. */
const LIT = 0.7;

/** From the capillary's first half to its second. */
const BLOOD = { blood: "arterial", becomes: "ivc" } as const;

/** Part of the capillary's length by which its blood has moved on. */
const carried = ({ flows, request }: Circulation, time: number): number =>
  ((0.045 * flows.systemic) / request.body.bsa) * time;

export function showRedCells(into: Marks, circulation: Circulation, time: number, theme: Theme): void {
  const { arterial, ivc } = circulation.saturations;
  into.show(
    Array.from({ length: CELLS }, (_, i) => {
      const along = part((i + 0.5) / CELLS + carried(circulation, time));
      const saturation = arterial + (ivc - arterial) * along;
      const [x, y] = beside(CAPILLARY, along, 0);
      return {
        x,
        y,
        angle: headingAt(CAPILLARY, along),
        size: CELL_SIZE,
        shape: `${isRich(bloodAlong(BLOOD, along), saturation) ? "oxygenated" : "deoxygenated"} ${entryAt(RED_CELLS, entryAt(SHAPES, i))}`,
        colour: tintOf(mix(markColour(theme.colour, saturation), bloodColour(theme.colour, saturation), LIT)),
      } as const;
    }),
  );
}

/** They go with the blood, which the wall holds most of them in. */
export const proteinsInBlood = (circulation: Circulation, time: number, theme: Theme): readonly Mark[] =>
  Array.from({ length: PROTEINS }, (_, i) => {
    // Apart from each other over the gap, each by itself.
    const gap = Math.floor(i / CELLS);
    const out = part(i * GOLDEN) - 0.5;
    const [a, b] = [(gap + 0.5 + 0.3 * out) / (PROTEINS / CELLS), part(i * STEPS[0] * GOLDEN)];
    const along = part((i + 1 + PLASMA * (a - 0.5)) / CELLS + carried(circulation, time));
    const [x, y] = beside(CAPILLARY, along, (2 * b - 1) * (LUMEN - CLEAR));
    return proteinAt([x, y], i, theme);
  });

/** @param index any whole number: how it is turned */
export const proteinAt = ([x, y]: Spot, index: number, theme: Theme): Mark => ({
  x,
  y,
  angle: 1.3 * index,
  size: PROTEIN_SIZE,
  shape: "protein",
  colour: tintOf(tissueTone("protein", theme).body),
});
