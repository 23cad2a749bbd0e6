/** Water on its way at a moment: drops, and arrows where it passes from one room to the next, as many and as large as the day's flows ask for. */
import { entryAt } from "../../sim/checked/present.ts";
import { GOLDEN, type Spot } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { type DayFigures, dropsFor } from "./day.ts";
import { ARROW_LONG, type Marks, tintOf } from "./marks.ts";
import { CURVES } from "./notes.ts";
import { WALL_CELLS } from "./paint-capillary.ts";
import { mouthOf } from "./paint-lymph.ts";
import { CAPILLARY, LUMEN, type TissuePlan, WALL } from "./tissue-plan.ts";
import { beside, headingAt } from "./tube.ts";

/** Drops on each of the ways at most. */
const MAX = 90;
/** Parts of a drop's way through the tissue, and on to the end of the initial lymph vessel. */
const THROUGH_TISSUE = 0.5;
const THROUGH_INITIAL = 0.68;
/** Ways that a drop makes in a second. */
const PACE = 0.09;
/** Plane units: an arrow's length for a flow of one drop; its area follows the flow. */
const ARROW = 15;
/** Plane units under which an arrow would be a speck. */
const SEEN = 8;

const part = (value: number): number => value - Math.floor(value);
const between = ([ax, ay]: Spot, [bx, by]: Spot, share: number): Spot => [
  ax + (bx - ax) * share,
  ay + (by - ay) * share,
];

/** Below one of the clefts in the capillary's lower wall. @param cleft from 1 */
const outside = (cleft: number): Spot => beside(CAPILLARY, cleft / WALL_CELLS, LUMEN + WALL + 10);
const CLEFTS = Array.from({ length: WALL_CELLS - 1 }, (_, i) => i + 1);

/** Between the cells, not in a straight line. */
function throughTissue(from: Spot, to: Spot, share: number, index: number): Spot {
  const [x, y] = between(from, to, share);
  return [x + Math.sin(Math.PI * share) * 24 * Math.sin(index * 2.4 + share * 6), y];
}

/** @param phase 0..1 of the way from the capillary into the lymph and on out of the picture */
export function toLymph(plan: TissuePlan, index: number, phase: number): Spot {
  const which = index % plan.initial.length;
  const vessel = entryAt(plan.initial, which);
  const { part: mouth, spot } = mouthOf(vessel, Math.floor(index / plan.initial.length));
  if (phase < THROUGH_TISSUE) {
    const tip = beside(vessel.line, 0, 0);
    const nearest = CLEFTS.toSorted(
      (a, b) => Math.abs(outside(a)[0] - tip[0]) - Math.abs(outside(b)[0] - tip[0]),
    );
    const from = outside(entryAt(nearest, index % 2));
    return throughTissue(from, spot, phase / THROUGH_TISSUE, index);
  }
  if (phase < THROUGH_INITIAL) {
    const share = (phase - THROUGH_TISSUE) / (THROUGH_INITIAL - THROUGH_TISSUE);
    const inside = beside(vessel.line, mouth + (1 - mouth) * share, 0);
    return between(spot, inside, Math.min(1, 4 * share));
  }
  const share = (phase - THROUGH_INITIAL) / (1 - THROUGH_INITIAL);
  return beside(plan.lymph, vessel.joins + (1 - vessel.joins) * share, 8 * Math.sin(index * 2.4));
}

/** @param level of the fluid in the cavity, plane units */
export function toCavity({ cavity }: TissuePlan, index: number, phase: number, level: number): Spot {
  const across = part((index + 1) * GOLDEN);
  const x = cavity.left + 60 + (cavity.right - cavity.left - 120) * across;
  if (phase < 0.6)
    return throughTissue(outside(entryAt(CLEFTS, 1 + (index % 3))), [x, cavity.top - 8], phase / 0.6, index);
  return [x, cavity.top - 8 + (level - cavity.top + 8) * ((phase - 0.6) / 0.4)];
}

export interface Water {
  readonly figures: DayFigures;
  /** mL/h that one drop stands for */
  readonly drop: number;
  /** y of the fluid in the cavity */
  readonly level: number;
  /** s of blood time */
  readonly time: number;
}

export function showDrops(
  into: Marks,
  plan: TissuePlan,
  { figures, drop, level, time }: Water,
  theme: Theme,
): void {
  const colour = tintOf(theme.colour.pressure);
  const on = (flow: number, place: (index: number, phase: number) => Spot) =>
    Array.from({ length: dropsFor(flow, drop, MAX) }, (_, index) => {
      const [x, y] = place(index, part(part(index * GOLDEN * 1.7) + time * PACE));
      return { x, y, angle: 0, shape: "drop", colour } as const;
    });
  into.show([
    ...on(figures.lymph, (index, phase) => toLymph(plan, index, phase)),
    ...on(figures.overflow, (index, phase) => toCavity(plan, index, phase, level)),
    ...on(figures.drained, (index, phase) => beside(plan.drain, phase, 6 * Math.sin(index * 2.4))),
  ]);
}

/** The model knows one mean pressure in the capillaries: what leaves them leaves alike at each cleft, and turns round where the flow does. */
export function showArrows(
  into: Marks,
  plan: TissuePlan,
  { figures: { filtration, lymph, overflow }, drop }: Omit<Water, "time" | "level">,
  theme: Theme,
): void {
  const [leaving, returning, over] = CURVES.map(({ colour }) => tintOf(colour(theme)));
  const down = Math.PI / 2;
  const sized = (flow: number) => (ARROW * Math.sqrt(Math.abs(flow) / drop)) / ARROW_LONG;
  const arrow = ([x, y]: Spot, angle: number, flow: number, colour = 0) => ({
    x,
    y,
    angle: flow < 0 ? angle + Math.PI : angle,
    shape: "arrow" as const,
    size: sized(flow),
    colour,
  });
  const { cavity, initial } = plan;
  const all = [
    ...CLEFTS.map((cleft) => {
      const flow = filtration / CLEFTS.length;
      const [x, y] = outside(cleft);
      return arrow([x, y + (sized(flow) * ARROW_LONG) / 2], down, flow, leaving);
    }),
    ...initial.map(({ line }) =>
      arrow(beside(line, 0.5, 0), headingAt(line, 0.5), lymph / initial.length, returning),
    ),
    arrow([(cavity.left + cavity.right) / 2, cavity.top - 34], down, overflow, over),
  ];
  into.show(all.filter(({ size }) => size * ARROW_LONG > SEEN));
}
