/** A person from the side, going to the right: closed outlines in parts of the body's height above the ground, back to front. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Spot } from "./curve-drawing.ts";
import { armAt, flightAt, type Gait, legAt } from "./gait.ts";
import { EAR, EYE, HAIR, HEAD, LIP, SHIRT, YOUNG_EYE, YOUNG_HEAD, YOUNG_SHIRT } from "./profile.ts";
import { youthOf } from "./youth.ts";

interface Part {
  readonly tone:
    | "far"
    | "near"
    | "eye"
    | "lip"
    | "shirt"
    | "farShirt"
    | "farCloth"
    | "cloth"
    | "hair"
    | "shoe"
    | "farShoe";
  readonly outline: readonly Spot[];
  /** along its middle, where it is lightest, and its width there */
  readonly crest?: readonly Spot[];
  readonly wide?: number;
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

/** Factors on the parts of a grown body's height. */
interface Build {
  readonly head: number;
  readonly trunk: number;
  readonly legs: number;
  readonly arms: number;
}
const GROWN: Build = { head: 1, trunk: 1, legs: 1, arms: 1 };

/** Hip over the ground, and the head's middle over the neck. */
const [HIP, NECK] = [0.5, 0.112];
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
/** Where its toes bend. */
const BALL: Spot = [0.07, -0.04];
const HEAD_HALF = 0.066;
/** Where hair is tied, and its length when it hangs; in half heights of the head. */
const TIED: Spot = [-0.86, 0.3];
const TAIL = 1.15;

/** Parts by which a child's limbs are thicker and its neck is shorter. */
const [PLUMP, SHORT] = [0.16, 0.16];

const mixed = (grown: readonly Spot[], young: readonly Spot[], youth: number): readonly Spot[] =>
  grown.map(([x, y], i): Spot => {
    const [u, v] = entryAt(young, i);
    return [x + youth * (u - x), y + youth * (v - y)];
  });

/** @param round of the step, 0..1 from the near foot's contact */
export function runner(gait: Gait, round: number, build = GROWN): readonly Part[] {
  const youth = youthOf(build.head);
  const lean = 0.02 + 0.07 * gait.stride ** 2 + gait.running * (0.05 + 0.1 * gait.stride);
  const hip: Spot = [0, HIP * build.legs];
  const chest = ahead(hip, -TRUNK * build.trunk, -lean);
  const [near, far] = [
    legOf(hip, gait, round, build.legs, youth),
    legOf(hip, gait, round + 0.5, build.legs, youth),
  ];
  const lowest = Math.min(...[...near.foot, ...far.foot].map(([, y]) => y));
  const lift = FLIGHT * gait.stride * flightAt(gait, round) - lowest;
  const [farArm, nearArm] = [
    armOf(chest, gait, round + 0.5, build.arms),
    armOf(chest, gait, round, build.arms),
  ];
  const neck = ahead(chest, -0.012, -lean);
  const half = HEAD_HALF * build.head;
  const head: Spot = [neck[0] + 0.016 + 0.05 * lean, neck[1] + NECK * (1 - SHORT * youth) + half - HEAD_HALF];
  const parts: readonly Part[] = [
    ...limbOf("far", farArm),
    { tone: "farShirt", outline: farArm.sleeve },
    { tone: "farShoe", outline: far.foot },
    ...limbOf("far", far),
    { tone: "farCloth", outline: shortsOf(hip, chest, far) },
    { tone: "hair", outline: tailOf(head, gait, round, half) },
    {
      tone: "near",
      outline: around(ahead(neck, 0.03, 0), head, [0.03, 0.024, 0.026], [0.036, 0.028, 0.03]),
    },
    { tone: "near", outline: placed(head, -0.3 * lean, mixed(HEAD, YOUNG_HEAD, youth), half) },
    { tone: "eye", outline: placed(head, -0.3 * lean, mixed(EYE, YOUNG_EYE, youth), half) },
    { tone: "lip", outline: placed(head, -0.3 * lean, LIP, half) },
    { tone: "hair", outline: placed(head, -0.3 * lean, HAIR, half) },
    { tone: "far", outline: placed(head, -0.3 * lean, EAR, half) },
    { tone: "shoe", outline: near.foot },
    ...limbOf("near", near),
    { tone: "cloth", outline: shortsOf(hip, chest, near) },
    {
      tone: "shirt",
      outline: placed(hip, Math.PI / 2 - lean, mixed(SHIRT, YOUNG_SHIRT, youth), build.trunk),
      crest: [ahead(hip, -0.03, -lean), ahead(hip, -0.24, -lean)],
      wide: 0.1,
    },
    ...limbOf("near", nearArm),
    { tone: "shirt", outline: nearArm.sleeve },
  ];
  const lifted = (line: readonly Spot[]) => line.map(([x, y]): Spot => [x, y + lift]);
  return parts.map(({ outline, crest, ...part }) => ({
    ...part,
    outline: lifted(outline),
    ...(crest && { crest: lifted(crest) }),
  }));
}

interface Limb {
  readonly bones: readonly (readonly Spot[])[];
  readonly crest: readonly Spot[];
  readonly wide: number;
}

const limbOf = (tone: "far" | "near", { bones, crest, wide }: Limb): readonly Part[] =>
  bones.map((outline, i): Part => ({ tone, outline, ...(i === 0 && { crest, wide }) }));

function legOf(hip: Spot, gait: Gait, round: number, long: number, youth: number) {
  const wide = (widths: readonly number[]) => widths.map((width) => (1 + PLUMP * youth) * width);
  const { hip: swing, knee: bent, ankle: raised } = legAt(gait, round);
  const knee = ahead(hip, long * THIGH, swing);
  const ankle = ahead(knee, long * SHIN, swing - bent);
  return {
    bones: [
      around(hip, knee, wide([0.05, 0.058, 0.054, 0.042, 0.034]), wide([0.062, 0.058, 0.047, 0.037, 0.032])),
      around(
        knee,
        ankle,
        wide([0.034, 0.031, 0.027, 0.023, 0.019, 0.017]),
        wide([0.032, 0.044, 0.046, 0.036, 0.022, 0.018]),
      ),
    ],
    crest: [ahead(hip, 0.12, swing), knee, ahead(knee, 0.85 * long * SHIN, swing - bent)],
    wide: 0.06,
    foot: footOf(ankle, swing - bent + raised),
    swing,
  };
}

/** Toes stay level while the heel rises. */
function footOf(ankle: Spot, angle: number): Spot[] {
  const [, ball] = entryAt(placed(ankle, angle, [BALL]), 0);
  return placed(ankle, angle, FOOT).map(([x, y], i): Spot => {
    const [along, across] = entryAt(FOOT, i);
    return [x, along > BALL[0] ? Math.max(y, ball + across - BALL[1]) : y];
  });
}

/** From the waist, which goes with the trunk, to a hem that hangs a little off the thigh. */
function shortsOf(hip: Spot, chest: Spot, { swing }: { readonly swing: number }): Spot[] {
  const up = Math.atan2(chest[1] - hip[1], chest[0] - hip[0]);
  const [front, back] = placed(hip, up, [
    [0.04, -0.052],
    [0.04, 0.05],
  ]);
  const [belly, hemFront, hem, hemBack, seat] = placed(hip, swing - Math.PI / 2, [
    [0.01, 0.056],
    [0.5 * THIGH, 0.062],
    [0.54 * THIGH, 0.004],
    [0.52 * THIGH, -0.058],
    [0.02, -0.068],
  ]);
  return [front, belly, hemFront, hem, hemBack, seat, back].flatMap((spot) => (spot ? [spot] : []));
}

/** Tied hair swings as the body rises and falls, and trails the more the faster that goes. */
function tailOf(head: Spot, { stride, running }: Gait, round: number, half: number): Spot[] {
  const [root] = placed(head, 0, [TIED], half);
  const trails = -0.16 - stride * (0.3 + 0.55 * running) - 0.16 * stride * Math.cos(4 * Math.PI * round);
  const from = root ?? head;
  const middle = ahead(from, 0.55 * TAIL * half, 1.35 * trails);
  const tip = ahead(middle, 0.6 * TAIL * half, 0.7 * trails);
  return [
    ...around(from, middle, [0.012, 0.02, 0.021], [0.012, 0.02, 0.021]).slice(0, 3),
    tip,
    ...around(from, middle, [0.012, 0.02, 0.021], [0.012, 0.02, 0.021]).slice(4),
  ];
}

function armOf(shoulder: Spot, gait: Gait, round: number, long: number) {
  const { shoulder: swing, elbow: bent } = armAt(gait, round);
  const joint: Spot = [shoulder[0] - 0.004, shoulder[1] - 0.038];
  const elbow = ahead(joint, long * UPPER_ARM, swing);
  const wrist = ahead(elbow, long * FOREARM, swing + bent);
  return {
    bones: [
      around(joint, elbow, [0.034, 0.031, 0.027, 0.022], [0.034, 0.032, 0.026, 0.022]),
      around(elbow, wrist, [0.022, 0.025, 0.02, 0.0145], [0.022, 0.024, 0.019, 0.0145]),
      around(wrist, ahead(wrist, 0.045, swing + bent + 0.3), [0.014, 0.021, 0.016], [0.014, 0.019, 0.015]),
    ],
    crest: [ahead(joint, 0.06, swing), elbow, wrist],
    wide: 0.036,
    sleeve: around(joint, ahead(joint, 0.5 * UPPER_ARM, swing), [0.038, 0.039, 0.038], [0.04, 0.042, 0.04]),
  };
}

/** How far it reaches to the right of its hips, in parts of its height. */
export const reachOf = (parts: readonly Part[]): number =>
  Math.max(...parts.flatMap(({ outline }) => outline.map(([x]) => x)));
