/**
 * The heart opened from the front: a ventricle as a horseshoe of muscle around its cavity, its base open to two valves,
 * and the atrium behind it. Proportions as in normal four-chamber sections: wall a third of the cavity's half width.
 */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { type Placing, smoothLine } from "./placing.ts";

/** Middle of the ventricle's base, in the heart's own lengths, and the way from it to the apex. */
const BASE: Point = [27, -15];
const LEAN = -0.82;

/** Along the axis from the base, and across it towards the patient's left. */
const OUTER: readonly Point[] = [
  [-1, 17.4],
  [1, 20.6],
  [5, 23],
  [14, 24],
  [26, 20.5],
  [36, 13.5],
  [42.5, 5],
  [44.5, -2.5],
  [41.5, -9.5],
  [33, -15.5],
  [20, -19.6],
  [8, -21],
  [0, -19.2],
  [-2.8, -17],
];
const INNER: readonly Point[] = [
  [-2.4, -15.8],
  [8, -15.8],
  [19, -13.8],
  [29, -9.8],
  [35.5, -4],
  [36, 1],
  [32, 7],
  [23.5, 13],
  [13, 16.2],
  [4, 16],
  [-1, 15.2],
];

/** A valve's two hinges along the base. */
export interface Ring {
  readonly from: number;
  readonly to: number;
}
export const ATRIOVENTRICULAR: Ring = { from: -15.4, to: 0.6 };
export const SEMILUNAR: Ring = { from: 3, to: 15 };

/** A place in the aorta's root: `u` across from its middle, `v` upwards from the hinges of its valve. */
export const inRoot = (u: number, v: number): Point => [-1 - v, (SEMILUNAR.from + SEMILUNAR.to) / 2 + u];

/** Heads of the papillary muscles, along and across. */
export const PAPILLARY: readonly Point[] = [
  [21, -9.5],
  [22, 6],
];

export interface HeartShape {
  /** mm: the base's middle, and the axis' angle in radians, anticlockwise */
  readonly base: Point;
  readonly lean: number;
  /** mm for one of the ventricle's own lengths */
  readonly size: number;
  /** in the ventricle's own lengths: closed outlines */
  readonly muscle: readonly Point[];
  readonly cavity: readonly Point[];
  /** mm: closed outlines in the plane */
  readonly ventricle: readonly Point[];
  readonly atrium: readonly Point[];
  /** mm: a place by the ventricle's own lengths */
  at(along: number, across: number): Point;
}

const smooth = (points: readonly Point[]) => closedOutline(points, 6);

export function heartShape({ frame, inHeart }: Placing): HeartShape {
  const heart = frame.heartScale;
  const base = inHeart(...BASE);
  const [cos, sin] = [Math.cos(LEAN) * heart, Math.sin(LEAN) * heart];
  const at = (along: number, across: number): Point => [
    base[0] + along * cos - across * sin,
    base[1] + along * sin + across * cos,
  ];
  return {
    base,
    lean: LEAN,
    size: heart,
    muscle: [...smoothLine(OUTER, 6), ...smoothLine(INNER, 6)],
    cavity: smooth([...INNER, [-14, 13], [-14, -13]]),
    ventricle: smooth(OUTER).map(([along, across]) => at(along, across)),
    atrium: frame.atrium,
    at,
  };
}
