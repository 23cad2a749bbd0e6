/** A person from the side, going to the right: closed outlines in parts of the body's height above the ground, back to front. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Spot } from "./curve-drawing.ts";
import { armAt, flightAt, type Gait, legAt } from "./gait.ts";

interface Part {
  readonly tone: "far" | "near" | "shirt" | "farCloth" | "cloth" | "hair" | "shoe" | "farShoe";
  readonly outline: readonly Spot[];
}

/** Times rest: slow walking from 2, brisk to 5, a jog from 6 (activity tables: walking 3 to 5, jogging about 7; from memory). */
const [RESTS, WALKS, STEPS_OUT, JOGS, RUNS] = [1, 2, 5.2, 6, 8];
const part = (value: number, from: number, to: number): number =>
  Math.min(1, Math.max(0, (value - from) / (to - from)));

/** The gait that goes with an effort, times rest. */
export function gaitOf(effort: number): Gait {
  const running = part(effort, STEPS_OUT, JOGS);
  const walking = (0.44 + 0.7 * part(effort, WALKS, STEPS_OUT)) * part(effort, RESTS, WALKS);
  return { running, stride: walking + running * (0.62 - walking + 0.48 * part(effort, JOGS, RUNS)) };
}

const THIGH = 0.245;
const SHIN = 0.232;
const TRUNK = 0.29;
const UPPER_ARM = 0.165;
const FOREARM = 0.14;
/** Body heights that the fastest flies between two steps. */
const FLIGHT = 0.045;

const ahead = ([x, y]: Spot, length: number, angle: number): Spot => [
  x + length * Math.sin(angle),
  y - length * Math.cos(angle),
];

/** An outline about a bone: half widths before and behind it, evenly from its first joint to its second. */
function around(from: Spot, to: Spot, before: readonly number[], behind: readonly number[]): Spot[] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const side = (widths: readonly number[], sign: 1 | -1): Spot[] =>
    widths.map((width, i) => {
      const along = (length * i) / (widths.length - 1);
      return [from[0] + ux * along - sign * uy * width, from[1] + uy * along + sign * ux * width];
    });
  const cap = (at: Spot, width: number, sign: 1 | -1): Spot => [
    at[0] + sign * ux * width * 0.8,
    at[1] + sign * uy * width * 0.8,
  ];
  return [
    ...side(before, 1),
    cap(to, entryAt(before, before.length - 1), 1),
    ...side(behind, -1).reverse(),
    cap(from, entryAt(before, 0), -1),
  ];
}

/** Points given along (x) and across (y) a direction from a place. */
const placed = ([x, y]: Spot, angle: number, points: readonly Spot[], size = 1): Spot[] =>
  points.map(([u, v]) => [
    x + size * (u * Math.cos(angle) - v * Math.sin(angle)),
    y + size * (u * Math.sin(angle) + v * Math.cos(angle)),
  ]);

/** From the ankle: heel, sole, toes, instep. */
const FOOT: readonly Spot[] = [
  [-0.02, 0.014],
  [-0.034, -0.012],
  [-0.03, -0.036],
  [0.02, -0.038],
  [0.07, -0.04],
  [0.108, -0.036],
  [0.112, -0.022],
  [0.08, -0.006],
  [0.04, 0.008],
  [0.018, 0.02],
];
/** In profile, in half heights of the head: crown, brow, nose, lips, chin, jaw, nape. */
const HEAD: readonly Spot[] = [
  [-0.1, 1],
  [0.4, 0.94],
  [0.72, 0.66],
  [0.76, 0.3],
  [0.74, 0.14],
  [0.94, -0.2],
  [0.78, -0.28],
  [0.82, -0.46],
  [0.76, -0.56],
  [0.78, -0.78],
  [0.6, -0.98],
  [0.2, -0.84],
  [-0.16, -0.66],
  [-0.56, -0.62],
  [-0.82, -0.2],
  [-0.88, 0.26],
  [-0.64, 0.74],
];
const HAIR: readonly Spot[] = [
  [-0.1, 1.06],
  [0.46, 0.98],
  [0.74, 0.66],
  [0.4, 0.56],
  [0.1, 0.3],
  [-0.06, -0.1],
  [-0.3, -0.36],
  [-0.62, -0.62],
  [-0.9, -0.2],
  [-0.95, 0.28],
  [-0.7, 0.8],
];
const HEAD_HALF = 0.068;

/** @param round of the step, 0..1 from the near foot's contact */
export function runner(gait: Gait, round: number): readonly Part[] {
  const lean = 0.02 + 0.07 * gait.stride ** 2 + gait.running * (0.03 + 0.1 * gait.stride);
  const hip: Spot = [0, 0.5];
  const chest: Spot = [TRUNK * Math.sin(lean), 0.5 + TRUNK * Math.cos(lean)];
  const [near, far] = [legOf(hip, gait, round), legOf(hip, gait, round + 0.5)];
  const lowest = Math.min(...[...near.foot, ...far.foot].map(([, y]) => y));
  const lift = FLIGHT * gait.stride * flightAt(gait, round) - lowest;
  const [farArm, nearArm] = [armOf(chest, gait, round + 0.5), armOf(chest, gait, round)];
  const neck = ahead(chest, -0.02, -lean);
  const head: Spot = [neck[0] + 0.018 + 0.04 * lean, neck[1] + 0.112];
  const parts: readonly Part[] = [
    ...farArm.map((outline): Part => ({ tone: "far", outline })),
    ...[far.thigh, far.shin].map((outline): Part => ({ tone: "far", outline })),
    { tone: "farShoe", outline: far.foot },
    { tone: "farCloth", outline: shortsOf(hip, chest, far) },
    { tone: "near", outline: around(neck, head, [0.03, 0.026, 0.026], [0.034, 0.028, 0.03]) },
    { tone: "near", outline: placed(head, -0.4 * lean, HEAD, HEAD_HALF) },
    { tone: "hair", outline: placed(head, -0.4 * lean, HAIR, HEAD_HALF) },
    ...[near.shin, near.thigh].map((outline): Part => ({ tone: "near", outline })),
    { tone: "shoe", outline: near.foot },
    {
      tone: "shirt",
      outline: around(chest, hip, [0.044, 0.064, 0.061, 0.053, 0.052], [0.05, 0.067, 0.056, 0.046, 0.06]),
    },
    { tone: "cloth", outline: shortsOf(hip, chest, near) },
    ...nearArm.map((outline): Part => ({ tone: "near", outline })),
  ];
  return parts.map(({ tone, outline }) => ({ tone, outline: outline.map(([x, y]): Spot => [x, y + lift]) }));
}

function legOf(hip: Spot, gait: Gait, round: number) {
  const { hip: swing, knee: bent, ankle: raised } = legAt(gait, round);
  const knee = ahead(hip, THIGH, swing);
  const ankle = ahead(knee, SHIN, swing - bent);
  return {
    thigh: around(hip, knee, [0.05, 0.056, 0.052, 0.042, 0.035], [0.06, 0.056, 0.046, 0.038, 0.035]),
    shin: around(knee, ankle, [0.035, 0.031, 0.027, 0.022, 0.019], [0.034, 0.045, 0.041, 0.027, 0.02]),
    foot: placed(ankle, swing - bent + raised, FOOT),
    swing,
  };
}

/** From the waist, which goes with the trunk, to a hem on the thigh. */
function shortsOf(hip: Spot, chest: Spot, { swing }: { readonly swing: number }): Spot[] {
  const up = Math.atan2(chest[1] - hip[1], chest[0] - hip[0]);
  const [front, back] = placed(hip, up, [
    [0.05, -0.052],
    [0.05, 0.05],
  ]);
  const [belly, hemFront, hemBack, seat] = placed(hip, swing - Math.PI / 2, [
    [0.01, 0.058],
    [0.56 * THIGH, 0.057],
    [0.56 * THIGH, -0.05],
    [0.02, -0.066],
  ]);
  return [front, belly, hemFront, hemBack, seat, back].flatMap((spot) => (spot ? [spot] : []));
}

function armOf(shoulder: Spot, gait: Gait, round: number): readonly Spot[][] {
  const { shoulder: swing, elbow: bent } = armAt(gait, round);
  const joint: Spot = [shoulder[0], shoulder[1] - 0.03];
  const elbow = ahead(joint, UPPER_ARM, swing);
  const wrist = ahead(elbow, FOREARM, swing + bent);
  return [
    around(joint, elbow, [0.034, 0.031, 0.027, 0.023], [0.034, 0.032, 0.027, 0.023]),
    around(elbow, wrist, [0.023, 0.026, 0.02, 0.015], [0.023, 0.025, 0.02, 0.015]),
    around(wrist, ahead(wrist, 0.05, swing + bent + 0.25), [0.015, 0.021, 0.017], [0.015, 0.02, 0.016]),
  ];
}

/** How far it reaches to the right of its hips, in parts of its height. */
export const reachOf = (parts: readonly Part[]): number =>
  Math.max(...parts.flatMap(({ outline }) => outline.map(([x]) => x)));
