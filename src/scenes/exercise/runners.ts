/** The same person at rest and at every second effort of the curves' axis: standing, walking, running. The one of the state on the stage moves; it and the one whose body stands beside it wear the chosen colour. */
import { Container, Graphics } from "pixi.js";
import { buildOf } from "../circuit/proportions.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { innerBox, type Plotted } from "../drawing/plot.ts";
import { gaitOf, reachOf, runner } from "../drawing/runner.ts";
import type { Box } from "../scene.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { drawRunner, drawShadows, type Parts, type Slope, shadowOf, tonesOf } from "./person-drawing.ts";

/** Rounds of a step a second when walking, and what running at the greatest effort adds. */
const WALKING = 0.8;
const FASTER = 0.65;
/** Moments of a round at which walking and running are told apart: both feet down, and one about to push off. */
const [DOWN, PUSHES] = [0.02, 0.35];
/** A person's height at most: in heights of the row, and in widths that one more time rest takes on the axis; times rest from one to the next. */
const TALL = 0.8;
const TALL_FOR_STEP = 3;
const APART = 2;
/** How far the fastest runner reaches ahead of the hips in a whole step, in parts of the height. */
const REACH = Math.max(...Array.from({ length: 24 }, (_, i) => reachOf(runner(gaitOf(8), i / 24))));

const tallest = (box: Box, step: number): number => Math.min(TALL * box.height, TALL_FOR_STEP * step);

/** The row's part of the charts' height at most. */
const ROW = 0.27;
const stepIn = (efforts: readonly number[], box: Box, type: number): number =>
  innerBox(box, type, 0).width / Math.max(1, Math.max(...efforts) - Math.min(...efforts));

/** CSS px: as high as its tallest person asks, within the charts. */
export const rowHeight = (efforts: readonly number[], charts: Box, type: number): number =>
  Math.min(ROW * charts.height, (TALL_FOR_STEP * stepIn(efforts, charts, type)) / TALL);

/** CSS px that plots under the row must leave free at their right, so that the last runner stays within the box. */
export function roomAhead(efforts: readonly number[], box: Box, type: number): number {
  const inner = innerBox(box, type, 0);
  return Math.max(
    0,
    REACH * tallest(box, stepIn(efforts, box, type)) - (box.x + box.width - inner.x - inner.width),
  );
}

/** Half the width of what points to the curves, in heights of the row. */
const POINTER = 0.035;

interface RunnersState {
  /** `now`: effort of the state on the stage, times rest */
  readonly efforts: readonly number[];
  readonly now: number;
  /** effort of the body that stands beside that state's */
  readonly beside?: number | undefined;
  /** of age */
  readonly years: number;
  /** s of the running clock */
  readonly time: number;
  readonly still: boolean;
}

interface Runners {
  readonly view: Container;
  draw(state: RunnersState, axis: Pick<Plotted, "toX">, box: Box, theme: Theme): void;
  /** CSS px: a part of the height of who stands at an effort; null where nobody does. */
  standsAt(effort: number, part: number): readonly [number, number] | null;
}

export function runners(): Runners {
  const view = new Container();
  const [others, own] = [new Graphics(), new Graphics()];
  view.addChild(others, own);
  let drawn = "";
  let place: Runners["standsAt"] = () => null;
  return {
    view,
    standsAt: (effort, part) => (view.visible ? place(effort, part) : null),
    draw(state, axis, box, theme) {
      const { efforts, now, beside, years } = state;
      const next = JSON.stringify([efforts, now, beside, years, axis.toX(1), axis.toX(2), box, theme.name]);
      if (next !== drawn) drawOthers(others.clear(), state, axis, box, theme);
      drawn = next;
      const slope = slopeIn(state, axis, box);
      const height = tallest(box, Math.abs(axis.toX(2) - axis.toX(1)));
      const standing = [now, ...othersIn(state)];
      place = (effort, part) => {
        if (!standing.includes(effort)) return null;
        const x = axis.toX(effort);
        return [x, slope.top(x) - part * height];
      };
      drawOwn(own.clear(), state, axis, box, theme);
    },
  };
}

/** Efforts at which someone may stand: rest, and every second one from there. */
export const placesAmong = (efforts: readonly number[]): readonly number[] =>
  efforts.filter((effort) => (effort - 1) % APART === 0);

/** Efforts of the others: where the person of the state on the stage, and the one beside, leave room. */
const othersIn = ({ efforts, now, beside }: RunnersState): readonly number[] =>
  [now, beside ?? now, ...placesAmong(efforts)]
    .filter((effort, i, all) => all.slice(0, i).every((each) => Math.abs(effort - each) > 0.6 * APART))
    .slice(1);

/** 0 at rest .. 1 at the greatest effort. */
const paceOf = (effort: number): number => Math.min(1, Math.max(0, (effort - 1) / (GREATEST - 1)));
const GREATEST = 8;

/** Parts of the row's height: what the ground rises from rest to the greatest effort, and what is left under it. */
const RISE = 0.12;
const UNDER = 0.03;
/** Half of the ground's depth, on which feet stand in the middle, and its thickness where it begins, in heights of the row. */
const DEEP = 0.035;
const THIN = 0.03;

/** The ground: a wedge that grows with the effort, on whose top everyone stands. */
function slopeIn({ efforts }: RunnersState, { toX }: Pick<Plotted, "toX">, box: Box): Slope {
  const most = Math.max(...efforts);
  const step = Math.abs(toX(2) - toX(1));
  const [left, right] = [toX(1) - step / 2, Math.min(toX(most) + step / 3, box.x + box.width)];
  const foot = box.y + (1 - UNDER) * box.height;
  const rises = (RISE * box.height) / (right - left);
  const deep = DEEP * box.height;
  const least = THIN * box.height + deep;
  return { left, right, foot, rises, deep, top: (x) => foot - least - rises * (x - left) };
}

/** The ground, the effort under it, and all but the one of the state on the stage. */
export function drawOthers(
  ink: Graphics,
  state: RunnersState,
  axis: Pick<Plotted, "toX">,
  box: Box,
  theme: Theme,
): void {
  const { toX } = axis;
  const { colour } = theme;
  const slope = slopeIn(state, axis, box);
  const { left, right, foot, top, deep } = slope;
  const ground = (to: number, [from, under]: readonly [number, number | null], fill: string) => {
    const edge = under === null ? [to, foot, left, foot] : [to, top(to) + under, left, top(left) + under];
    ink.poly([left, top(left) + from, to, top(to) + from, ...edge], true).fill({ color: fill });
  };
  ground(right, [-deep, deep], mix(colour.hair, colour.stage, 0.72));
  ground(right, [deep, null], mix(colour.hair, colour.stage, 0.45));
  // Each points down to the line of the same effort in the curves.
  const half = POINTER * box.height;
  for (const effort of [state.beside ?? state.now, state.now]) {
    const at = toX(effort);
    const under = Math.max(top(at) + deep, foot - 2 * half);
    ink
      .poly([at - half, under, at + half, under, at, under + 1.7 * half], true)
      .fill({ color: effort === state.now ? colour.accent : colour.stage })
      .stroke({ color: colour.accent, width: 1.4 });
  }
  const height = tallest(box, Math.abs(toX(2) - toX(1)));
  for (const effort of othersIn(state)) {
    const [person, parts] = [{ x: toX(effort), slope, height }, still(effort, state.years)];
    drawShadows(ink, parts, person, shadowOf(theme));
    const role = effort === state.beside ? "beside" : "other";
    drawRunner(ink, parts, person, tonesOf(theme, role, paceOf(effort)), theme);
  }
}

/** The one of the state on the stage. */
export function drawOwn(
  ink: Graphics,
  state: RunnersState,
  axis: Pick<Plotted, "toX">,
  box: Box,
  theme: Theme,
): void {
  const { toX } = axis;
  const { now, time, years } = state;
  const gait = gaitOf(now);
  const pace = paceOf(now);
  const moves = !state.still && gait.stride > 0;
  const parts = moves ? runner(gait, time * (WALKING + FASTER * pace), buildOf(years)) : still(now, years);
  const height = tallest(box, Math.abs(toX(2) - toX(1)));
  const slope = slopeIn(state, axis, box);
  const person = { x: toX(now), slope, height };
  drawShadows(ink, parts, person, shadowOf(theme));
  drawRunner(ink, parts, person, tonesOf(theme, "own", pace), theme);
}

interface Small {
  readonly effort: number;
  readonly years: number;
  readonly role: "own" | "beside";
}

/** The same one small, at a spot (CSS px) of level ground. */
export function drawSmall(
  ink: Graphics,
  { effort, years, role }: Small,
  [x, y]: Spot,
  height: number,
  theme: Theme,
): void {
  const slope: Slope = { left: x, right: x, foot: y, rises: 0, top: () => y, deep: DEEP * height };
  const parts = still(effort, years);
  drawShadows(ink, parts, { x, slope, height }, shadowOf(theme));
  drawRunner(ink, parts, { x, slope, height }, tonesOf(theme, role, paceOf(effort)), theme);
}

function still(effort: number, years: number): Parts {
  const gait = gaitOf(effort);
  return runner(gait, gait.running > 0.5 ? PUSHES : DOWN, buildOf(years));
}
