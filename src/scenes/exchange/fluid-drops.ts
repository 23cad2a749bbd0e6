/** Water on its way at a moment: drops, and arrows where it passes from one room to the next, as many and as large as the day's flows ask for. */
import { entryAt } from "../../sim/checked/present.ts";
import { GOLDEN, type Spot } from "../drawing/curve-drawing.ts";
import { part } from "../drawing/even-spread.ts";
import { tintOf } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type DayFigures, dropsFor } from "./day.ts";
import { ARROW_LONG, type Marks } from "./marks.ts";
import { CURVES } from "./notes.ts";
import { channel, mouthOf } from "./paint-lymph.ts";
import { CAPILLARY, CLEFTS, INITIAL_HALF, LUMEN, type TissuePlan, WALL } from "./tissue-plan.ts";
import { beside, headingAt } from "./tube.ts";

/** Drops on each of the ways at most. */
const MAX = 90;
/** Parts of a drop's way through the tissue, and on to the end of the initial lymph vessel. */
const THROUGH_TISSUE = 0.5;
const THROUGH_INITIAL = 0.68;
/** Plane units by which a drop's way between the cells sways. */
const SWAY = 36;
/** Part of a vessel's half width by which drops keep aside of its middle. */
const ASIDE = 0.6;
/** Ways that a drop makes in a second. */
const PACE = 0.09;
/** Part of the drain's way at which its arrow stands. */
const DRAINED = 0.58;
/** Plane units: an arrow's length for a flow of one drop; its area follows the flow. */
const ARROW = 15;
/** mL/h under which there is no arrow, and plane units that any other one is long, or it would be a speck. */
const NO_FLOW = 0.5;
const SEEN = 30;

/** Two initial vessels with two sides each: drops with the same way follow each other evenly. */
const WAYS = 4;
const startOf = (index: number): number => Math.floor(index / WAYS) * GOLDEN + (index % WAYS) * 0.37;

const between = ([ax, ay]: Spot, [bx, by]: Spot, share: number): Spot => [
  ax + (bx - ax) * share,
  ay + (by - ay) * share,
];

/** Under a cleft in the capillary's lower wall, beyond the arrow through it. */
const outside = (cleft: number): Spot => beside(CAPILLARY, cleft, LUMEN + WALL + 48);

/** Between the cells, not in a straight line. */
function throughTissue(from: Spot, to: Spot, share: number, index: number): Spot {
  const [x, y] = between(from, to, share);
  return [x + Math.sin(Math.PI * share) * SWAY * Math.sin(index * 1.7 + share * 6), y];
}

/** @param phase 0..1 of the way from the capillary into the lymph and on out of the picture */
export function toLymph(plan: TissuePlan, index: number, phase: number): Spot {
  const which = index % plan.initial.length;
  const vessel = entryAt(plan.initial, which);
  const { part: mouth, left, spot } = mouthOf(vessel, Math.floor(index / plan.initial.length));
  const aside = ASIDE * Math.sin(index * 1.7);
  if (phase < THROUGH_TISSUE) {
    const from = outside(entryAt(vessel.clefts, left ? 0 : vessel.clefts.length - 1));
    return throughTissue(from, spot, phase / THROUGH_TISSUE, index);
  }
  if (phase < THROUGH_INITIAL) {
    const share = (phase - THROUGH_TISSUE) / (THROUGH_INITIAL - THROUGH_TISSUE);
    const inside = beside(vessel.line, mouth + (1 - mouth) * share, aside * INITIAL_HALF * (1 - share));
    return between(spot, inside, Math.min(1, 4 * share));
  }
  const share = (phase - THROUGH_INITIAL) / (1 - THROUGH_INITIAL);
  const along = vessel.joins + (1 - vessel.joins) * share;
  return beside(plan.lymph, along, aside * Math.min(1, 4 * share) * channel(along));
}

/** @param level of the fluid in the cavity, plane units */
export function toCavity(
  { cavity: { lining, gaps } }: TissuePlan,
  index: number,
  phase: number,
  level: number,
): Spot {
  const [x, y] = beside(lining, entryAt(gaps, index % gaps.length), 0);
  if (phase < 0.6)
    return throughTissue(outside(entryAt(CLEFTS, 1 + (index % 3))), [x, y], phase / 0.6, index);
  return [x, y + (level - y) * ((phase - 0.6) / 0.4)];
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
      const [x, y] = place(index, part(startOf(index) + time * PACE));
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
  { figures: { filtration, lymph, overflow, drained }, drop }: Omit<Water, "time" | "level">,
  theme: Theme,
): void {
  const [leaving, returning, over] = CURVES.map(({ colour }) => tintOf(colour(theme)));
  const down = Math.PI / 2;
  const sized = (flow: number) => Math.max(SEEN, ARROW * Math.sqrt(Math.abs(flow) / drop)) / ARROW_LONG;
  const arrow = ([x, y]: Spot, angle: number, flow: number, colour = 0) => ({
    x,
    y,
    angle: flow < 0 ? angle + Math.PI : angle,
    shape: "arrow" as const,
    size: sized(flow),
    flow,
    colour,
  });
  const { cavity, drain, initial } = plan;
  const all = [
    ...CLEFTS.map((cleft) => {
      const flow = filtration / CLEFTS.length;
      // From the blood through the wall.
      const [x, y] = beside(CAPILLARY, cleft, LUMEN - 10);
      return arrow([x, y + (sized(flow) * ARROW_LONG) / 2], down, flow, leaving);
    }),
    ...initial.map(({ line }) =>
      arrow(beside(line, 0.5, 0), headingAt(line, 0.5), lymph / initial.length, returning),
    ),
    ...cavity.gaps.map((gap) =>
      arrow(beside(cavity.lining, gap, 0), down, overflow / cavity.gaps.length, over),
    ),
    arrow(beside(drain, DRAINED, 0), headingAt(drain, DRAINED), drained, leaving),
  ];
  into.show(all.filter(({ flow }) => Math.abs(flow) > NO_FLOW));
}
