/**
 * Angles of the joints over one round of a step, from a foot's contact to its next: degrees, positive forwards, knee and elbow bent.
 * Courses after usual gait curves of walking and running (Novacheck, Gait Posture 1998;7:77: foot off at 62 % and near 38 % of a round,
 * the thigh some 25 degrees behind the upright there, swinging knee 60 and over 90; from memory, rounded; drawing values).
 */
import { entryAt } from "../../sim/checked/present.ts";

type Course = readonly (readonly [round: number, degrees: number])[];

interface Joints {
  readonly hip: Course;
  readonly knee: Course;
  /** towards the shin */
  readonly ankle: Course;
}

const WALK: Joints = {
  hip: [
    [0, 25],
    [0.12, 21],
    [0.3, 2],
    [0.5, -17],
    [0.6, -9],
    [0.75, 18],
    [0.88, 28],
  ],
  knee: [
    [0, 4],
    [0.13, 16],
    [0.35, 5],
    [0.5, 12],
    [0.6, 36],
    [0.72, 60],
    [0.87, 20],
    [0.96, 3],
  ],
  ankle: [
    [0, 2],
    [0.08, -6],
    [0.3, 6],
    [0.47, 11],
    [0.6, -16],
    [0.75, -1],
    [0.9, 2],
  ],
};
const RUN: Joints = {
  hip: [
    [0, 34],
    [0.15, 18],
    [0.3, -14],
    [0.38, -25],
    [0.46, -20],
    [0.6, 14],
    [0.75, 50],
    [0.84, 60],
    [0.94, 46],
  ],
  knee: [
    [0, 16],
    [0.13, 40],
    [0.25, 30],
    [0.37, 14],
    [0.46, 44],
    [0.58, 98],
    [0.68, 112],
    [0.8, 96],
    [0.9, 62],
    [0.97, 22],
  ],
  ankle: [
    [0, 6],
    [0.15, 20],
    [0.28, 0],
    [0.38, -28],
    [0.5, -14],
    [0.7, 0],
    [0.9, 6],
  ],
};

/** Part of a round at which a runner's foot leaves the ground; the other comes down half a round after the first. */
const TOE_OFF = 0.38;

/** A course at any moment, smooth and without a seam. */
function at(course: Course, round: number): number {
  const n = course.length;
  const t = round - Math.floor(round);
  let i = n - 1;
  while (i > 0 && entryAt(course, i)[0] > t) i--;
  const point = (k: number): readonly [number, number] => {
    const turn = Math.floor(k / n);
    const [when, value] = entryAt(course, k - turn * n);
    return [when + turn, value];
  };
  const [[t0, a], [t1, b], [t2, c], [t3, d]] = [point(i - 1), point(i), point(i + 1), point(i + 2)];
  const w = (t - t1) / (t2 - t1);
  const [rise, fall] = [((c - a) / (t2 - t0)) * (t2 - t1), ((d - b) / (t3 - t1)) * (t2 - t1)];
  const [w2, w3] = [w * w, w * w * w];
  return (2 * w3 - 3 * w2 + 1) * b + (w3 - 2 * w2 + w) * rise + (-2 * w3 + 3 * w2) * c + (w3 - w2) * fall;
}

export interface Gait {
  /** 0 stands .. 1 at its widest */
  readonly stride: number;
  /** 0 walks .. 1 runs */
  readonly running: number;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const blend = (a: number, b: number, share: number): number => a + (b - a) * share;

/** Radians of one leg. */
export function legAt({ stride, running }: Gait, round: number) {
  const angle = (joint: keyof Joints): number =>
    radians(stride * blend(at(WALK[joint], round), at(RUN[joint], round), running));
  return { hip: angle("hip"), knee: Math.max(0, angle("knee")), ankle: angle("ankle") };
}

/** Radians of the arm on the side of a leg in this round: it swings against it. */
export function armAt({ stride, running }: Gait, round: number) {
  const swing = -Math.cos(2 * Math.PI * round);
  return {
    shoulder: radians(stride * blend(20 * swing, 40 * swing - 12, running)),
    elbow: radians(
      blend(8 + stride * (8 + 8 * swing) + 44 * stride ** 3, 66 + 30 * stride + 14 * swing, running),
    ),
  };
}

/** 0..1: how high a runner flies while neither foot is down. */
export function flightAt({ running }: Gait, round: number): number {
  const half = 2 * (round - Math.floor(2 * round) / 2);
  const off = 2 * TOE_OFF;
  return half < off ? 0 : running * Math.sin((Math.PI * (half - off)) / (1 - off));
}
