/**
 * The ventricle as a left one, seen from the front with a window cut into it: its inlet towards the patient's left, before the atrium, its
 * outlet towards the right. Proportions as in normal long-axis sections: a wall of even thickness that tapers towards the apex.
 */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import { spots } from "../drawing/curve-drawing.ts";
import { type Placing, smoothLine } from "./placing.ts";

/** Middle of the ventricle's base, in the heart's own lengths, and the way from it to the apex. */
const BASE: Point = [27, -15];
const LEAN = -0.82;

/** Along the axis from the base, and across it towards the patient's right: the wall's outside in the window's plane. */
const OUTER: readonly Point[] = [
  [-1, -20],
  [6, -22],
  [15, -22],
  [24, -19],
  [33, -14],
  [40, -7],
  [42, 0],
  [41, 6],
  [35, 13],
  [26, 18],
  [15, 21],
  [6, 21],
  [-1, 20],
];
/** Its inside: a wall as thick all around, a little thinner at the apex. */
const INNER = OUTER.map(([along, across]): Point => [0.92 * along, 0.77 * across]);
/** The closed heart's outside: along the left border round the apex to where the rudimentary right ventricle lies on the diaphragm, and back along the base. */
const OUTSIDE: readonly Point[] = [
  [-5, -20],
  [2, -24],
  [12, -25],
  [23, -23],
  [33, -18],
  [41, -10],
  [46, -1],
  [44, 7],
  [38, 14],
  [30, 21],
  [21, 28],
  [11, 31],
  [2, 32],
  [-5, 28],
  [-8, 21],
  [-5, 14],
  [-4, 0],
];
/** The left atrium's appendage at the left border, an ear of five lobes with a notch after each: x and y in the heart. */
const APPENDAGE = spots(
  "33 17.5, 36 19.8, 39 19.8, 40.2 17.4, 42.5 19, 44.7 16.8, 44.4 14.2, 47 13.4, 48.2 9.8, 46.6 7.4, 48.9 4.6, 48.2 0.8, 45.7 0.6, 44.7 -2.8, 41.7 -3.6, 36 -2",
);

/** What is left of the pulmonary trunk, divided above its valve and oversewn: its foot on the base, behind the aortic root's left side; x and y in the heart, and widths there. */
const TRUNK = {
  line: [
    [23.6, -18],
    [22.6, -11],
    [21.8, -5],
    [20.8, 0.4],
  ],
  from: 11.4,
  to: 10,
  dome: 0.24,
} as const;

/** A valve's two hinges along the base. */
export interface Ring {
  readonly from: number;
  readonly to: number;
}
export const ATRIOVENTRICULAR: Ring = { from: -15.4, to: 0.6 };
export const SEMILUNAR: Ring = { from: 3, to: 15 };
/** Across, in the ventricle's own lengths: the middle of its atrioventricular valve. */
export const ATRIOVENTRICULAR_MIDDLE = (ATRIOVENTRICULAR.from + ATRIOVENTRICULAR.to) / 2;

/** A place in the aorta's root: `u` across from its middle, `v` upwards from the hinges of its valve. */
export const inRoot = (u: number, v: number): Point => [-1 - v, (SEMILUNAR.from + SEMILUNAR.to) / 2 + u];

/** Heads of the papillary muscles, along and across. */
export const PAPILLARY: readonly Point[] = [
  [21, -9.5],
  [22, 6],
];

/** A vessel that is closed at its end; mm. */
interface Stump {
  readonly name: string;
  readonly line: readonly Point[];
  readonly from: number;
  readonly to: number;
  readonly dome: number;
}

export interface HeartShape {
  /** mm: the base's middle, and the axis' angle in radians, anticlockwise */
  readonly base: Point;
  readonly lean: number;
  /** mm for one of the ventricle's own lengths */
  readonly size: number;
  /** in the ventricle's own lengths: the wall's outside and inside, point by point, from one end of the base to the other */
  readonly outer: readonly Point[];
  readonly inner: readonly Point[];
  /** closed outlines */
  readonly cavity: readonly Point[];
  readonly outside: readonly Point[];
  /** on the outside: the right ventricle reaches further to an atrium that is the pathway */
  reach(place: Point): Point;
  /** mm: closed outlines in the plane */
  readonly ventricle: readonly Point[];
  readonly atrium: readonly Point[];
  readonly appendage: readonly Point[];
  /** the pulmonary trunk's stump from its foot upwards */
  readonly trunk: Stump;
  /** mm: a place by the ventricle's own lengths */
  at(along: number, across: number): Point;
}

/** x in the heart of the atrium's right end. */
export const atriumRight = ({ atrium, heart, heartScale }: ChestFrame): number =>
  (Math.min(...atrium.map(([x]) => x)) - heart) / heartScale;

/** Its atrium, of both sides, reaches behind the pathway or to its right. */
export const isCommon = (frame: ChestFrame): boolean => atriumRight(frame) < -8;

const smooth = (points: readonly Point[]) => closedOutline(points, 6);

export function heartShape({ frame, inHeart }: Placing): HeartShape {
  const heart = frame.heartScale;
  const base = inHeart(...BASE);
  const [cos, sin] = [Math.cos(LEAN) * heart, Math.sin(LEAN) * heart];
  const at = (along: number, across: number): Point => [
    base[0] + along * cos + across * sin,
    base[1] + along * sin - across * cos,
  ];
  const reach = ([along, across]: Point): Point => {
    const far = frame.chamber ? Math.max(0, across - 20) : 0;
    return [along - 0.55 * far, across + 0.75 * far];
  };
  const outside = smooth(OUTSIDE.map(reach));
  return {
    base,
    lean: LEAN,
    size: heart,
    outer: smoothLine(OUTER, 6),
    inner: smoothLine(INNER, 6),
    cavity: smooth([...INNER, [-14, 13], [-14, -13]]),
    outside,
    reach,
    ventricle: outside.map(([along, across]) => at(along, across)),
    atrium: frame.atrium,
    appendage: smooth(APPENDAGE.map((point) => inHeart(...point))),
    trunk: {
      ...TRUNK,
      name: "pulmonaryTrunk",
      line: smoothLine(
        TRUNK.line.map(([x, y]) => inHeart(x, y)),
        20,
      ),
      from: TRUNK.from * heart,
      to: TRUNK.to * heart,
    },
    at,
  };
}
