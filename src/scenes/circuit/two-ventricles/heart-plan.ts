/**
 * A heart with two ventricles, opened from the front: outlines and valves in the chest's plane (mm of a 5-year-old, y up).
 * Drawn by hand after normal sections: the right ventricle before and to the right of the septum, the left one makes the apex and
 * the left border, its wall three times as thick.
 */
import { closedOutline } from "../../../sim/geometry/centreline.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { spots } from "../../drawing/curve-drawing.ts";

/** An oval: its middle and its half axes. */
export type Oval = readonly [at: Point, across: number, up: number];

const closed = (text: string): readonly Point[] => closedOutline(spots(text), 8);

/** What each ventricle swells about, and with the left one the muscle of both: near its valves, so that these keep their place. */
export const PIVOT = { ventricle: [44, -27], rightVentricle: [22, -27] } as const satisfies Record<
  string,
  Point
>;

/** The sac around all of it, cut open at its front; below it lies on the diaphragm. */
export const SAC = closed(
  "-7 -11, -13.4 -16, -19 -25, -21.2 -36, -20.4 -48, -16 -58, -9 -64, -6 -78, 20 -84, 50 -83.6, 64 -79, 72.6 -68, 76 -52, 74.6 -38, 68.6 -28.4, 61.6 -24, 58.8 -18, 56.4 -11, 49 -3, 42 4, 30 8, 10 8, -4 4",
);

/** Both ventricles from outside. */
export const VENTRICLES = closed(
  "9.6 -57.6, 10.8 -63.8, 17.4 -71, 30 -77.4, 44 -80.6, 54 -80.8, 61.5 -77, 68.5 -67, 72.6 -53, 71.4 -39, 65 -28, 58 -23, 50 -23, 42.4 -26, 40.8 -21, 40.2 -16, 33 -13, 24.4 -11.6, 22.4 -18, 18.4 -25.2, 13.2 -28, 12.8 -34, 10.6 -48",
);

/** The right one's blood: on into the atrium beyond the tricuspid valve, and up its outflow into the trunk beyond the pulmonary one. */
export const RIGHT_CAVITY = closed(
  "9.8 -56, 12.4 -61.8, 18.6 -68, 29 -73.8, 38.6 -76.4, 45.6 -76.2, 41.4 -71.6, 33.4 -64, 27.8 -55, 27.4 -46.4, 29.4 -39, 32.2 -31.6, 34.8 -24.8, 37 -19, 39 -13, 27.4 -9.6, 26.4 -15, 24.6 -21.6, 21 -28.2, 13.6 -31.8, 4 -33, 0 -44",
);

/** The right one's outflow, which lies before the left one's: its blood, and around it its wall. */
export const CONUS = closed(
  "16 -32, 21 -28.2, 24.6 -21.6, 26.4 -15, 27.4 -9.6, 39 -13, 37 -19, 34.8 -24.8, 32.2 -31.6, 29.4 -39, 27.4 -46.4, 22 -50, 16 -44",
);
export const BEFORE_OUTFLOW = closed(
  "14 -30.4, 18.4 -25.2, 22.4 -18, 23.4 -10, 42 -14, 40.8 -21, 38 -27.4, 35.6 -33.4, 33.4 -40, 32.4 -47, 24 -54, 14 -46",
);

/** Across the way back from the right one's outflow into its cavity. */
export const INTO_CONUS: Gate = {
  hinges: [
    [28, -45],
    [17, -43],
  ],
};

/** The left one's blood: on into the atrium beyond the mitral valve, and over the septum's crest towards its outflow behind the right one's. */
export const LEFT_CAVITY = closed(
  "56.4 -29.4, 61.6 -39, 63.6 -50, 62 -62, 57.4 -69.6, 52.6 -71.8, 46 -66.8, 40 -58, 36.6 -51.4, 33.8 -46, 33.4 -41, 35.2 -34.6, 37.6 -28.6, 39.4 -24, 38.6 -19, 42 -15, 55 -15, 57.4 -22.6",
);

export const RIGHT_ATRIUM = closed(
  "-2.4 -8, -3.6 -12.6, -5.8 -16.6, -10 -19.2, -14.6 -24.4, -17.7 -32, -18.4 -40, -16.8 -48.4, -12.8 -55, -8.4 -58.6, -5.2 -61.6, -3.6 -65, -2.6 -69, 2.6 -69, 3.6 -65, 5.8 -61.2, 9 -57.4, 11 -52, 12.6 -44, 13 -36, 11.8 -30, 9.4 -25.4, 7.6 -20.6, 5.6 -16.4, 3.6 -12.6, 2.4 -8",
);

export const LEFT_ATRIUM = closed(
  "9 -13, 20 -8, 32 -6.6, 38.6 -8, 45 -8, 51 -8.6, 55 -11, 57.2 -16, 57.8 -21.6, 56.4 -27.6, 47 -30, 37.4 -28.2, 24 -26, 11 -22",
);

/** The atria's ears, closed: the right one beside the aorta's root, the left one beside the trunk's. */
export const EARS = {
  right: closed(
    "4.4 -24.4, 4 -18, 5.2 -12.4, 7.4 -8.6, 9.6 -8.2, 11.4 -5.6, 13.6 -6, 15.6 -4.6, 17.4 -6.8, 15.6 -8.8, 15.4 -11, 12.8 -11.6, 11.8 -14.2, 9.8 -15.2, 9.8 -18, 8.4 -19.4, 8.8 -24",
  ),
  left: closed(
    "40.8 -17.6, 39.6 -13.4, 41 -9, 44.6 -6, 49 -5.4, 52.2 -7.4, 51.8 -9.8, 49.6 -10.2, 48.6 -12.4, 46.6 -12, 45.6 -14.6, 43.8 -14.4, 42.8 -17.6",
  ),
} as const;

/** The left one's outflow, which passes behind the right one's to the aortic valve: its upper and its lower edge. */
export const OUTFLOW = [
  "46 -33, 38 -29, 31.6 -24.4, 24.2 -18.8",
  "13 -24.4, 15.6 -29, 20.2 -34.4, 26.6 -40.4, 33 -46, 40 -54",
].map((edge) => smoothLine(spots(edge), 8));

/** The way of its blood between them. */
export const MIDWAY = smoothLine(spots("40 -42, 32 -35, 25 -28.6, 18.8 -21.6"), 8);

/** The septum's membranous part, beneath the aortic valve. */
export const MEMBRANOUS = spots("13.2 -24.8, 13.8 -28, 13.6 -31.4");

/** Where the left one's blood goes on behind the right one's outflow. */
export const GOES_BEHIND: Oval = [[36.4, -37.6], 4.6, 9];

/** The left coronary artery's mouth, in the aortic root's own lengths. */
export const CORONARY = [0.66, 1.14] as const;

/** Fat in the grooves between atria and ventricles, and the artery and the vein that are cut across in it. */
export const GROOVES: readonly (readonly [fat: readonly Point[], artery: Point, vein: Point])[] = (
  [
    ["9 -27.8, 11 -25.4, 13.6 -26.6, 14.2 -30.4, 13.2 -32.4, 11.6 -30.8", [11.6, -27.5], [12.8, -29.9]],
    ["6.4 -61.6, 8.4 -58, 9.4 -55.4, 10.6 -57.4, 11.4 -62, 8.8 -63.6", [8.8, -60.4], [9.6, -62]],
    ["55.6 -26.4, 57.4 -22.4, 61 -22.8, 62.8 -26, 59.4 -28", [58.2, -25.2], [60.2, -25.6]],
    ["38.8 -27.4, 40.4 -22.8, 43.2 -22.4, 43.8 -25.4, 41.2 -28", [41, -25.4], [42.4, -24.2]],
  ] as const
).map(([fat, artery, vein]) => [closed(fat), artery, vein]);

type Papillary = readonly [head: Point, bend: Point, root: Point, width: number];

/** The two papillary muscles of each ventricle that hold its valve's leaflets: head, bend and root, and how thick. */
const HOLDING = {
  tricuspid: [
    [[16, -60.4], [17, -63.6], [20.4, -69.4], 3],
    [[22.8, -58.8], [25.2, -64], [30.4, -74.4], 4.6],
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
  /** halves of its ring by which the place where the two part lies towards the second */
  readonly parting: number;
}

export const VALVES: readonly ValvePlan[] = [
  {
    name: "tricuspid",
    hinges: [
      [9.8, -55.8],
      [13.2, -31.8],
    ],
    reach: [0.8, 1, 0.9],
    parting: 0,
    heads: [HOLDING.tricuspid[0][0], HOLDING.tricuspid[1][0]],
  },
  {
    name: "mitral",
    hinges: [
      [38.4, -28.2],
      [56.2, -28.8],
    ],
    reach: [1.4, 0.85, 0],
    parting: 0.3,
    heads: [HOLDING.mitral[0][0], HOLDING.mitral[1][0]],
  },
  {
    name: "pulmonary",
    hinges: [
      [27, -14.6],
      [37.2, -18.4],
    ],
    reach: [1, 1, 1],
    parting: 0,
  },
  {
    name: "aortic",
    hinges: [
      [13, -24.4],
      [24.2, -18.8],
    ],
    reach: [1, 1, 1],
    parting: 0,
  },
];

/** Ridges of the right atrium's muscle along its free wall, and the crest from which they go out. */
export const COMBS = [
  "-7.6 -23, -10.8 -22.4, -13.4 -23.2",
  "-9 -27.2, -12.6 -26.2, -15.6 -27",
  "-10.2 -31.4, -13.6 -31.6, -16.8 -30.4",
  "-10.9 -34.6, -14 -34, -17.2 -35.2",
  "-11.3 -39, -14.6 -39.6, -17.8 -38.8",
  "-11.2 -42.4, -14.4 -42, -17.6 -43.6",
  "-10.7 -46, -13.8 -47.2, -16.8 -47.4",
  "-9.8 -49.2, -12.8 -50.6, -15.4 -51.2",
  "-8.2 -52.8, -10.6 -54.4, -12.6 -55.4",
].map(spots);
export const CREST = spots("-5.6 -19.2, -8.8 -25, -10.8 -32, -11.4 -39.6, -10.2 -47.6, -7.4 -54.4, -5 -58.4");

/** mm: where each great vein's closed front begins to clear, and where it has gone over into the opened atrium. */
export const OPENS = { upper: [-9.6, -19.4], lower: [-67.4, -57] } as const;

/** On the right atrium's back wall: the oval fossa in the septum, and the coronary sinus' mouth. */
export const FOSSA: Oval = [[2.4, -38.4], 3.2, 4.4];
export const SINUS: Oval = [[4.4, -51.6], 2, 1.5];

/** From the septum to the anterior papillary muscle: the moderator band. */
export const MODERATOR: readonly Point[] = spots("34.4 -62.4, 31.6 -64.2, 28.6 -67, 26.6 -70.4");

/** Ridges of muscle towards each apex, and how thick. */
export const RIDGES: readonly (readonly [readonly Point[], number])[] = [
  [spots("33.6 -76, 34.4 -72.4, 37.6 -69.4, 38 -67"), 1.5],
  [spots("40 -77.4, 39.8 -74.6, 42.4 -71.4"), 1.3],
  [spots("12.4 -63.4, 14.8 -62.8, 15.8 -66.6"), 1.2],
  [spots("22 -71.6, 23.8 -68, 27.6 -72.4"), 1.4],
  [spots("45.6 -67.6, 49.4 -65.6, 53 -68.4, 54.6 -73"), 1.7],
  [spots("52.2 -73.4, 52.6 -69.6, 57.4 -67.4, 60.4 -66.4"), 1.6],
  [spots("64.2 -62, 61 -58, 61.4 -53.4, 65.4 -49.6"), 1.7],
  [spots("65.2 -50.4, 61.6 -46.4, 60.6 -42, 62.6 -38"), 1.5],
  [spots("37.6 -56.6, 41 -55.6, 42 -59.4, 41.4 -63.4"), 1.4],
];
