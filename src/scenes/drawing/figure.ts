/** A person as a plain shape: head, trunk and limbs between joints, in parts of the body's height above the ground. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Spot } from "./curve-drawing.ts";

interface Limb {
  readonly through: readonly Spot[];
  /** half widths at its first and last joint */
  readonly half: readonly [from: number, to: number];
}

export interface Figure {
  readonly head: { readonly at: Spot; readonly radius: number };
  /** back to front */
  readonly limbs: readonly Limb[];
}

export interface FigurePlace {
  /** CSS px: the middle of the feet, the ground, the body's height */
  readonly x: number;
  readonly ground: number;
  readonly height: number;
}

/** Radius of the head of an adult, and what a child's has more (five years: a sixth of the height, adults: between a seventh and an eighth; common in drawing). */
const HEAD = 0.066;
const YOUNG = 0.019;
const GROWN = 18;
/** Where an adult's legs begin, and how much lower a child's do: sitting height is 0.52 of the height in adults, 0.56 at five years (common in growth charts, from memory). */
const HIP = 0.485;
const SHORTER = 0.045;

/** 1 at five years, 0 when grown. */
const youthOf = (years: number): number => Math.min(1, Math.max(0, (GROWN - years) / 13));
const neckOf = (years: number): number => 1 - 2.1 * (HEAD + YOUNG * youthOf(years));
/** Where the heart lies. */
export const chestOf = (years: number): number => neckOf(years) - 0.135;

/** Seen from the front, at rest. @param years of age, which the parts of the height follow */
export function standing(years: number): Figure {
  const youth = youthOf(years);
  const radius = HEAD + YOUNG * youth;
  const neck = neckOf(years);
  const shoulder = neck - 0.035;
  const hip = HIP - SHORTER * youth;
  const elbow = shoulder - 0.21 + 0.025 * youth;
  const hand = elbow - 0.14 + 0.02 * youth;
  // Shoulders grow wider than hips.
  const broad = 0.077 - 0.009 * youth;
  const both = (limb: (side: 1 | -1) => Limb): Limb[] => [limb(-1), limb(1)];
  return {
    head: { at: [0, 1 - radius], radius },
    limbs: [
      ...both((side) => ({
        through: [
          [0.053 * side, hip - 0.015],
          [0.064 * side, 0.54 * hip],
          [0.068 * side, 0.03],
        ],
        half: [0.053, 0.026],
      })),
      ...both((side) => ({
        through: [
          [0.068 * side, 0.02],
          [0.093 * side, 0.014],
        ],
        half: [0.02, 0.014],
      })),
      ...both((side) => ({
        through: [
          [(broad + 0.04) * side, shoulder - 0.02],
          [(broad + 0.075) * side, elbow],
          [(broad + 0.09) * side, hand],
        ],
        half: [0.036, 0.022],
      })),
      {
        through: [
          [-broad, shoulder - 0.045],
          [broad, shoulder - 0.045],
        ],
        half: [0.06, 0.06],
      },
      {
        through: [
          [0, shoulder - 0.05],
          [0, hip + 0.01],
        ],
        half: [broad + 0.036, 0.094],
      },
      {
        through: [
          [0, neck + 0.03],
          [0, shoulder],
        ],
        half: [0.034, 0.045],
      },
    ],
  };
}

const THIGH = 0.245;
const SHIN = 0.235;
const FOOT = 0.085;
const SOLE = 0.022;

/**
 * Seen from the side, going to the right.
 * @param pace  0 stands, 1 runs as hard as the sweep of effort goes
 * @param phase radians of the step's round
 */
export function going(pace: number, phase: number): Figure {
  const lean = 0.2 * pace;
  const swing = pace === 0 ? 0 : 0.3 + 0.55 * pace;
  const ahead = ([x, y]: Spot, length: number, angle: number): Spot => [
    x + length * Math.sin(angle),
    y - length * Math.cos(angle),
  ];
  const leg = (round: number): readonly [hip: Spot, knee: Spot, ankle: Spot, toes: Spot] => {
    const hip: Spot = [0, 0.5];
    const thigh = swing * Math.sin(round) + 0.18 * pace;
    // The knee bends while the leg comes forward.
    const knee = swing * (0.2 + (0.5 + 1.1 * pace) * Math.max(0, Math.cos(round)));
    const joint = ahead(hip, THIGH, thigh);
    const ankle = ahead(joint, SHIN, thigh - knee);
    return [hip, joint, ankle, ahead(ankle, FOOT, thigh - knee + 1.5)];
  };
  const [near, far] = [leg(phase), leg(phase + Math.PI)];
  // Whichever foot is lower stands on the ground.
  const lift = SOLE - Math.min(...[...near, ...far].map(([, y]) => y));
  const risen = (points: readonly Spot[]): Spot[] => points.map(([x, y]) => [x, y + lift]);
  const shoulder: Spot = [0.29 * Math.sin(lean), 0.5 + 0.29 * Math.cos(lean)];
  const arm = (round: number): Limb => {
    const upper = -0.9 * swing * Math.sin(round);
    const elbow = ahead(shoulder, 0.16, upper);
    const hand = ahead(elbow, 0.15, upper + 0.15 + 1.35 * pace);
    return { through: risen([shoulder, elbow, hand]), half: [0.032, 0.02] };
  };
  const legLimbs = ([hip, knee, ankle, toes]: ReturnType<typeof leg>): Limb[] => [
    { through: risen([hip, knee, ankle]), half: [0.056, 0.026] },
    { through: risen([ankle, toes]), half: [0.022, 0.014] },
  ];
  return {
    head: { at: entryAt(risen([[shoulder[0] + 0.05 * pace + 0.012, shoulder[1] + 0.128]]), 0), radius: HEAD },
    limbs: [
      arm(phase + Math.PI),
      ...legLimbs(far),
      ...legLimbs(near),
      { through: risen([shoulder, [0, 0.5]]), half: [0.066, 0.062] },
      { through: risen([[shoulder[0] + 0.02 * pace, shoulder[1] + 0.06], shoulder]), half: [0.032, 0.045] },
      arm(phase),
    ],
  };
}

/** How far it reaches to the right of the middle of its feet, in parts of its height. */
export const reachOf = ({ head, limbs }: Figure): number =>
  Math.max(
    head.at[0] + head.radius,
    ...limbs.flatMap(({ through, half }) => through.map(([x]) => x + Math.max(...half))),
  );

/** @param wider CSS px by which it is drawn beyond its edge: for an edge, drawn before */
export function drawFigure(
  ink: Graphics,
  { head, limbs }: Figure,
  { x, ground, height }: FigurePlace,
  colour: string,
  wider = 0,
): void {
  const at = ([px, py]: Spot): Spot => [x + height * px, ground - height * py];
  const disc = (spot: Spot, radius: number) =>
    ink.circle(...at(spot), radius * height + wider).fill({ color: colour });
  disc(head.at, head.radius);
  for (const { through, half } of limbs) {
    const steps = through.length - 1;
    const halfAt = (i: number) => half[0] + ((half[1] - half[0]) * i) / steps;
    through.forEach((to, i) => {
      disc(to, halfAt(i));
      const from = through[i - 1];
      if (!from) return;
      const [a, b] = [at(from), at(to)];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
      const [nx, ny] = [(b[1] - a[1]) / length, (a[0] - b[0]) / length];
      const [p, q] = [halfAt(i - 1) * height + wider, halfAt(i) * height + wider];
      ink
        .poly([
          a[0] + nx * p,
          a[1] + ny * p,
          b[0] + nx * q,
          b[1] + ny * q,
          b[0] - nx * q,
          b[1] - ny * q,
          a[0] - nx * p,
          a[1] - ny * p,
        ])
        .fill({ color: colour });
    });
  }
}
