/**
 * A heart with two ventricles, opened from the front: outlines and valves in the chest's plane (mm of a 5-year-old, y up).
 * Drawn by hand after normal sections: the right ventricle before and to the right of the septum, the left one makes the apex and
 * the left border, its wall three times as thick.
 */
import { closedOutline } from "../../../sim/geometry/centreline.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { type Hanging, type Leaflets, MITRAL } from "../../anatomy/hanging-valve.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { spots } from "../../drawing/curve-drawing.ts";

/** An oval: its middle and its half axes. */
export type Oval = readonly [at: Point, across: number, up: number];

const closed = (text: string): readonly Point[] => closedOutline(spots(text), 8);

/** What each ventricle swells about, and with the left one the muscle of both: near its valves, so that these keep their place. */
export const PIVOT = { ventricle: [48, -28], rightVentricle: [22, -27] } as const satisfies Record<
  string,
  Point
>;

/** The sac around all of it, cut open at its front; below it lies on the diaphragm. */
export const SAC = closed(
  "-7 -11, -13.4 -16, -19 -25, -21.2 -36, -20.4 -48, -16 -58, -9 -64, -6 -78, 20 -84, 50 -84.6, 66 -81, 75.6 -71, 79.8 -58, 80 -47, 77.8 -37, 74.6 -28, 73.4 -20, 70 -11, 60 -4, 48 3, 32 8, 10 8, -4 4",
);

/** Both ventricles from outside. */
export const VENTRICLES = closed(
  "9.4 -57.6, 10.4 -64, 17 -71.4, 30 -77.8, 44 -81.2, 55 -81.6, 63.6 -79, 70.8 -71.8, 75.4 -61, 76.4 -50, 74.4 -39.4, 69.6 -31.4, 63.4 -26, 54 -25.6, 47 -28, 45.4 -24.4, 44.6 -19.6, 35.6 -17, 25.6 -14.4, 25 -20, 23.8 -25.6, 20.2 -30.6, 13.4 -32.4, 12.8 -37, 10.6 -48",
);

/** The right one's blood: on into the atrium beyond the tricuspid valve, and up its outflow into the trunk beyond the pulmonary one. */
export const RIGHT_CAVITY = closed(
  "9.8 -56, 12 -62.4, 18.4 -69, 30 -75.2, 42 -78.4, 52 -79, 58.6 -77.2, 52 -73.6, 44.4 -68, 38.2 -61, 34.6 -53.6, 34 -46.4, 35.8 -39.4, 38.2 -32.6, 40 -27.4, 41.6 -22, 43.2 -15, 28.4 -11.6, 27.6 -17.6, 26.8 -23.4, 25.2 -29, 21.4 -33.6, 13.6 -34.8, 4 -36, 0 -46",
);

/** The right one's outflow, which lies before the left one's: its blood, and around it its wall. */
export const CONUS = closed(
  "17 -36, 21.4 -33.6, 25.2 -29, 26.8 -23.4, 27.6 -17.6, 28.4 -11.6, 43.2 -15, 41.6 -22, 40 -27.4, 38.2 -32.6, 35.8 -39.4, 34 -46.4, 26 -50, 16 -45",
);
export const BEFORE_OUTFLOW = closed(
  "14 -32.6, 20.2 -30.6, 23.8 -25.6, 25 -20, 25.2 -12, 45 -16, 44.4 -21.6, 43.2 -27.6, 41.6 -33.4, 39.8 -40, 38.6 -47, 26 -56, 14 -48",
);

/** Across the way back from the right one's outflow into its cavity. */
export const INTO_CONUS: Gate = {
  hinges: [
    [34, -46],
    [17, -43],
  ],
};

/** The left one's blood: on into the atrium beyond the mitral valve, and over the septum's crest towards its outflow behind the right one's. */
export const LEFT_CAVITY = closed(
  "61.6 -31, 66.2 -39, 68.4 -49, 67.2 -60, 63.4 -67.8, 59.6 -70.2, 55 -68, 49 -62.6, 43.8 -56, 41 -50, 39.4 -45, 39.6 -40, 41.4 -34.6, 43.4 -29.6, 43.6 -25, 42.6 -19, 46 -15, 60 -15, 62.4 -23",
);

export const RIGHT_ATRIUM = closed(
  "-2.4 -8, -3.6 -12.6, -5.8 -16.6, -10 -19.2, -14.6 -24.4, -17.7 -32, -18.4 -40, -16.8 -48.4, -12.8 -55, -8.4 -58.6, -5.2 -61.6, -3.6 -65, -2.6 -69, 2.6 -69, 3.6 -65, 5.8 -61.2, 9 -57.4, 11 -52, 12.6 -44, 13 -38, 12 -33.4, 9.6 -27.6, 7.4 -21.4, 5.6 -16.4, 3.6 -12.6, 2.4 -8",
);

export const LEFT_ATRIUM = closed(
  "9 -13, 20 -6, 32 -3.6, 40 -3.4, 48 -3.8, 54.6 -5.6, 59.6 -9.4, 62.4 -15, 63.2 -22, 62 -29.6, 52.6 -31.4, 42.8 -29.6, 24 -26, 11 -22",
);

/** The atria's ears, closed: the right one beside the aorta's root, the left one at the left border. */
export const EARS = {
  right: closed(
    "4.4 -24.4, 4 -18, 5.2 -12.4, 7.4 -8.6, 9.6 -8.2, 11.4 -5.6, 13.6 -6, 15.6 -4.6, 17.4 -6.8, 15.6 -8.8, 15.4 -11, 12.8 -11.6, 11.8 -14.2, 9.8 -15.2, 9.8 -18, 8.4 -19.4, 8.8 -24",
  ),
  left: closed(
    "60.8 -31, 59.6 -26.4, 60.4 -21.6, 62 -18.4, 64.4 -16.6, 66.2 -18, 68.2 -16.8, 70.4 -18.6, 69.8 -21, 72.2 -22.6, 71.4 -25, 73.2 -27.4, 71.2 -30, 68.4 -30.4, 65.4 -32.4",
  ),
} as const;

/** The left one's outflow, which passes behind the right one's to the aortic valve: its upper and its lower edge. */
export const OUTFLOW = [
  "50 -36, 43 -33.4, 33.6 -29.2, 24.1 -24.7",
  "12.3 -29.7, 15.4 -34.4, 21 -39.2, 29 -43.6, 36 -47.4, 41 -52",
].map((edge) => smoothLine(spots(edge), 8));

/** The septum's membranous part, beneath the aortic valve. */
export const MEMBRANOUS = spots("12.7 -30.2, 13.5 -32.4, 13.5 -34.4");

/** Where the left one's blood goes on behind the right one's outflow. */
export const GOES_BEHIND: Oval = [[41.8, -40], 4.6, 9];

/** The left coronary artery's mouth, in the aortic root's own lengths. */
export const CORONARY = [0.66, 1.14] as const;

/** A vessel that is cut across or aslant: its lumen, its long axis' turn, and whether it is an artery. */
type Crossed = readonly [lumen: Oval, turn: number, artery: boolean];

/**
 * Fat in the grooves between atria and ventricles with what runs in it: the right coronary artery above, its end with the small cardiac
 * vein below, and on the left the great cardiac vein over the circumflex artery.
 */
export const GROOVES: readonly (readonly [fat: readonly Point[], vessels: readonly Crossed[]])[] = (
  [
    [
      "8.6 -30.4, 9 -27.6, 10.4 -26, 12 -27.4, 13.4 -30.2, 14.4 -32.6, 14 -34.6, 13 -36, 11.4 -34.4",
      [[[[11.2, -30.4], 0.9, 1.3], 0.4, true]],
    ],
    [
      "6.4 -59.4, 8.2 -57.4, 9.4 -55.2, 10.6 -57, 11.4 -60.6, 13 -65.4, 9.6 -65.4, 7 -63.4",
      [
        [[[9.2, -62.4], 1.1, 0.6], 0.7, false],
        [[[10, -58.8], 0.5, 0.8], 0.2, true],
      ],
    ],
    [
      "60.8 -28.6, 61.4 -25.6, 64 -24.2, 67 -26, 70.6 -29.6, 73.4 -35, 70.6 -33, 66.8 -30.6, 63.6 -30.9",
      [
        [[[66.4, -28.1], 1.5, 0.8], -0.7, false],
        [[[63.8, -27.2], 0.8, 1], 0.3, true],
      ],
    ],
  ] as const
).map(([fat, vessels]) => [closed(fat), vessels]);

type Papillary = readonly [head: Point, bend: Point, root: Point, width: number];

/** The two papillary muscles of each ventricle that hold its valve's leaflets: head, bend and root, and how thick. */
const HOLDING = {
  tricuspid: [
    [[18, -60.6], [20, -64.6], [24, -72.4], 3.2],
    [[28, -58.6], [31, -64.4], [37, -77], 5],
  ],
  mitral: [
    [[49.6, -53.6], [49.4, -58.6], [51.4, -66], 5],
    [[60.6, -54], [62.6, -59.6], [65.4, -66], 5],
  ],
} as const satisfies Record<string, readonly [Papillary, Papillary]>;

export const PAPILLARY: readonly Papillary[] = [...HOLDING.tricuspid, ...HOLDING.mitral];

/** Between two chambers, or a chamber and its vessel. */
export interface Gate {
  /** from the patient's right to the left */
  readonly hinges: readonly [Point, Point];
  /** none for a semilunar valve */
  readonly funnel?: Funnel;
}

/** Leaflets that hang from a ring into the ventricle. */
type Funnel = Omit<Hanging, "at">;

/** A valve: its two hinges in the section, and the way of its blood from between them. */
export interface ValvePlan extends Gate {
  readonly name: "tricuspid" | "mitral" | "pulmonary" | "aortic";
}

/** Septal, posterior and anterior. */
const TRICUSPID: Leaflets = {
  each: [
    [0.1, 0.76, 0.74],
    [0.76, 1.16, 0.72],
    [1.16, 2.1, 1.04],
  ],
  meet: [-0.1, 0.16],
  aslant: 0.4,
};

/** mm between hinges, near the means for 0.7 m2: tricuspid 22, mitral 19, pulmonary 15.5, aortic 13 (z-score tables of echocardiography, from memory). */
export const VALVES: readonly ValvePlan[] = [
  {
    name: "tricuspid",
    hinges: [
      [9.8, -55.8],
      [13.2, -34.6],
    ],
    funnel: {
      heads: [HOLDING.tricuspid[0][0], HOLDING.tricuspid[1][0]],
      ...TRICUSPID,
    },
  },
  {
    name: "mitral",
    hinges: [
      [43.6, -29.4],
      [61.4, -30.6],
    ],
    funnel: {
      heads: [HOLDING.mitral[0][0], HOLDING.mitral[1][0]],
      ...MITRAL,
    },
  },
  {
    name: "pulmonary",
    hinges: [
      [27.6, -17.2],
      [42, -21.8],
    ],
  },
  {
    name: "aortic",
    hinges: [
      [12.3, -29.7],
      [24.1, -24.7],
    ],
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
export const MODERATOR: readonly Point[] = spots("40.4 -63.6, 37.4 -65.4, 35 -68.4, 34 -72.4");

/** Ridges of muscle towards each apex, and how thick. */
export const RIDGES: readonly (readonly [readonly Point[], number])[] = [
  [spots("44 -79, 44.6 -75.6, 47.4 -73.4, 47.6 -70.4"), 1.5],
  [spots("51 -79, 50.6 -76.6, 52.6 -74"), 1.3],
  [spots("12.4 -63.4, 14.8 -62.8, 15.8 -66.6"), 1.2],
  [spots("27.6 -74, 29 -70.4, 32 -75.4"), 1.4],
  [spots("53 -66.6, 56 -65.4, 58.4 -67.6, 59.4 -71"), 1.7],
  [spots("57.6 -70.6, 58.6 -67, 62 -66, 65 -64.6"), 1.6],
  [spots("68.6 -60, 65.6 -56.6, 66 -52.4, 69.6 -48.8"), 1.7],
  [spots("69.2 -49, 66.2 -45.6, 65.2 -41.4, 67.2 -37"), 1.5],
  [spots("42.4 -55, 45.6 -54.6, 46.8 -58.4, 46.8 -61"), 1.4],
];
