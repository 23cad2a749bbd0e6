/** The same person at every second effort of the curves' axis: standing, walking, running. The one of the state on the stage moves. */
import { Container, Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { traceClosed } from "../drawing/curve-drawing.ts";
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
const TALL = 0.76;
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
}

export function runners(): Runners {
  const view = new Container();
  const [others, own] = [new Graphics(), new Graphics()];
  view.addChild(others, own);
  let drawn = "";
  return {
    view,
    draw(state, axis, box, theme) {
      const { efforts, now } = state;
      const next = JSON.stringify([efforts, now, axis.toX(1), axis.toX(2), box, theme.name]);
      if (next !== drawn) drawOthers(others.clear(), state, axis, box, theme);
      drawn = next;
      drawOwn(own.clear(), state, axis, box, theme);
    },
  };
}

const nearest = ({ efforts, now }: RunnersState): number =>
  efforts.reduce((a, b) => (Math.abs(b - now) < Math.abs(a - now) ? b : a), 1);

/** 0 at rest .. 1 at the greatest effort. */
const paceOf = (effort: number, { efforts }: RunnersState): number =>
  Math.max(0, (effort - 1) / Math.max(1, Math.max(...efforts) - 1));

/** Parts of the row's height: what the ground rises from rest to the greatest effort, and what is left under it. */
const RISE = 0.14;
const UNDER = 0.03;
/** CSS px of the wedge where it begins. */
const THIN = 2;

interface Slope {
  readonly left: number;
  readonly right: number;
  /** y of the wedge's foot */
  readonly foot: number;
  /** px up for each px to the right */
  readonly rises: number;
  /** y of its top */
  readonly top: (x: number) => number;
}

/** The ground: a wedge that grows with the effort, on whose top everyone stands. */
function slopeIn({ efforts }: RunnersState, { toX }: Pick<Plotted, "toX">, box: Box): Slope {
  const most = Math.max(...efforts);
  const step = Math.abs(toX(2) - toX(1));
  const [left, right] = [toX(1) - step / 2, Math.min(toX(most) + step / 3, box.x + box.width)];
  const foot = box.y + (1 - UNDER) * box.height;
  const rises = (RISE * box.height) / (right - left);
  return { left, right, foot, rises, top: (x) => foot - THIN - rises * (x - left) };
}

/** Half a person's shadow on the ground, in heights of the person. */
const SHADOW = [0.2, 0.028] as const;

function drawShadow(ink: Graphics, x: number, { top }: Slope, height: number, fill: string): void {
  const [wide, high] = [SHADOW[0] * height, SHADOW[1] * height];
  const around = Array.from({ length: 25 }, (_, i) => {
    const turn = (2 * Math.PI * i) / 24;
    const px = x + wide * Math.cos(turn);
    return [px, top(px) + high * (1 + Math.sin(turn))];
  });
  ink.poly(around.flat(), true).fill({ color: fill, alpha: 0.8 });
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
  const { left, right, foot, top } = slope;
  const wedge = (to: number, fill: string, alpha: number) =>
    ink.poly([left, foot, to, foot, to, top(to), left, top(left)], true).fill({ color: fill, alpha });
  wedge(right, colour.hair, 0.35);
  wedge(Math.min(right, toX(state.now)), colour.accent, 1);
  const height = tallest(box, Math.abs(toX(2) - toX(1)));
  for (const effort of state.efforts) {
    const from = Math.abs(effort - nearest(state));
    if (from === 0 || from % APART !== 0) continue;
    drawShadow(ink, toX(effort), slope, height, mix(colour.hair, colour.stage, 0.3));
    drawRunner(ink, still(effort), { x: toX(effort), slope, height }, tonesOf(theme, FADED, 0), theme);
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
  const { now, time } = state;
  const gait = gaitOf(now);
  const pace = paceOf(now, state);
  const moves = !state.still && gait.stride > 0;
  const parts = moves ? runner(gait, time * (WALKING + FASTER * pace)) : still(now);
  const height = tallest(box, Math.abs(toX(2) - toX(1)));
  const slope = slopeIn(state, axis, box);
  // Its shadow is in the colour of the effort under it.
  drawShadow(ink, toX(now), slope, height, mix(theme.colour.accent, theme.colour.ink, 0.25));
  drawRunner(ink, parts, { x: toX(now), slope, height }, tonesOf(theme, 0, pace), theme);
}

function still(effort: number): ReturnType<typeof runner> {
  const gait = gaitOf(effort);
  return runner(gait, gait.running > 0.5 ? PUSHES : DOWN);
}

/** How far those who stand still draw back into the ground, and how far effort reddens the skin. */
const FADED = 0.4;
const FLUSH = 0.3;

type Tones = Readonly<Record<ReturnType<typeof runner>[number]["tone"], string>>;

/** @param faded 0..1 @param pace 0..1 */
function tonesOf(theme: Theme, faded: number, pace: number): Tones {
  const { colour } = theme;
  const { body, edge } = legTissue("skin", theme);
  const back = (tone: string) => mix(tone, colour.stage, faded);
  const far = (tone: string) => mix(tone, colour.stage, 0.35 + 0.5 * faded);
  const [bare, flushed, dark] =
    theme.name === "dark" ? ([0.8, "#e0705c", "#2a1a16"] as const) : ([0.5, "#d2452f", "#2b1710"] as const);
  const skin = mix(mix(body, edge, bare), flushed, FLUSH * pace);
  const cloth = mix(colour.ink, colour.stage, 0.25);
  const shoe = mix(colour.accent, colour.ink, 0.35);
  return {
    near: back(skin),
    far: far(skin),
    shirt: back(colour.accent),
    cloth: back(cloth),
    farCloth: far(cloth),
    hair: back(mix(edge, dark, 0.8)),
    shoe: back(shoe),
    farShoe: far(shoe),
  };
}

function drawRunner(
  ink: Graphics,
  parts: ReturnType<typeof runner>,
  { x, slope, height }: { readonly x: number; readonly slope: Slope; readonly height: number },
  tones: Tones,
  theme: Theme,
): void {
  const rim = theme.name === "dark" ? theme.colour.stageDeep : theme.colour.ink;
  const width = Math.max(1.2, 0.016 * height);
  let from = 0;
  while (from < parts.length) {
    const { tone } = entryAt(parts, from);
    const next = parts.findIndex((part, i) => i > from && part.tone !== tone);
    const limb = parts.slice(from, next < 0 ? parts.length : next);
    // All of a limb is filled over its rim, so that no line crosses at a joint.
    for (const fills of [false, true])
      for (const { outline } of limb) {
        traceClosed(
          ink,
          outline.map(([px, py]) => [x + height * px, slope.top(x + height * px) - height * py] as const),
        );
        if (fills) ink.fill({ color: tones[tone] });
        else ink.stroke({ color: mix(tones[tone], rim, 0.45), width });
      }
    from += limb.length;
  }
}
