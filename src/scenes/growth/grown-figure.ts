/** The body's own figure at an age: the grown outline carried to the proportions of a child, in parts of the body's height, y up from the ground. */
import { EARS, FEATURES, FIGURE, HEAD } from "../circuit/figure-shape.ts";
import { aged, between, FINGERS, LEVELS } from "../circuit/proportions.ts";
import type { Spot } from "../drawing/curve-drawing.ts";

/**
 * Arms have rows of their own: from the armpit they hang as far apart as shoulders and waist let them. The plane's are thin: their middle
 * line across, and by which they are drawn thicker, no further in than the trunk's side.
 */
const ARMS = { beside: 799, side: 790, armpit: 336, waist: 770, fingers: 1092 } as const;
const ARM_AT = [
  { at: 204, middle: 843, thicker: 1 },
  { at: 420, middle: 848, thicker: 1.6 },
  { at: 640, middle: 869, thicker: 1.6 },
  { at: 850, middle: 877, thicker: 1.4 },
  { at: 930, middle: 882, thicker: 1.15 },
] as const;

/**
 * Breadths in parts of the body's height, and half of what they measure in the plane, whose figure is broad to hold its vessels: head, neck,
 * its foot, shoulders with their muscle, chest, waist, hips, knees and ankles from side to side (handbooks of body measures, from memory).
 */
const BREADTHS = [
  { at: -98, half: 115, of: [0.155, 0.127, 0.104, 0.092, 0.088] },
  { at: 92, half: 67, of: [0.08, 0.072, 0.063, 0.063, 0.066] },
  { at: 134, half: 114, of: [0.083, 0.078, 0.075, 0.077, 0.08] },
  { at: 340, half: 382, of: [0.255, 0.25, 0.246, 0.253, 0.262] },
  { at: 500, half: 289, of: [0.18, 0.173, 0.172, 0.178, 0.185] },
  { at: 770, half: 258, of: [0.183, 0.168, 0.159, 0.162, 0.168] },
  { at: 1060, half: 298, of: [0.187, 0.183, 0.182, 0.19, 0.195] },
  { at: 1452, half: 211, of: [0.15, 0.146, 0.146, 0.15, 0.152] },
  { at: 1990, half: 171, of: [0.13, 0.125, 0.122, 0.122, 0.122] },
] as const;

/** Carries spots of the grown figure's plane. */
export function carry(years: number): (spot: Spot) => Spot {
  const levels = LEVELS.map(({ at, of }) => ({ at, value: aged(of, years) }));
  const wide = BREADTHS.map(({ at, half, of }) => ({ at, value: aged(of, years) / (2 * half) }));
  const heightOf = (y: number) => between(levels, y, ({ value }) => value);
  const [armpit, fingers] = [heightOf(ARMS.armpit), aged(FINGERS, years)];
  const widthOf = (y: number) => between(wide, y, ({ value }) => value);
  const [shoulder, waist] = [widthOf(ARMS.armpit), widthOf(ARMS.waist)];
  const part = (y: number, to: number) => Math.min(1, (y - ARMS.armpit) / (to - ARMS.armpit));
  return ([x, y]) => {
    const out = Math.abs(x - 500);
    if (out < ARMS.beside - 500 || y < ARM_AT[0].at) return [(x - 500) * widthOf(y), heightOf(y)];
    const middle = between(ARM_AT, y, (row) => row.middle) - 500;
    const thicker = between(ARM_AT, y, (row) => row.thicker);
    const thick = Math.sign(x - 500) * Math.max(ARMS.side - 500, middle + (out - middle) * thicker);
    if (y <= ARMS.armpit) return [thick * widthOf(y), heightOf(y)];
    const wider = shoulder + (waist - shoulder) * part(y, ARMS.waist);
    return [thick * wider, armpit + (fingers - armpit) * part(y, ARMS.fingers)];
  };
}

/** Part of the height. */
export const headOf = (years: number): number => 1 - carry(years)([500, 78])[1];
export const crotchOf = (years: number): number => carry(years)([500, 1070])[1];

export interface GrownFigure {
  /** closed, back to front */
  readonly parts: readonly (readonly Spot[])[];
  /** open, faint */
  readonly lines: readonly (readonly Spot[])[];
}

const figures = new Map<number, GrownFigure>();

/** @param years of age, which the parts of the height follow */
export function grownFigure(years: number): GrownFigure {
  const before = figures.get(years);
  if (before) return before;
  const carried = carry(years);
  const figure: GrownFigure = {
    parts: [...EARS.map((ear) => ear.slice(1)), FIGURE, HEAD].map((part) => part.map(carried)),
    lines: FEATURES.map((line) => line.map(carried)),
  };
  figures.set(years, figure);
  return figure;
}
