/** A person on the ground: shadows under the feet, and each part with a soft round. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { smoothLine } from "../anatomy/placing.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { type Spot, traceClosed } from "../drawing/curve-drawing.ts";
import type { runner } from "../drawing/runner.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

export interface Ground {
  readonly left: number;
  readonly right: number;
  /** y of the ground's foot */
  readonly foot: number;
  /** y of its top in the middle of its depth */
  readonly top: number;
  /** px from there to its edges */
  readonly deep: number;
}

/** How far above the ground a foot's shadow is half gone, in heights of the person; how dark it is under one that stands, and under the body. */
const LIFTED = 0.035;
const SHADE = 0.5;
const BODY_SHADE = 0.16;
/** Parts of the ground's half depth: a shadow's half height, and how far beyond the sole's edge its middle lies. */
const [FLAT, BEYOND] = [0.46, 0.1];

export type Parts = ReturnType<typeof runner>;
interface Person {
  readonly x: number;
  readonly ground: Ground;
  /** px */
  readonly height: number;
}

/** Under each foot, on the ground: darker the nearer that is; and a soft one under the whole body. */
export function drawShadows(ink: Graphics, parts: Parts, { x, ground, height }: Person, fill: string): void {
  const shadow = (middle: number, half: number, flat: number, alpha: number) => {
    const around = Array.from({ length: 24 }, (_, i) => {
      const turn = (2 * Math.PI * i) / 24;
      const px = x + height * (middle + half * Math.cos(turn));
      return [px, ground.top + ground.deep * (BEYOND + flat * Math.sin(turn))];
    });
    ink.poly(around.flat(), true).fill({ color: fill, alpha });
  };
  for (const part of [1, 0.7]) shadow(0.02, 0.17 * part, FLAT * 1.5 * part, BODY_SHADE / 2);
  for (const { tone, outline } of parts) {
    if (tone !== "shoe" && tone !== "farShoe") continue;
    const low = Math.min(...outline.map(([, py]) => py));
    // Of a foot that rolls, what is near the ground.
    const near = outline.filter(([, py]) => py < low + NEAR).map(([px]) => px);
    const high = Math.max(0, low) / LIFTED;
    const [from, to] = [Math.min(...near), Math.max(...near)];
    shadow((from + to) / 2, (to - from) / 2 + 0.01, FLAT, SHADE / (1 + high) ** 2);
  }
}
/** Heights of a person within which a part of a foot darkens the ground. */
const NEAR = 0.035;

export const shadowOf = ({ name, colour }: Theme): string =>
  name === "dark" ? colour.stageDeep : colour.ink;

/** How far those who stand still draw back into the ground, and how far effort reddens the skin. */
const FADED = 0.12;
const FLUSH = 0.32;

/** Of the state on the stage, of the body beside that one's, or neither. */
type Role = "own" | "beside" | "other";

type Tones = Readonly<Record<ReturnType<typeof runner>[number]["tone"], string>>;

/** @param pace 0..1 */
export function tonesOf(theme: Theme, role: Role, pace: number): Tones {
  const { colour } = theme;
  const faded = role === "other" ? FADED : 0;
  const { body, edge } = legTissue("skin", theme);
  const [bare, flushed, dark] =
    theme.name === "dark" ? ([0.8, "#e0705c", "#2a1a16"] as const) : ([0.3, "#d2452f", "#4a2418"] as const);
  const back = (tone: string) => mix(tone, colour.stage, faded);
  const far = (tone: string) => back(mix(tone, dark, 0.22));
  const skin = mix(mix(body, edge, bare), flushed, FLUSH * pace);
  const cloth = mix(mix(colour.ink, colour.poor, 0.35), colour.stage, theme.name === "dark" ? 0.45 : 0.2);
  const shoe = mix(colour.accent, colour.ink, 0.35);
  // In the colour of what is chosen only those whose bodies are shown, paler the one beside.
  const shirts: Readonly<Record<Role, string>> = {
    own: colour.accent,
    beside: mix(colour.accent, colour.stage, 0.5),
    other: mix(colour.ink, colour.stage, 0.35),
  };
  const shirt = shirts[role];
  return {
    near: back(skin),
    far: far(skin),
    eye: back(mix(edge, dark, 0.9)),
    lip: back(mix(skin, "#a03a3a", 0.6)),
    shirt: back(shirt),
    farShirt: back(mix(shirt, dark, 0.22)),
    cloth: back(cloth),
    farCloth: far(cloth),
    hair: back(mix(edge, dark, 0.8)),
    shoe: back(shoe),
    farShoe: far(shoe),
  };
}

/** Of a part's round, from a little below its tone: part of its size or width, and how far towards the light. */
const ROUND = [
  [0.86, 0.05],
  [0.66, 0.07],
  [0.42, 0.09],
] as const;
/** Parts of a width by which the light comes from the upper left. */
const ASIDE = 0.14;

function smaller(outline: readonly Spot[], part: number): readonly Spot[] {
  const middle = (k: 0 | 1) => outline.reduce((sum, at) => sum + at[k], 0) / outline.length;
  const [mx, my] = [middle(0), middle(1)];
  return outline.map(([px, py]): Spot => [mx + part * (px - mx), my + part * (py - my)]);
}

export function drawRunner(
  ink: Graphics,
  parts: Parts,
  { x, ground, height }: Person,
  tones: Tones,
  theme: Theme,
): void {
  const rim = theme.name === "dark" ? theme.colour.stageDeep : theme.colour.ink;
  const shine = theme.name === "dark" ? theme.colour.ink : theme.colour.stage;
  const width = Math.max(0.8, 0.007 * height);
  const onGround = ([px, py]: Spot): Spot => [x + height * px, ground.top - height * py];
  let from = 0;
  while (from < parts.length) {
    const { tone } = entryAt(parts, from);
    const next = parts.findIndex((part, i) => i > from && part.tone !== tone);
    const limb = parts.slice(from, next < 0 ? parts.length : next);
    // All of a limb is filled over its rim, so that no line crosses at a joint.
    const outlines = limb.map(({ outline }) => outline.map(onGround));
    const fine = tone === "eye" || tone === "lip";
    for (const outline of fine ? [] : outlines) {
      traceClosed(ink, outline);
      ink.stroke({ color: mix(tones[tone], rim, 0.42), width: 2 * width });
    }
    for (const outline of outlines) {
      traceClosed(ink, outline);
      ink.fill({ color: mix(tones[tone], rim, 0.1) });
    }
    limb.forEach(({ crest, wide = 0 }, i) => {
      for (const [part, light] of ROUND) {
        const colour = { color: mix(tones[tone], shine, light), alpha: 0.55 };
        if (crest) {
          const [first, ...more] = smoothLine(crest.map(onGround), 6);
          if (!first) continue;
          const off = ASIDE * wide * height;
          ink.moveTo(first[0] - off, first[1] - off);
          for (const [px, py] of more) ink.lineTo(px - off, py - off);
          ink.stroke({ ...colour, width: part * wide * height, cap: "round", join: "round" });
        } else if (limb.length === 1 || tone === "hair") {
          traceClosed(ink, smaller(entryAt(outlines, i), part));
          ink.fill(colour);
        }
      }
    });
    from += limb.length;
  }
}
