/** The ways that blood takes beyond the pathway's openings: veins that feed it, and from each pulmonary artery to every end of its tree. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { type Line, line } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { type Anatomy, anatomyOf } from "./chest-anatomy.ts";
import type { Tube } from "./great-vessels.ts";
import type { LungShape } from "./lung-shape.ts";

export interface Course {
  /** mm: its points, and their lengths along it */
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly run: Float32Array;
  /** mm from the middle at each point that a mark may keep from it */
  readonly room: Float32Array;
  /** mm at each point that blood goes in the same time as one millimetre where it is widest */
  readonly delay: Float32Array;
  /** the trace that moves it, and the part of it that goes this way */
  readonly flow: string;
  readonly share: number;
  /** the greatest width, mm */
  readonly widest: number;
  /** index into ORIGINS, or the lung whose mixture it carries */
  readonly carries: 0 | 1 | 2 | "left" | "right";
  /** more marks here, fewer there: mm2 of lumen that are this course's own */
  readonly area: number;
}

/** Part of the lumen's half width that marks keep to, and the room that a mark itself needs, mm of a 5-year-old. */
export const WITHIN = 0.86;
const MARK = 0.7;

/** mm by which a feeding vein's marks run into the pathway, fading */
export const OVERLAP = 4;

/** Parts of the hepatic flow and of the upper vein's by which the drawn veins share it (common practice, no source). */
const FEEDING: Readonly<Record<string, readonly [flow: string, share: number, carries: 0 | 1 | 2]>> = {
  rightBrachiocephalicVein: ["svc", 0.5, 0],
  leftBrachiocephalicVein: ["svc", 0.5, 0],
  lowerInferiorVenaCava: ["legs", 1, 2],
  rightHepaticVein: ["hepaticVein", 0.5, 1],
  middleHepaticVein: ["hepaticVein", 0.25, 1],
  leftHepaticVein: ["hepaticVein", 0.25, 1],
};

const known = new WeakMap<Anatomy, readonly Course[]>();

export function coursesOf(...[frame]: Parameters<typeof anatomyOf>): readonly Course[] {
  const anatomy = anatomyOf(frame);
  const before = known.get(anatomy);
  if (before) return before;
  const { veins, lungs, frame: own } = anatomy;
  const made = [
    ...veins.flatMap((vein) => feeding(vein, own.scale)),
    ...lungs.flatMap((lung) => branches(lung, own.scale)),
  ];
  known.set(anatomy, made);
  return made;
}

function feeding(tube: Tube, size: number): readonly Course[] {
  const told = FEEDING[tube.name];
  if (!told) return [];
  const [flow, share, carries] = told;
  // The inferior vena cava shows its marks from where the portal vein has passed before it.
  const whole = line(tube.name.startsWith("lower") ? tube.line.slice(tube.line.length >> 1) : tube.line);
  const total = lastOf(whole.run);
  const widths = whole.run.map((at) => tube.from + ((tube.to - tube.from) * at) / total);
  const along = courseOf(whole, widths, size, () => 1);
  return [{ ...along, flow, share, carries, area: total * (tube.from + tube.to) * 0.5 }];
}

/** From the mouth to each end: neighbours share their first stretch, and their marks fill it together. */
function branches({ arteries: { nodes, ends }, side }: LungShape, size: number): readonly Course[] {
  return ends.map((end) => {
    const way: number[] = [];
    for (let i = end; i >= 0; i = entryAt(nodes, i).parent) way.push(i);
    way.reverse();
    const points = way.map((i): Point => entryAt(nodes, i).at);
    const widths = way.map((i) => entryAt(nodes, i).width);
    const whole = line(points);
    const counts = ends.length;
    // Continuity: with n of N ends beyond it, a stretch carries n/N of the flow; the widths tell n.
    const part = (i: number) => (entryAt(widths, i) / entryAt(widths, 0)) ** TREE;
    const along = courseOf(whole, widths, size, part);
    return {
      ...along,
      flow: side,
      share: 1,
      carries: side,
      area: (0.26 * lastOf(whole.run) * entryAt(widths, 0) * 2.2) / counts ** 0.75,
    };
  });
}

/** Exponent by which the number of ends goes with the width. */
const TREE = 2.2;

/** @param part of the course's flow that passes at a point */
function courseOf(whole: Line, widths: readonly number[], size: number, part: (i: number) => number) {
  const widest = Math.max(...widths);
  const delay = [0];
  for (let i = 1; i < widths.length; i++) {
    const width = (entryAt(widths, i) + entryAt(widths, i - 1)) / 2;
    const step = entryAt(whole.run, i) - entryAt(whole.run, i - 1);
    delay.push(entryAt(delay, i - 1) + (step * (width / widest) ** 2) / Math.max(0.02, part(i)));
  }
  return {
    x: Float32Array.from(whole.points, ([x]) => x),
    y: Float32Array.from(whole.points, ([, y]) => y),
    run: Float32Array.from(whole.run),
    room: Float32Array.from(widths, (width) => Math.max(0, (WITHIN * width) / 2 - MARK * size)),
    delay: Float32Array.from(delay),
    widest,
  };
}
