/** What effort changes: the same numbers between two bodies and along the curves, each where in the body it happens. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { flowTrace, meanOf } from "../drawing/trace-clock.ts";
import { veinsToLungs } from "./exercise-reading.ts";

export interface ChangeRow {
  /** its words are `further.exercise.row.<key>`, with the unit */
  readonly key: string;
  readonly read: (circulation: Circulation) => number;
  readonly digits: 0 | 1;
  readonly tone: "rich" | "poor";
  /** L/min: drawn to one scale with the others that are */
  readonly flow?: true;
  /** on the grown body's plane, where it is seen; of what lies on both sides the left one */
  readonly at: Spot;
  /** a number of the whole: no line leads to its place */
  readonly whole?: true;
  readonly paired?: true;
  /** Where there is no room for all: 0 stays longest. */
  readonly rank: number;
}

const meanFlow = ({ traces }: Circulation, name: string): number => {
  const flow = flowTrace(traces.flows, name);
  return flow ? meanOf(traces, flow) : Number.NaN;
};

export const RATE: ChangeRow = {
  key: "rate",
  read: ({ extras }) => extras.heartRate ?? Number.NaN,
  digits: 0,
  tone: "rich",
  at: [590, 440],
  rank: 0,
};

/** Times the rate it is the flow below: what the ventricle ejects goes to the collaterals to the lungs too. */
export const STROKE: ChangeRow = {
  key: "stroke",
  read: ({ flows, extras }) => (1000 * flows.systemic) / (extras.heartRate ?? Number.NaN),
  digits: 0,
  tone: "rich",
  at: [590, 440],
  whole: true,
  rank: 1,
};

export const OUTPUT: ChangeRow = {
  key: "output",
  read: ({ flows }) => flows.systemic,
  digits: 1,
  tone: "rich",
  flow: true,
  at: [527, 600],
  whole: true,
  rank: 4,
};

export const VEINS: ChangeRow = {
  key: "veins",
  read: veinsToLungs,
  digits: 1,
  tone: "poor",
  at: [468, 214],
  rank: 2,
};

/** From the head down. */
export const CHANGES: readonly ChangeRow[] = [
  {
    key: "upper",
    read: (state) => meanFlow(state, "upper"),
    digits: 1,
    tone: "rich",
    flow: true,
    at: [560, -110],
    rank: 6,
  },
  VEINS,
  RATE,
  STROKE,
  OUTPUT,
  {
    key: "belly",
    read: (state) => meanFlow(state, "splanchnic"),
    digits: 1,
    tone: "rich",
    flow: true,
    at: [640, 838],
    rank: 5,
    paired: true,
  },
  {
    key: "legs",
    read: (state) => meanFlow(state, "legs"),
    digits: 1,
    tone: "rich",
    flow: true,
    at: [648, 1220],
    paired: true,
    rank: 3,
  },
  {
    key: "legVeins",
    read: ({ extras }) => extras.legVeinSaturation ?? Number.NaN,
    digits: 0,
    tone: "poor",
    at: [602, 1860],
    paired: true,
    rank: 7,
  },
];
