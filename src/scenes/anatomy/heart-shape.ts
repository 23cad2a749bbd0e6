/**
 * The ventricle as a left one, seen from the front with a window cut into it: its inlet towards the patient's left, before the atrium, its
 * outlet towards the right. Proportions as in normal long-axis sections: a wall of even thickness that tapers towards the apex.
 */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { type Placing, smoothLine } from "./placing.ts";

/** Middle of the ventricle's base, in the heart's own lengths, and the way from it to the apex. */
const BASE: Point = [27, -15];
const LEAN = -0.82;

/** Along the axis from the base, and across it towards the patient's right: the wall's outside and inside in the window's plane. */
const OUTER: readonly Point[] = [
  [-1.6, -19.4],
  [5, -21.6],
  [14, -22],
  [24, -19.4],
  [33, -14],
  [40, -6.6],
  [42.4, 0.4],
  [41, 6],
  [35.5, 12.6],
  [26, 17.8],
  [14, 20.6],
  [6, 20.8],
  [-1, 19.6],
];
const INNER: readonly Point[] = [
  [-0.8, -15.8],
  [5, -16.6],
  [13, -16.8],
  [22, -14.8],
  [30, -10.4],
  [36.2, -4.6],
  [38.6, 0.4],
  [37, 4.6],
  [32, 9],
  [23.5, 13],
  [13, 15.6],
  [5, 15.8],
  [-1.4, 15.2],
];
/** The closed heart's outside: along the left border round the apex to where the right chamber's lies on the diaphragm, and back along the base. */
const OUTSIDE: readonly Point[] = [
  [-5, -20],
  [2, -24],
  [12, -25],
  [23, -23],
  [33, -17.6],
  [41.6, -9.4],
  [45.6, -0.6],
  [44.6, 6.4],
  [38, 14],
  [30, 21],
  [21, 27.6],
  [11, 31.4],
  [2, 31.6],
  [-5, 27.6],
  [-7.6, 21],
  [-5, 14],
  [-4, 0],
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
  /** in the ventricle's own lengths: closed outlines, the muscle's in the window's plane and the closed heart's */
  readonly muscle: readonly Point[];
  readonly cavity: readonly Point[];
  readonly outside: readonly Point[];
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
    base[0] + along * cos + across * sin,
    base[1] + along * sin - across * cos,
  ];
  const outside = smooth(OUTSIDE);
  return {
    base,
    lean: LEAN,
    size: heart,
    muscle: [...smoothLine(OUTER, 6), ...smoothLine(INNER, 6).reverse()],
    cavity: smooth([...INNER, [-14, 13], [-14, -13]]),
    outside,
    ventricle: outside.map(([along, across]) => at(along, across)),
    atrium: frame.atrium,
    at,
  };
}
