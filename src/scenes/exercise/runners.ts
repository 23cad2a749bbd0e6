/** The same person at rest and at every second effort of the curves' axis: standing, walking, running. The one of the state on the stage and the one whose body stands beside it move, and wear the chosen colour. */
import { Container, Graphics } from "pixi.js";
import { formatNumber } from "../../i18n/index.ts";
import { buildOf } from "../circuit/proportions.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { lettering } from "../drawing/lettering.ts";
import { innerBox, type Plotted } from "../drawing/plot.ts";
import { gaitOf, reachOf, runner } from "../drawing/runner.ts";
import type { Box } from "../scene.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { drawRunner, drawShadows, type Ground, type Parts, shadowOf, tonesOf } from "./person-drawing.ts";

/** Rounds of a step a second when walking, and what running at the greatest effort adds. */
const WALKING = 0.8;
const FASTER = 0.65;
/** Moments of a round at which walking and running are told apart: both feet down, and one about to push off. */
const [DOWN, PUSHES] = [0.02, 0.35];
/** A person's height at most: in heights of the row, and in widths that one more time rest takes on the axis; times rest from one to the next. */
const TALL = 0.9;
const TALL_FOR_STEP = 3.4;
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
  draw(state: RunnersState, axis: Pick<Plotted, "toX">, box: Box, type: number, theme: Theme): void;
  /** CSS px: a part of the height of who stands at an effort; null where nobody does. */
  standsAt(effort: number, part: number): readonly [number, number] | null;
}

export function runners(): Runners {
  const view = new Container();
  const [others, shown] = [new Graphics(), new Graphics()];
  const words = lettering();
  view.addChild(others, shown, words.view);
  let drawn = "";
  let place: Runners["standsAt"] = () => null;
  return {
    view,
    standsAt: (effort, part) => (view.visible ? place(effort, part) : null),
    draw(state, axis, box, type, theme) {
      const { efforts, now, beside, years } = state;
      const atRest = theme.say("further.exercise.rest");
      const at = [axis.toX(1), axis.toX(2), box, type, theme.name, atRest];
      const next = JSON.stringify([efforts, now, beside, years, ...at]);
      if (next !== drawn) {
        drawOthers(others.clear(), state, axis, box, theme);
        words.begin();
        for (const effort of [now, ...othersIn(state)]) {
          const bold = effort === now || effort === beside;
          const size = 0.95 * type;
          const colour = bold ? theme.colour.ink : theme.colour.inkSoft;
          const says =
            effort === 1 ? atRest : `${formatNumber(effort, Number.isInteger(effort) ? 0 : 1)}\u00d7`;
          const lines = [{ words: says, size, colour, bold }];
          words.write(
            { lines, x: axis.toX(effort), y: box.y + box.height, anchor: [0.5, 0], bare: true },
            theme,
          );
        }
        words.end();
      }
      drawn = next;
      const ground = groundIn(state, axis, box);
      const height = tallest(box, Math.abs(axis.toX(2) - axis.toX(1)));
      const standing = [now, ...othersIn(state)];
      place = (effort, part) => {
        if (!standing.includes(effort)) return null;
        const x = axis.toX(effort);
        return [x, ground.top - part * height];
      };
      drawShown(shown.clear(), state, axis, box, theme);
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

/** Part of the row's height that is left under the ground. */
const UNDER = 0.03;
/** Half of the ground's depth, on which feet stand in the middle, and its thickness, in heights of the row. */
const DEEP = 0.035;
const THIN = 0.03;

/** The ground, on whose top everyone stands: level, since nobody runs uphill. */
function groundIn({ efforts }: RunnersState, { toX }: Pick<Plotted, "toX">, box: Box): Ground {
  const most = Math.max(...efforts);
  const step = Math.abs(toX(2) - toX(1));
  const [left, right] = [toX(1) - step / 2, Math.min(toX(most) + step / 3, box.x + box.width)];
  const foot = box.y + (1 - UNDER) * box.height;
  const deep = DEEP * box.height;
  const top = foot - THIN * box.height - deep;
  return { left, right, foot, deep, top };
}

/** The ground, what points from it to the curves, and all who do not move. */
export function drawOthers(
  ink: Graphics,
  state: RunnersState,
  axis: Pick<Plotted, "toX">,
  box: Box,
  theme: Theme,
): void {
  const { toX } = axis;
  const { colour } = theme;
  const ground = groundIn(state, axis, box);
  const { left, right, foot, top, deep } = ground;
  const long = right - left;
  ink.rect(left, top - deep, long, 2 * deep).fill({ color: mix(colour.hair, colour.stage, 0.72) });
  ink.rect(left, top + deep, long, foot - top - deep).fill({ color: mix(colour.hair, colour.stage, 0.45) });
  // Each points down to the line of the same effort in the curves.
  const half = POINTER * box.height;
  for (const effort of [state.beside ?? state.now, state.now]) {
    const at = toX(effort);
    const under = Math.max(top + deep, foot - 2 * half);
    ink
      .poly([at - half, under, at + half, under, at, under + 1.7 * half], true)
      .fill({ color: effort === state.now ? colour.accent : colour.stage })
      .stroke({ color: colour.accent, width: 1.4 });
  }
  const height = tallest(box, Math.abs(toX(2) - toX(1)));
  for (const effort of othersIn(state)) {
    if (effort === state.beside) continue;
    const [person, parts] = [{ x: toX(effort), ground, height }, still(effort, state.years)];
    drawShadows(ink, parts, person, shadowOf(theme));
    drawRunner(ink, parts, person, tonesOf(theme, "other", paceOf(effort)), theme);
  }
}

/** The one of the state on the stage, and the one beside. */
export function drawShown(
  ink: Graphics,
  state: RunnersState,
  axis: Pick<Plotted, "toX">,
  box: Box,
  theme: Theme,
): void {
  const { toX } = axis;
  const { now, beside, time, years } = state;
  const height = tallest(box, Math.abs(toX(2) - toX(1)));
  const ground = groundIn(state, axis, box);
  for (const effort of beside === undefined ? [now] : [beside, now]) {
    const [gait, pace] = [gaitOf(effort), paceOf(effort)];
    const moves = !state.still && gait.stride > 0;
    const parts = moves
      ? runner(gait, time * (WALKING + FASTER * pace), buildOf(years))
      : still(effort, years);
    const person = { x: toX(effort), ground, height };
    drawShadows(ink, parts, person, shadowOf(theme));
    drawRunner(ink, parts, person, tonesOf(theme, effort === now ? "own" : "beside", pace), theme);
  }
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
  const ground: Ground = { left: x, right: x, foot: y, top: y, deep: DEEP * height };
  const parts = still(effort, years);
  drawShadows(ink, parts, { x, ground, height }, shadowOf(theme));
  drawRunner(ink, parts, { x, ground, height }, tonesOf(theme, role, paceOf(effort)), theme);
}

function still(effort: number, years: number): Parts {
  const gait = gaitOf(effort);
  return runner(gait, gait.running > 0.5 ? PUSHES : DOWN, buildOf(years));
}
