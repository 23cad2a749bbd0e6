/** What the capillary's blood carries at a moment: red cells one by one, and proteins between them. */

import type { Circulation } from "../../sim/circulation/answer.ts";
import { numberSetting } from "../../sim/parameters/parameters.ts";
import { RICH } from "../circuit/circuit-blood.ts";
import { GOLDEN } from "../drawing/curve-drawing.ts";
import { bloodColour, markColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type Marks, tintOf } from "./marks.ts";
import { CAPILLARY, LUMEN, type TissuePlan } from "./tissue-plan.ts";
import { beside, headingAt } from "./tube.ts";

/** Red cells in view, and proteins in all: too large for the clefts, and drawn many times as large as they are. */
const CELLS = 8;
const PROTEINS = 44;
/** Part of the way from one red cell to the next in which proteins can be seen, and how near to the wall. */
const PLASMA = 0.46;
const CLEAR = 9;

/** Of a red cell's colour, how much is that of blood in bulk, lighter than its marks elsewhere: here each is seen close. */
const LIT = 0.7;

/** Part of the capillary's length by which its blood has moved on. */
const carried = ({ flows, request }: Circulation, time: number): number =>
  ((0.045 * flows.systemic) / request.body.bsa) * time;

const part = (value: number): number => value - Math.floor(value);

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
        shape: saturation >= RICH ? "oxygenated" : "deoxygenated",
        colour: tintOf(mix(markColour(theme.colour, saturation), bloodColour(theme.colour, saturation), LIT)),
      } as const;
    }),
  );
}

/** They go with the blood; those that the wall does not hold back lie between the cells of the tissue. */
export function showProteins(
  into: Marks,
  { down }: TissuePlan,
  circulation: Circulation,
  time: number,
  { colour, name }: Theme,
): void {
  const held = numberSetting(circulation.request, "proteinReflection");
  const tint = tintOf(name === "dark" ? colour.wallEdge : colour.wall);
  into.show(
    Array.from({ length: PROTEINS }, (_, i) => {
      const [a, b] = [part(i * GOLDEN), part(i * GOLDEN * 2.3)];
      const along = part((i + 1 + PLASMA * (a - 0.5)) / CELLS + carried(circulation, time));
      const inBlood = beside(CAPILLARY, along, (2 * b - 1) * (LUMEN - CLEAR));
      const [x, y] = i < (1 - held) * PROTEINS ? [140 + 720 * a, down(180 + 150 * b)] : inBlood;
      return { x, y, angle: i, shape: "protein", colour: tint } as const;
    }),
  );
}
