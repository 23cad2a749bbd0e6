/**
 * A heart with two ventricles, opened from the front: outlines and valves in the chest's plane (mm of a 5-year-old, y up).
 * Drawn by hand after normal sections: the right ventricle before and to the right of the septum, the left one makes the apex and
 * the left border, its wall three times as thick.
 */
import { closedOutline } from "../../../sim/geometry/centreline.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { spots } from "../../drawing/curve-drawing.ts";

const closed = (text: string): readonly Point[] => closedOutline(spots(text), 8);

/** Both ventricles from outside. */
export const VENTRICLES = closed(
  "8 -57.6, 10.4 -63.8, 17.4 -71, 30 -77.4, 44 -80.6, 54 -80.8, 61.5 -77, 68.5 -67, 72.6 -53, 71.4 -39, 65 -28, 57.6 -22.6, 47 -24, 38.8 -27.6, 35 -27.4, 32.6 -24.4, 33.6 -19.6, 34.8 -15, 29.6 -14, 23.4 -12.8, 21.4 -19.4, 17.6 -26.4, 10.6 -28.4, 9 -40",
);

/** The right one's blood: on into the atrium beyond the tricuspid valve, and into the trunk beyond the pulmonary one. */
export const RIGHT_CAVITY = closed(
  "9.8 -56, 12.4 -61.8, 18.6 -68, 29 -73.8, 38.6 -76.4, 45.6 -76.2, 41.4 -71.6, 33.4 -64, 27.4 -54.6, 25.2 -45, 26.4 -36, 29.4 -28, 32 -19.6, 34 -13, 27 -10.4, 25.4 -15.6, 24.2 -21, 20.6 -28.6, 13.6 -31.8, 4 -33, 0 -44",
);

/** The left one's blood: on into the atrium beyond the mitral valve, and over the septum's crest into its outflow as far as the right one's wall. */
export const LEFT_CAVITY = closed(
  "56.4 -29.4, 61.6 -39, 63.6 -50, 62 -62, 57.4 -69.6, 52.6 -71.8, 46 -66.8, 39.4 -57.6, 36 -50.4, 32 -45.4, 28.8 -42, 28.6 -37, 30.4 -31, 32 -26, 34.4 -26.6, 36.8 -27, 36 -21, 37 -17, 55 -17, 57 -22.6",
);

/** Across the way from the left cavity into its outflow, where no valve stands. */
export const INTO_OUTFLOW: Gate = {
  hinges: [
    [36, -48],
    [37, -28],
  ],
};

export const RIGHT_ATRIUM = closed(
  "-2.4 -1, -4 -8, -4.9 -12.4, -6.8 -16.4, -10.2 -20.8, -15 -28, -17.6 -36.6, -15.8 -47, -10.8 -53.6, -7 -57, -5 -61, -4.2 -66, -2.4 -73, 2.4 -73, 4.2 -66, 5 -61, 8 -56, 11 -48, 12.8 -40, 12.8 -32, 9 -26.6, 8 -22.6, 8.6 -19, 9.4 -16, 8.4 -13.2, 6.6 -12.2, 5 -13, 4 -8, 2.4 -1",
);

export const LEFT_ATRIUM = closed(
  "9 -13, 20 -8, 32 -6.6, 38.6 -8, 42 -5.6, 47 -5, 51 -7.6, 52.4 -11.6, 56 -14.4, 57.4 -20.6, 55.8 -27.6, 47 -30, 37.4 -28.2, 24 -26, 11 -22",
);

/** The left one's outflow, which passes behind the right one's to the aortic valve: its upper and its lower edge. */
export const OUTFLOW = [
  "44 -33, 36.6 -28, 30.6 -23.4, 25.4 -18.6",
  "14.2 -24.4, 16.6 -29, 20.8 -34.4, 26.6 -40.4, 33 -46, 40 -54",
].map((edge) => smoothLine(spots(edge), 8));

/** Coronary vessels in the fat of the grooves between atria and ventricles, cut across. */
export const GROOVES: readonly (readonly [fat: Point, artery: Point, vein: Point])[] = [
  [
    [11.6, -28.2],
    [11.4, -27.8],
    [13.2, -29.2],
  ],
  [
    [8.8, -59.4],
    [9.2, -59],
    [7.8, -60.8],
  ],
  [
    [58.2, -26.4],
    [58, -26],
    [59.4, -27.8],
  ],
];

type Papillary = readonly [head: Point, bend: Point, root: Point, width: number];

/** The two papillary muscles of each ventricle that hold its valve's leaflets: head, bend and root, and how thick. */
const HOLDING = {
  tricuspid: [
    [[23.4, -64], [26.6, -67.4], [34, -76.6], 3.4],
    [[24.6, -49.6], [27, -50.6], [29.4, -53], 2.6],
  ],
  mitral: [
    [[43.6, -53], [42.8, -58.6], [43, -67], 5],
    [[55.4, -54], [57.4, -59.6], [60, -67], 5],
  ],
} as const satisfies Record<string, readonly [Papillary, Papillary]>;

export const PAPILLARY: readonly Papillary[] = [...HOLDING.tricuspid, ...HOLDING.mitral];

/** Between two chambers, or a chamber and its vessel. */
export interface Gate {
  /** from the patient's right to the left */
  readonly hinges: readonly [Point, Point];
  /** heads of the muscles that hold each leaflet; none for a semilunar valve's */
  readonly heads?: readonly [Point, Point];
}

/** A valve: its two hinges in the section, and the way of its blood from between them. */
export interface ValvePlan extends Gate {
  readonly name: "tricuspid" | "mitral" | "pulmonary" | "aortic";
  /** half its ring's lengths: how far each leaflet reaches, and the one behind them */
  readonly reach: readonly [number, number, number];
}

export const VALVES: readonly ValvePlan[] = [
  {
    name: "tricuspid",
    hinges: [
      [9.8, -55.8],
      [13.2, -31.8],
    ],
    reach: [1, 1.25, 0.95],
    heads: [HOLDING.tricuspid[0][0], HOLDING.tricuspid[1][0]],
  },
  {
    name: "mitral",
    hinges: [
      [36.6, -28],
      [56, -28.8],
    ],
    reach: [1.35, 1, 0.7],
    heads: [HOLDING.mitral[0][0], HOLDING.mitral[1][0]],
  },
  {
    name: "pulmonary",
    hinges: [
      [24.4, -15.6],
      [33.8, -18.8],
    ],
    reach: [1, 1, 1],
  },
  {
    name: "aortic",
    hinges: [
      [14.2, -24.4],
      [25.4, -18.6],
    ],
    reach: [1, 1, 1],
  },
];

/** Ridges of the atria's muscle, in their ears and along the right one's free wall. */
export const COMBS = {
  right: [
    "6.4 -14, 7.2 -17.4, 6 -22",
    "-14.4 -29, -10 -28",
    "-16.6 -34, -11.4 -32.6",
    "-17 -39.4, -11.8 -38",
    "-15.6 -45, -11 -43",
    "-12.4 -50.4, -8.6 -47.6",
  ].map(spots),
  left: ["41.4 -7.6, 43 -11, 42.4 -15", "45.4 -6.4, 46.4 -10.4, 45.6 -14", "49 -7.4, 49.4 -11"].map(spots),
} as const;

/** From the septum to the foot of the anterior papillary muscle: the moderator band. */
export const MODERATOR: readonly Point[] = spots("31.6 -60, 30.6 -66, 27 -69");

/** Ridges of muscle towards each apex, and how thick. */
export const RIDGES: readonly (readonly [readonly Point[], number])[] = [
  [spots("36 -77.6, 34.6 -73.4, 31.6 -70.6"), 1.8],
  [spots("42 -78, 40.4 -75, 37.4 -72.6"), 1.6],
  [spots("22 -71.4, 21.4 -68, 19.4 -65.4"), 1.6],
  [spots("49 -71.4, 49.4 -67.4, 48.6 -63.6"), 2],
  [spots("54.4 -73.6, 53.6 -69, 52.4 -65.4"), 2],
  [spots("64.8 -58, 61.6 -56, 60.4 -52"), 1.8],
  [spots("65 -47, 62 -45.6, 60.8 -42.4"), 1.6],
];
