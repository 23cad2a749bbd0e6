/** The ways that blood takes beyond the pathway's openings: veins that feed it, and from each pulmonary artery to every end of its tree. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { type Line, line } from "../../sim/geometry/centreline.ts";
import { planeDistance } from "../../sim/geometry/distance.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { type Anatomy, anatomyOf } from "./chest-anatomy.ts";
import type { Tube } from "./great-vessels.ts";
import type { LungShape } from "./lung-shape.ts";
import { smoothLine } from "./placing.ts";
import type { Tree } from "./tree.ts";

export interface Course {
  /** mm: its points, and their lengths along it */
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly run: Float32Array;
  /** mm from the middle at each point that a mark may keep from it */
  readonly room: Float32Array;
  /** mm at each point that blood goes in the same time as one millimetre where it is widest */
  readonly delay: Float32Array;
  /** part of its marks that show: fewer where courses run side by side, none where a part lies before it */
  readonly seen: Float32Array;
  /** the trace that moves it, and the part of it that goes this way */
  readonly flow: string;
  readonly share: number;
  /** the greatest width, mm */
  readonly widest: number;
  /** index into ORIGINS, "lower" for the lower vein's mixture, or the lung whose mixture it carries; "rich" for blood from the lungs, "arterial" for the heart's */
  readonly carries: 0 | 1 | 2 | "lower" | "left" | "right" | "rich" | "arterial";
  /** more marks here, fewer there: mm2 of lumen that are this course's own */
  readonly area: number;
}

/** Part of the lumen's half width that marks keep to, and the room that a mark itself needs, mm of a 5-year-old. */
export const WITHIN = 0.86;
const MARK = 0.7;

/** mm by which a feeding vein's marks run into the pathway, fading */
export const OVERLAP = 3.5;

/** Parts of the hepatic flow and of the upper vein's by which the drawn veins share it (common practice, no source). */
const FEEDING: Readonly<
  Record<string, readonly [flow: string, share: number, carries: 0 | 1 | 2 | "lower"]>
> = {
  rightBrachiocephalicVein: ["svc", 0.5, 0],
  leftBrachiocephalicVein: ["svc", 0.5, 0],
  lowerInferiorVenaCava: ["legs", 1, 2],
  // Where it opens into the atrium, with no pathway between.
  lowerVein: ["ivc", 1, "lower"],
  // Some three quarters of the liver's blood come by the portal vein (common textbook share).
  portalVein: ["hepaticVein", 0.75, 1],
  rightHepaticVein: ["hepaticVein", 0.5, 1],
  middleHepaticVein: ["hepaticVein", 0.25, 1],
  leftHepaticVein: ["hepaticVein", 0.25, 1],
};

const known = new WeakMap<Anatomy, readonly Course[]>();

export function coursesOf(...[frame]: Parameters<typeof anatomyOf>): readonly Course[] {
  const anatomy = anatomyOf(frame);
  const before = known.get(anatomy);
  if (before) return before;
  const { veins, abdomen, lungs, frame: own } = anatomy;
  const made = [
    ...[...veins, ...abdomen.portal].flatMap((vein) => feeding(vein, own.scale)),
    ...throughHeart(anatomy),
    ...lungs.flatMap((lung) => branches(lung, own.scale).map(partlyHidden(anatomy, false))),
    ...lungs.flatMap((lung) => returns(lung, anatomy, own.scale).map(partlyHidden(anatomy, true))),
  ];
  known.set(anatomy, made);
  return made;
}

function feeding(tube: Tube, size: number): readonly Course[] {
  const fed = FEEDING[tube.name];
  if (!fed) return [];
  const [flow, share, carries] = fed;
  // The inferior vena cava shows its marks from where the portal vein has passed before it.
  const hidden = tube.name === "lowerInferiorVenaCava" ? Math.round(0.27 * tube.line.length) : 0;
  const whole = line(tube.line.slice(hidden));
  const total = lastOf(whole.run);
  const widths = whole.run.map((at) => tube.from + ((tube.to - tube.from) * at) / total);
  const along = courseOf(whole, widths, size, () => 1);
  // Its marks thin out in the room that it opens into.
  const seen =
    carries === "lower" ? along.run.map((at) => Math.min(1, (total - at) / (OPENING * total))) : along.seen;
  return [{ ...along, seen, flow, share, carries, area: total * (tube.from + tube.to) * 0.5 }];
}

/** Part of the lower vein's length over which it opens. */
const OPENING = 0.35;

/** From the left pulmonary veins through the atrioventricular valve to the apex, and from there out into the aorta's root. */
function throughHeart({ behind, heart: { at, size }, frame }: Anatomy): readonly Course[] {
  const veins = behind.filter(({ name }) => name.startsWith("left"));
  const course = (flow: string, share: number, width: number, through: readonly Point[]): Course => {
    const whole = line(smoothLine(through));
    const widths = whole.run.map(() => width * size);
    const along = courseOf(whole, widths, frame.scale, () => 1);
    return { ...along, flow, share, carries: "arterial", area: HEART * lastOf(whole.run) * width * size };
  };
  return [
    ...veins.map(({ line }) =>
      course("atrioventricularValve", 1 / veins.length, 11, [
        lastOf(line),
        at(-14, -3),
        at(1, -7.4),
        at(15, -6),
        at(28, -3),
      ]),
    ),
    course("aorta", 1, 11, [at(30, 0), at(19, 5), at(9, 8.6), at(0, 9), at(-9, 8.4)]),
  ];
}

/** Marks in the heart for those that a vessel of its width would hold. */
const HEART = 0.34;

/** From the mouth to each end: neighbours share their first stretch, and their marks fill it together. */
const branches = ({ arteries, side }: LungShape, size: number): readonly Course[] =>
  arteries.ends.map((end) =>
    inTree(arteries, wayTo(arteries, end), { flow: side, share: 1, carries: side }, size),
  );

/** From each end of the veins' trees back to the root; on the left, where nothing lies before them, on into the atrium. */
function returns({ veins, side }: LungShape, { behind }: Anatomy, size: number): readonly Course[] {
  const tubes = behind.filter(({ name }) => side === "left" && name.startsWith("left"));
  return veins.ends.map((end) => {
    const way = wayTo(veins, end).reverse();
    const [rx, ry] = entryAt(veins.nodes, entryAt(way, way.length - 2)).at;
    const onward = tubes.find(
      ({ line: [from] }) => from && Math.hypot(from[0] - rx, from[1] - ry) < REACH * size,
    );
    // Half of the lung's flow for each of its two veins.
    return inTree(veins, way, { flow: side, share: 0.5, carries: "rich" }, size, onward);
  });
}

/** mm of a 5-year-old within which a pulmonary vein begins about its tree's root */
const REACH = 7;

/** Nodes from the root to an end. */
function wayTo({ nodes }: Tree, end: number): number[] {
  const way: number[] = [];
  for (let i = end; i >= 0; i = entryAt(nodes, i).parent) way.push(i);
  return way.reverse();
}

function inTree(
  { nodes, ends }: Tree,
  way: readonly number[],
  moved: Pick<Course, "flow" | "share" | "carries">,
  size: number,
  onward?: Tube,
): Course {
  const beyond = (onward?.line ?? []).filter((_, i) => i > 8 && i % 3 === 0);
  const widths = [
    ...way.map((i) => entryAt(nodes, i).width),
    ...beyond.map(() => Math.max(...way.map((i) => entryAt(nodes, i).width))),
  ];
  const whole = line([...way.map((i): Point => entryAt(nodes, i).at), ...beyond]);
  const widest = Math.max(...widths);
  // Continuity: with n of N ends beyond it, a stretch carries n/N of the flow; the widths tell n.
  const part = (i: number) => (entryAt(widths, i) / widest) ** TREE;
  const area = (SPARSE * lastOf(whole.run) * widest) / ends.length ** 0.75;
  const thinnest = Math.min(...widths);
  const seen = Float32Array.from(widths, (width) => (thinnest / width) ** SIDE_BY_SIDE);
  return { ...courseOf(whole, widths, size, part), ...moved, area, seen };
}

/** Marks in a tree for those that its stem would hold: twigs that carry few show the way well enough. */
const SPARSE = 0.7;

/** Exponent by which the number of ends goes with the width. */
const TREE = 2.2;
/** By which the marks of all courses through a width would crowd there: their number goes with TREE, the room with 1. */
const SIDE_BY_SIDE = TREE - 1;

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
    seen: new Float32Array(delay.length).fill(1),
    widest,
  };
}

/** What lies before the lungs' vessels; before the veins also the pulmonary arteries, as far as their walls reach. */
function partlyHidden({ parts, frame }: Anatomy, veins: boolean): (course: Course) => Course {
  const covers = parts
    .filter(({ name }) => /^(atrium|ventricle)$|[aA]orta/.test(name))
    .map(({ outline }) =>
      planeDistance({ open: [{ polygon: { points: outline } }], solid: [], openings: [] }, 0),
    );
  const arteries = veins ? [frame.left, frame.right] : [];
  const behindArtery = (x: number, y: number): boolean =>
    arteries.some(({ centre, normal, width }) => {
      const [dx, dy] = [x - centre[0], y - centre[1]];
      const along = dx * normal[0] + dy * normal[1];
      return (
        along < 0.4 * width && along > -3 * width && Math.abs(dy * normal[0] - dx * normal[1]) < 0.8 * width
      );
    });
  return (course) => ({
    ...course,
    seen: course.seen.map((shown, i) => {
      const [x, y] = [entryAt(course.x, i), entryAt(course.y, i)];
      return covers.some((distance) => distance(x, y) < 1.5) || behindArtery(x, y) ? 0 : shown;
    }),
  });
}
