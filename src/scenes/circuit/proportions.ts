/** How a body of an age differs from the grown one of the tables: about the same trunk a larger head, and shorter arms and legs. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { CHIN, FIGURE } from "./figure-shape.ts";
import type { Vessel } from "./vessel.ts";

/** Years between which a figure's parts go straight. */
const AGES = [2, 5, 10, 15, 18] as const;
export type AtAges = readonly [number, number, number, number, number];

/**
 * Heights of the grown figure's plane (crown, chin, shoulder, crotch, knee, ankle, sole) and what part of the body's height each lies at.
 * Heads in a height: 5 at two years, 5.75 at five, 6.6 at ten, 7.3 at fifteen (a fourth at birth, a sixth at six years: Stratz 1909, as quoted
 * by Bogin), 7.5 to 8 when grown (Domljan et al., Appl. Sci. 2024;14:7185). The crotch lies 0.035 under the pubis, of which the ratio of upper
 * to lower body tells: 1.4 at two, 1.2 at five, 1.0 at ten years, 0.96 when grown (handbook of physical measurements, online extract, and
 * from memory). Shoulder, knee and ankle from memory.
 */
export const LEVELS = [
  { at: -219, of: [1, 1, 1, 1, 1] },
  { at: CHIN, of: [0.8, 0.826, 0.848, 0.863, 0.869] },
  { at: 160, of: [0.76, 0.785, 0.81, 0.826, 0.832] },
  { at: 1070, of: [0.38, 0.42, 0.465, 0.475, 0.475] },
  { at: 1452, of: [0.225, 0.252, 0.276, 0.287, 0.287] },
  { at: 1990, of: [0.048, 0.05, 0.054, 0.057, 0.057] },
  { at: 2124, of: [0, 0, 0, 0, 0] },
] as const satisfies readonly { readonly at: number; readonly of: AtAges }[];

/** How high the fingers end (from memory). */
export const FINGERS: AtAges = [0.385, 0.385, 0.385, 0.38, 0.378];

/** Straight between the rows of a table, level beyond its ends. */
export function between<T extends { readonly at: number }>(
  rows: readonly T[],
  at: number,
  read: (row: T) => number,
): number {
  const i = rows.findIndex((row) => row.at > at);
  if (i < 0) return read(lastOf(rows));
  const [a, b] = [entryAt(rows, Math.max(0, i - 1)), entryAt(rows, i)];
  const w = Math.max(0, (at - a.at) / (b.at - a.at || 1));
  return read(a) + (read(b) - read(a)) * w;
}

export const aged = (of: AtAges, years: number): number =>
  between(
    AGES.map((at, i) => ({ at, value: entryAt(of, i) })),
    years,
    ({ value }) => value,
  );

/** Factors on a grown body's parts of the height that make them those of an age. */
export interface Build {
  readonly head: number;
  readonly trunk: number;
  readonly legs: number;
  /** from the shoulder to the fingers' tips */
  readonly arms: number;
}

function partsAt(years: number): Build {
  const [chin, shoulder, crotch] = [1, 2, 3].map((i) => aged(entryAt(LEVELS, i).of, years)) as [
    number,
    number,
    number,
  ];
  return { head: 1 - chin, trunk: shoulder - crotch, legs: crotch, arms: shoulder - aged(FINGERS, years) };
}

export function buildOf(years: number): Build {
  const [own, grown] = [partsAt(years), partsAt(lastOf(AGES))];
  return {
    head: own.head / grown.head,
    trunk: own.trunk / grown.trunk,
    legs: own.legs / grown.legs,
    arms: own.arms / grown.arms,
  };
}

/** What of the plane is to be seen, plane units. */
export interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Proportions {
  readonly carry: (spot: Spot) => Spot;
  /** all of it, and as far as the thighs, which fade */
  readonly body: Extent;
  readonly thighs: Extent;
  /** of the body's outline */
  readonly figure: readonly Spot[];
}

/** Of the tables' body, and where its thighs end that fade. */
const WHOLE: Extent = { left: 56, top: -224, right: 944, bottom: 2128 };
export const THIGHS = 1240;
/** Plane units: where legs and arms begin to be shorter, where the fingers end, how far out arms hang; over which a head becomes wider from the chin up. */
const [SHOULDER, CROTCH, ARMPIT, FINGERTIP, BESIDE, WIDENS] = [160, 1070, 336, 1092, 299, 45];

function proportionsAt(years: number): Proportions {
  const build = buildOf(years);
  // About the same trunk.
  const [head, legs, arms] = [build.head, build.legs, build.arms].map((part) => part / build.trunk) as [
    number,
    number,
    number,
  ];
  const hanging = (SHOULDER + arms * (FINGERTIP - SHOULDER) - ARMPIT) / (FINGERTIP - ARMPIT);
  const carry = ([x, y]: Spot): Spot => {
    if (y < CHIN) {
      const wider = 1 + (head - 1) * Math.min(1, (CHIN - y) / WIDENS);
      return [500 + wider * (x - 500), CHIN + head * (y - CHIN)];
    }
    if (Math.abs(x - 500) >= BESIDE && y > ARMPIT) return [x, ARMPIT + hanging * (y - ARMPIT)];
    return y > CROTCH ? [x, CROTCH + legs * (y - CROTCH)] : [x, y];
  };
  const [top, bottom] = [carry([500, WHOLE.top])[1], carry([500, WHOLE.bottom])[1]];
  const body = { ...WHOLE, top, bottom };
  return { carry, body, thighs: { ...body, bottom: THIGHS }, figure: FIGURE.map(carry) };
}

export const GROWN = proportionsAt(lastOf(AGES));

const known = new Map<number, Proportions>();

/** The same record for the same age, to half a year. */
export function proportionsOf({ request }: Pick<Circulation, "request">): Proportions {
  const years = Math.min(lastOf(AGES), Math.round(2 * request.body.ageYears) / 2);
  const before = known.get(years);
  if (before) return before;
  const proportions = proportionsAt(years);
  known.set(years, proportions);
  return proportions;
}

/** A vessel of the tables as it lies in the body. */
export const carried = (vessel: Vessel, { carry }: Proportions): Vessel => ({
  ...vessel,
  points: vessel.points.map(carry),
  ...(vessel.between
    ? { between: [vessel.between[0].map(carry), vessel.between[1].map(carry)] as const }
    : {}),
});
