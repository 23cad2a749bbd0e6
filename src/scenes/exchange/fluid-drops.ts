/** Water on its way at a moment: drops, and arrows where it passes from one room to the next, as many and as large as the day's flows ask for. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { part } from "../drawing/even-spread.ts";
import type { Box } from "../scene.ts";
import { tintOf } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { proteinAt } from "./capillary-blood.ts";
import { type DayFigures, dropsFor } from "./day.ts";
import { ARROW_LONG, type Mark, type Marks } from "./marks.ts";
import { ALBUMIN, CURVES } from "./notes.ts";
import { channel, doorOf, INSIDE } from "./paint-lymph.ts";
import { BREAK, CAPILLARY, CLEFTS, LUMEN, type TissuePlan } from "./tissue-plan.ts";
import { beside, headingAt } from "./tube.ts";
import { toDoor, toGap } from "./water-ways.ts";

/** Drops on each of the ways at most. */
const MAX = 90;
/** Parts of a drop's way through the tissue, and on to the end of the initial lymph vessel. */
const THROUGH_TISSUE = 0.5;
const THROUGH_INITIAL = 0.68;
/** Part of a drop's way to the fluid in the cavity. */
const THROUGH_WALL = 0.8;
/** Part of a vessel's half width by which drops keep aside of its middle. */
const ASIDE = 0.54;
/** Ways that a drop makes in a second. */
const PACE = 0.09;
/** Part of the drain's way at which its arrow stands. */
const DRAINED = 0.58;
/** Part of an initial vessel's way at which its arrow stands: where it has grown wide enough for one. */
const JOINING = 0.66;
/** Plane units: what a flow of one drop adds to the length that any arrow has to be seen; more flow adds with its root. */
const ARROW = 9;
const SEEN = 32;
/** mL/h under which there is no arrow. */
const NO_FLOW = 0.2;

/** A gold piece goes a little slower than water. */
const SLOWER = 0.8;
/** Parts of the collecting vessel's way at which its arrows stand: after the first of the initial vessels, and where it leaves the picture. */
const COLLECTED = [0.44, 0.8] as const;

/** Multiples of these, taken modulo 1, set drops evenly over ways and times at once (Roberts 2018, the R2 sequence). */
const [WAYS, TIMES] = [0.7548776662, 0.5698402909];

/** The cleft that a drop has come through: of all drops each cleft has the part that leaves by it. @param along flow through each */
function cleftOf(way: number, along: readonly number[]): number {
  let left = way * along.reduce((sum, flow) => sum + flow, 0);
  const cleft = along.findIndex((flow) => {
    left -= flow;
    return left < 0;
  });
  return Math.max(0, cleft);
}

export interface Tissue {
  /** of the tissue against rest */
  readonly size: number;
  /** mL/h through each of the capillary's clefts */
  readonly along: readonly number[];
}

/** @param phase 0..1 of the way from the capillary into the lymph and on out of the picture */
export function toLymph(plan: TissuePlan, { size, along }: Tissue, index: number, phase: number): Spot {
  const way = part(index * WAYS);
  const vessel = plan.initial.length - 1 - Math.floor(way * plan.initial.length);
  const { line, joins } = entryAt(plan.initial, vessel);
  if (phase < THROUGH_TISSUE)
    return toDoor(plan, { cleft: cleftOf(way, along), vessel, door: index }, size, phase / THROUGH_TISSUE);
  const aside = ASIDE * Math.sin(index * 1.7);
  if (phase < THROUGH_INITIAL) {
    const share = (phase - THROUGH_TISSUE) / (THROUGH_INITIAL - THROUGH_TISSUE);
    const { side, part: mouth } = doorOf(entryAt(plan.initial, vessel), index);
    const across = side * INSIDE + (aside * channel(joins) - side * INSIDE) * share;
    return beside(line, mouth + (1 - mouth) * share, across);
  }
  const on = joins + ((1 - joins) * (phase - THROUGH_INITIAL)) / (1 - THROUGH_INITIAL);
  return beside(plan.lymph, on, aside * channel(on));
}

/** @param level of the fluid in the cavity, plane units */
export function toCavity(
  plan: TissuePlan,
  { size, along }: Tissue,
  index: number,
  phase: number,
  level: number,
): Spot {
  const gap = index % plan.cavity.gaps.length;
  // Of those below the capillary.
  const below = along.map((flow, i) => (entryAt(CLEFTS, i).side > 0 ? flow : 0));
  const way = { cleft: cleftOf(part(index * WAYS), below), gap };
  const [x, y] = toGap(plan, way, size, Math.min(1, phase / THROUGH_WALL));
  const falls = Math.max(0, (phase - THROUGH_WALL) / (1 - THROUGH_WALL));
  const at = y + (level - y) * falls;
  // The lung lies between the tear and the fluid.
  return [x, at > plan.cavity.gap + BREAK / 2 ? Math.max(at, level) : at];
}

export interface Water extends Tissue {
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
  { figures, drop, level, time, ...tissue }: Water,
  theme: Theme,
): void {
  const colour = tintOf(theme.colour.pressure);
  const on = (flow: number, place: (index: number, phase: number) => Spot) =>
    Array.from({ length: dropsFor(flow, drop, MAX) }, (_, index) => {
      const [x, y] = place(index, part(index * TIMES + time * PACE));
      return { x, y, angle: 0, shape: "drop", colour } as const;
    });
  into.show([
    ...on(figures.lymph, (index, phase) => toLymph(plan, tissue, index, phase)),
    ...on(figures.overflow, (index, phase) => toCavity(plan, tissue, index, phase, level)),
    ...on(figures.drained, (index, phase) => beside(plan.drain, phase, 6 * Math.sin(index * 2.4))),
  ]);
}

/** What has leaked through the wall and goes with the lymph. */
export const leakedProteins = (
  plan: TissuePlan,
  { figures, drop, time, ...tissue }: Water,
  theme: Theme,
): readonly Mark[] =>
  Array.from({ length: dropsFor(figures.albumin, ALBUMIN * drop, MAX) }, (_, i) => {
    // None on the way of a drop.
    const index = i + MAX;
    return proteinAt(toLymph(plan, tissue, index, part(index * TIMES + time * PACE * SLOWER)), index, theme);
  });

/** Parts of an arrow's length that lie beyond the lining, and that it is wide. */
const BEYOND = 0.36;
const WIDE = 0.62;

/** Where a flow turns round, so does its arrow. @returns where they stand, plane units */
export function showArrows(
  into: Marks,
  plan: TissuePlan,
  { figures: { lymph, overflow, drained }, drop, along }: Omit<Water, "time" | "level" | "size">,
  theme: Theme,
): readonly Box[] {
  const [leaving, returning, over] = CURVES.map(({ colour }) => tintOf(colour(theme)));
  const down = Math.PI / 2;
  const sized = (flow: number) => (SEEN + ARROW * Math.sqrt(Math.abs(flow) / drop)) / ARROW_LONG;
  const arrow = ([x, y]: Spot, angle: number, flow: number, colour = 0) => ({
    x,
    y,
    angle: flow < 0 ? angle + Math.PI : angle,
    shape: "arrow" as const,
    size: sized(flow),
    flow,
    colour,
  });
  const { cavity, drain, initial, lymph: collecting } = plan;
  const all = [
    ...CLEFTS.map(({ at, side }, i) => {
      const flow = entryAt(along, i);
      // From the blood through the wall.
      const [x, y] = beside(CAPILLARY, at, side * (LUMEN - 10));
      return arrow([x, y + (side * sized(flow) * ARROW_LONG) / 2], side * down, flow, leaving);
    }),
    ...initial.map(({ line }) =>
      arrow(beside(line, JOINING, 0), headingAt(line, JOINING), lymph / initial.length, returning),
    ),
    ...COLLECTED.map((at) => arrow(beside(collecting, at, 0), headingAt(collecting, at), lymph, returning)),
    ...cavity.gaps.map((gap) => {
      const flow = overflow / cavity.gaps.length;
      // Out of the tissue's fluid, through the lining.
      const [x, y] = beside(cavity.lining, gap, 0);
      return arrow([x, y - (0.5 - BEYOND) * sized(flow) * ARROW_LONG], down, flow, over);
    }),
    arrow(beside(drain, DRAINED, 0), headingAt(drain, DRAINED), drained, leaving),
  ];
  const shown = all.filter(({ flow }) => Math.abs(flow) > NO_FLOW);
  into.show(shown);
  return shown.map(({ x, y, angle, size }): Box => {
    const [c, s] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
    const long = size * ARROW_LONG;
    const [width, height] = [long * (c + WIDE * s), long * (s + WIDE * c)];
    return { x: x - width / 2, y: y - height / 2, width, height };
  });
}
