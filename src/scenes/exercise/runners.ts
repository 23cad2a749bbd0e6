/** The same person at rest and at every second effort of the curves' axis: standing, walking, running. The one of the state on the stage moves. */
import { Container, Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { type Spot, traceClosed } from "../drawing/curve-drawing.ts";
import { innerBox, type Plotted } from "../drawing/plot.ts";
import { gaitOf, reachOf, runner } from "../drawing/runner.ts";
import type { Box } from "../scene.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** Rounds of a step a second when walking, and what running at the greatest effort adds. */
const WALKING = 0.8;
const FASTER = 0.65;
/** Moments of a round at which walking and running are told apart: both feet down, and one about to push off. */
const [DOWN, PUSHES] = [0.02, 0.35];
/** A person's height at most: in heights of the row, and in widths that one more time rest takes on the axis; times rest from one to the next. */
const TALL = 0.74;
const TALL_FOR_STEP = 2.7;
const APART = 2;
/** How far the fastest runner reaches ahead of the hips in a whole step, in parts of the height. */
const REACH = Math.max(...Array.from({ length: 24 }, (_, i) => reachOf(runner(gaitOf(8), i / 24))));

const tallest = (box: Box, step: number): number => Math.min(TALL * box.height, TALL_FOR_STEP * step);

/** CSS px that plots under the row must leave free at their right, so that the last runner stays within the box. */
export function roomAhead(efforts: readonly number[], box: Box, type: number): number {
  const inner = innerBox(box, type, 0);
  const step = inner.width / Math.max(1, Math.max(...efforts) - Math.min(...efforts));
  return Math.max(0, REACH * tallest(box, step) - (box.x + box.width - inner.x - inner.width));
}

interface RunnersState {
  /** `now`: effort of the state on the stage, times rest */
  readonly efforts: readonly number[];
  readonly now: number;
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
      const { efforts, now } = state;
      const next = JSON.stringify([efforts, now, axis.toX(1), axis.toX(2), box, theme.name]);
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
const places = ({ efforts }: RunnersState): readonly number[] =>
  efforts.filter((effort) => (effort - 1) % APART === 0);

/** Efforts of the others: where the person of the state on the stage leaves room. */
const othersIn = (state: RunnersState): readonly number[] =>
  places(state).filter((effort) => Math.abs(effort - state.now) > 0.6 * APART);

/** 0 at rest .. 1 at the greatest effort. */
const paceOf = (effort: number, { efforts }: RunnersState): number =>
  Math.max(0, (effort - 1) / Math.max(1, Math.max(...efforts) - 1));

/** Parts of the row's height: what the ground rises from rest to the greatest effort, and what is left under it. */
const RISE = 0.12;
const UNDER = 0.03;
/** Half of the ground's depth, on which feet stand in the middle, and its thickness where it begins, in heights of the row. */
const DEEP = 0.035;
const THIN = 0.03;

interface Slope {
  readonly left: number;
  readonly right: number;
  /** y of the wedge's foot */
  readonly foot: number;
  /** px up for each px to the right */
  readonly rises: number;
  /** y of its top in the middle of its depth */
  readonly top: (x: number) => number;
  /** px from there to its edges */
  readonly deep: number;
}

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

/** How far above the ground a foot's shadow is half gone, in heights of the person; how dark it is under one that stands. */
const LIFTED = 0.05;
const SHADE = 0.5;

type Parts = ReturnType<typeof runner>;
interface Person {
  readonly x: number;
  readonly slope: Slope;
  /** px */
  readonly height: number;
}

/** Under each foot, on the ground: darker the nearer that is. */
function drawShadows(ink: Graphics, parts: Parts, { x, slope, height }: Person, fill: string): void {
  for (const { tone, outline } of parts) {
    if (tone !== "shoe" && tone !== "farShoe") continue;
    const [xs, ys] = [outline.map(([px]) => px), outline.map(([, py]) => py)];
    const high = Math.max(0, Math.min(...ys)) / LIFTED;
    const half = (Math.max(...xs) - Math.min(...xs)) * 0.5;
    const middle = (Math.max(...xs) + Math.min(...xs)) / 2;
    const around = Array.from({ length: 24 }, (_, i) => {
      const turn = (2 * Math.PI * i) / 24;
      const px = x + height * (middle + half * Math.cos(turn));
      return [px, slope.top(px) + 0.6 * slope.deep * Math.sin(turn)];
    });
    ink.poly(around.flat(), true).fill({ color: fill, alpha: SHADE / (1 + high) });
  }
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
  const reached = Math.min(right, toX(state.now));
  ground(right, [-deep, deep], mix(colour.hair, colour.stage, 0.72));
  ground(right, [deep, null], mix(colour.hair, colour.stage, 0.45));
  if (reached > left) ground(reached, [deep, null], colour.accent);
  const height = tallest(box, Math.abs(toX(2) - toX(1)));
  for (const effort of othersIn(state)) {
    const [person, parts] = [{ x: toX(effort), slope, height }, still(effort)];
    drawShadows(ink, parts, person, shadowOf(theme));
    drawRunner(ink, parts, person, tonesOf(theme, FADED, 0), theme);
  }
}

const shadowOf = ({ name, colour }: Theme): string => (name === "dark" ? colour.stageDeep : colour.ink);

/** The one of the state on the stage. */
export function drawOwn(
  ink: Graphics,
  state: RunnersState,
  axis: Pick<Plotted, "toX">,
  box: Box,
  theme: Theme,
): void {
  const { toX } = axis;
  const { now, time } = state;
  const gait = gaitOf(now);
  const pace = paceOf(now, state);
  const moves = !state.still && gait.stride > 0;
  const parts = moves ? runner(gait, time * (WALKING + FASTER * pace)) : still(now);
  const height = tallest(box, Math.abs(toX(2) - toX(1)));
  const slope = slopeIn(state, axis, box);
  const person = { x: toX(now), slope, height };
  drawShadows(ink, parts, person, shadowOf(theme));
  drawRunner(ink, parts, person, tonesOf(theme, 0, pace), theme);
}

function still(effort: number): Parts {
  const gait = gaitOf(effort);
  return runner(gait, gait.running > 0.5 ? PUSHES : DOWN);
}

/** How far those who stand still draw back into the ground, and how far effort reddens the skin. */
const FADED = 0.12;
const FLUSH = 0.3;

type Tones = Readonly<Record<ReturnType<typeof runner>[number]["tone"], string>>;

/** @param faded 0..1 @param pace 0..1 */
function tonesOf(theme: Theme, faded: number, pace: number): Tones {
  const { colour } = theme;
  const { body, edge } = legTissue("skin", theme);
  const [bare, flushed, dark] =
    theme.name === "dark" ? ([0.8, "#e0705c", "#2a1a16"] as const) : ([0.3, "#d2452f", "#4a2418"] as const);
  const back = (tone: string) => mix(tone, colour.stage, faded);
  const far = (tone: string) => back(mix(tone, dark, 0.22));
  const skin = mix(mix(body, edge, bare), flushed, FLUSH * pace);
  const cloth = mix(mix(colour.ink, colour.poor, 0.35), colour.stage, theme.name === "dark" ? 0.45 : 0.2);
  const shoe = mix(colour.accent, colour.ink, 0.35);
  return {
    near: back(skin),
    far: far(skin),
    shirt: back(faded > 0 ? mix(colour.accent, colour.stage, 0.35) : colour.accent),
    cloth: back(cloth),
    farCloth: far(cloth),
    hair: back(mix(edge, dark, 0.8)),
    shoe: back(shoe),
    farShoe: far(shoe),
  };
}

/** Of a limb's round: part of its size, and how light. */
const ROUND = [
  [0.82, 0.1],
  [0.6, 0.2],
  [0.36, 0.32],
] as const;

function lit(outline: readonly Spot[], part: number, shift: number): readonly Spot[] {
  const middle = (k: 0 | 1) => outline.reduce((sum, at) => sum + at[k], 0) / outline.length;
  const [mx, my] = [middle(0) - shift * (1 - part), middle(1) - shift * (1 - part)];
  return outline.map(([px, py]): Spot => [mx + part * (px - mx), my + part * (py - my)]);
}

function drawRunner(
  ink: Graphics,
  parts: Parts,
  { x, slope, height }: Person,
  tones: Tones,
  theme: Theme,
): void {
  const rim = theme.name === "dark" ? theme.colour.stageDeep : theme.colour.ink;
  const shine = theme.name === "dark" ? theme.colour.ink : theme.colour.stage;
  const width = Math.max(1, 0.011 * height);
  let from = 0;
  while (from < parts.length) {
    const { tone } = entryAt(parts, from);
    const next = parts.findIndex((part, i) => i > from && part.tone !== tone);
    const limb = parts.slice(from, next < 0 ? parts.length : next);
    // All of a limb is filled over its rim, so that no line crosses at a joint.
    const placed = limb.map(({ outline }) =>
      outline.map(([px, py]): Spot => [x + height * px, slope.top(x + height * px) - height * py]),
    );
    for (const outline of placed) {
      traceClosed(ink, outline);
      ink.stroke({ color: mix(tones[tone], rim, 0.5), width });
    }
    for (const outline of placed) {
      traceClosed(ink, outline);
      ink.fill({ color: mix(tones[tone], rim, 0.08) });
    }
    // Round: lighter towards the light at the upper left.
    for (const outline of placed)
      for (const [part, light] of ROUND) {
        traceClosed(ink, lit(outline, part, width));
        ink.fill({ color: mix(tones[tone], shine, light), alpha: 0.6 });
      }
    from += limb.length;
  }
}
