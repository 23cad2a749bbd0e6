/** The ways that blood takes beyond the pathway's openings: veins that feed it, and from each pulmonary artery to every end of its tree. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { band, type Line, line } from "../../sim/geometry/centreline.ts";
import { type Distance, outlineDistance } from "../../sim/geometry/distance.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import { WALL } from "../layers/fade.ts";
import { type Anatomy, anatomyOf } from "./chest-anatomy.ts";
import { inChamber } from "./covers.ts";
import { INTO } from "./feeding-veins.ts";
import { descending, type Tube } from "./great-vessels.ts";
import { FAR, hiddenBy, partlyHidden } from "./hidden-marks.ts";
import { beforeArtery } from "./hilum.ts";
import { joined } from "./joined.ts";
import type { LungShape } from "./lung-shape.ts";
import { smoothLine } from "./placing.ts";
import { rootOutline, seatOf } from "./root-shape.ts";
import { type Course, type CourseOf, OVERLAP } from "./side-course.ts";
import { sinksFrom } from "./standing.ts";
import { EXPONENT, stemsOf, type Tree } from "./tree.ts";
import { fromLungs, intoVentricle } from "./vein-courses.ts";

/** Part of the lumen's half width that marks keep to, and the room that a mark itself needs, mm of a 5-year-old. */
export const WITHIN = 0.86;
const MARK = 0.7;

/** Parts of the hepatic flow and of the upper vein's by which the drawn veins share it (common practice, no source). */
const FEEDING: Readonly<Record<string, readonly [flow: string, share: number, carries: Course["carries"]]>> =
  {
    rightBrachiocephalicVein: ["svc", 0.5, 0],
    leftBrachiocephalicVein: ["svc", 0.5, 0],
    lowerInferiorVenaCava: ["legs", 1, 2],
    lowerVein: ["ivc", 1, "lower"],
    // Some three quarters of the liver's blood come by the portal vein (common textbook share).
    portalVein: ["hepaticVein", 0.75, 1],
    rightHepaticVein: ["hepaticVein", 0.5, 1],
    middleHepaticVein: ["hepaticVein", 0.25, 1],
    leftHepaticVein: ["hepaticVein", 0.25, 1],
  };

const known = new WeakMap<Anatomy, readonly Course[]>();

/** @param pathway mm from its lumen, where that is known: what lies behind it shows no marks there */
export function coursesOf(frame: ChestFrame, pathway: Distance = () => FAR): readonly Course[] {
  const anatomy = anatomyOf(frame);
  const before = known.get(anatomy);
  if (before) return before;
  const { veins, abdomen, lungs, frame: own } = anatomy;
  const made = [
    ...[...veins, ...abdomen.portal].flatMap((vein) => feeding(vein, own)),
    ...throughHeart(anatomy, pathway).map((course) => sinking(course, own)),
    ...toNeck(anatomy),
    ...lungs.flatMap((lung) =>
      branches(lung, own.scale).map(
        partlyHidden(anatomy, lung.side, pathway, [[lung.veins, stemsOf(lung.veins)[0]]]),
      ),
    ),
    ...lungs.flatMap((lung) => returns(lung, anatomy, pathway)),
  ];
  known.set(anatomy, made);
  return made;
}

export function feeding(tube: Tube, { scale: size, ivc }: ChestFrame): readonly Course[] {
  const fed = FEEDING[tube.name];
  if (!fed) return [];
  const [flow, share, carries] = fed;
  // The inferior vena cava shows its marks from where the portal vein has passed before it to where the pathway goes on.
  const caval = tube.name === "lowerInferiorVenaCava";
  const top = ivc.centre[1] + OVERLAP * size;
  const [joinsAt] = lastOf(tube.line);
  // From where a hepatic vein enters, its blood goes on within that.
  const on = [-4, 0, INTO].map((up): Point => [joinsAt, ivc.centre[1] + up * size]);
  const whole = line(
    caval
      ? tube.line.slice(Math.round(0.12 * tube.line.length)).filter(([, y]) => y < top)
      : [...tube.line, ...(/Hepatic/.test(tube.name) ? on : [])],
  );
  const total = lastOf(whole.run);
  const widths = whole.run.map((at, i) => {
    // The hepatic veins' blood takes the sides.
    const up = caval ? (ivc.centre[1] - entryAt(whole.points, i)[1]) / (CONFLUENCE * size) : 1;
    return (
      (tube.from + ((tube.to - tube.from) * at) / total) *
      (MIDDLE + (1 - MIDDLE) * Math.min(1, Math.max(0, up)))
    );
  });
  const along = courseOf(whole, widths, size, () => 1);
  // Marks thicken where their vessel comes into the picture; where two run in one, each brings but a part of them.
  if (/^(lowerInferior|portalVein)|Brachio/.test(tube.name))
    along.seen.forEach((_, i, seen) => {
      const run = entryAt(whole.run, i) / size;
      const met = flow === "svc" ? Math.max(0.6, (total / size - run) / MEET - 0.4) : 1;
      seen[i] = Math.min(1, run / RISES, met);
    });
  // The veins in the liver go down with it; the inferior vena cava above them does not.
  const held = Float32Array.from(whole.points, ([, y]) =>
    Math.min(1, Math.max(0, (ivc.centre[1] - y) / (CONFLUENCE * size))),
  );
  const rides = /epatic|ortal/.test(tube.name) ? { rides: { about: "diaphragm", held } as const } : {};
  return [{ ...along, ...rides, flow, share, carries, area: total * (tube.from + tube.to) * 0.5 }];
}

/** mm of a 5-year-old from the lower opening down to where the hepatic veins enter */
const CONFLUENCE = 5;
/** and of its width there, what the blood from below is left with */
const MIDDLE = 0.5;
/** mm of a 5-year-old over which two veins meet above the upper opening */
const MEET = 9;
/** mm of a 5-year-old over which marks that come into the picture thicken to their number */
const RISES = 16;

/** From the veins through the atrioventricular valve to the apex, and from there out into the aorta and its arch. */
function throughHeart(anatomy: Anatomy, pathway: Distance): readonly Course[] {
  const { before, frame } = anatomy;
  const { at, size, trunk } = anatomy.heart;
  const stump = outlineDistance(band(trunk.line, trunk.from, trunk.to));
  const root = outlineDistance(rootOutline(seatOf(anatomy)));
  const course: CourseOf = ([flow, share, carries], width, points) => {
    const whole = line(points);
    const widths = whole.run.map(() => width * size);
    const along = courseOf(whole, widths, frame.scale, () => 1);
    return { ...along, flow, share, carries, area: HEART * lastOf(whole.run) * width * size };
  };
  const entering = joined()?.mixing(anatomy, course) ?? intoVentricle(anatomy, course);
  const aorta = lastOf(before);
  const arch = aorta.line.filter((_, i) => i > 9);
  // It goes on downwards as far as the left pulmonary artery lets it be seen.
  const low = frame.left.centre[1] + 9 * frame.scale;
  const down = descending(anatomy).flatMap(({ line }) => line);
  // Its way down lies behind the left pulmonary artery, its way up before the pathway, where a chamber is seen through it.
  const turn = (lastOf(arch)[0] + entryAt(arch, 0)[0]) / 2;
  const artery: Distance = (x, y) => (x < turn && !inChamber(frame, x, y) ? FAR : pathway(x, y) - WALL);
  const leaving = hiddenBy([stump, artery])(
    course(["aorta", 1, "arterial"], 11, [
      ...smoothLine([at(30, 0), at(19, 5), at(9, 8.6), at(0, 9), entryAt(arch, 0)]),
      ...arch.slice(1, -6),
      ...down.slice(8).filter(([, y]) => y > low),
    ]),
  );
  const inAorta = outlineDistance(band(arch, aorta.from, aorta.to));
  return [...fromLungs(anatomy, pathway, course), ...entering.map(hiddenBy([stump, root, inAorta])), leaving];
}

/** It goes down as the heart does that it runs through. */
function sinking(course: Course, frame: ChestFrame): Course {
  const { hinge, height } = sinksFrom(frame);
  return {
    ...course,
    rides: { about: "diaphragm", held: course.y.map((y) => Math.max(0, (hinge - y) / height)) },
  };
}

/** From the arch, which lies before their roots, up its branches, behind the left brachiocephalic vein. */
export function toNeck({ before, veins, frame }: Anatomy): readonly Course[] {
  const covers = [lastOf(before), ...veins.filter(({ group }) => group === "brachiocephalic")].map(
    ({ line, from, to }) => outlineDistance(band(line, from, to)),
  );
  const wide = before.slice(0, -1);
  const all = wide.reduce((sum, { from }) => sum + from, 0);
  return wide.map((tube) => {
    const whole = line(tube.line);
    const along = courseOf(
      whole,
      whole.run.map(() => tube.to),
      frame.scale,
      () => 1,
    );
    return hiddenBy(covers)({
      ...along,
      flow: "upper",
      share: tube.from / all,
      carries: "arterial",
      area: 0.7 * lastOf(whole.run) * tube.to,
    });
  });
}

/** Marks in the heart for those that a vessel of its width would hold. */
const HEART = 0.34;

/** From the mouth to each end: neighbours share their first stretch, and their marks fill it together. */
export const branches = ({ arteries, side, hilum }: LungShape, size: number): readonly Course[] =>
  arteries.ends.map((end) =>
    inTree(arteries, wayTo(arteries, end), { flow: side, share: 1, carries: side, hilum }, size),
  );

/** From each end of the veins' trees back to the root. */
function returns(
  { arteries, veins, side, hilum }: LungShape,
  anatomy: Anatomy,
  pathway: Distance,
): readonly Course[] {
  const size = anatomy.frame.scale;
  const lower = new Set(stemsOf(veins)[1]);
  const crossing = side === "right" ? beforeArtery(anatomy) : [];
  const free: Distance = (x, y) =>
    crossing.some(({ at }) => Math.hypot(at[0] - x, at[1] - y) < 4 * size) ? FAR : pathway(x, y);
  const [seen, under] = [
    partlyHidden(anatomy, "rich", free),
    partlyHidden(anatomy, "rich", pathway, [[arteries, [...arteries.nodes.keys()]]]),
  ];
  return veins.ends.map((end) => {
    // Half of the lung's flow for each of its two veins.
    const moved = { flow: side, share: 0.5, carries: "rich", hilum } as const;
    const course = inTree(veins, wayTo(veins, end).reverse(), moved, size);
    return (lower.has(end) ? under : seen)(course);
  });
}

/** Nodes to an end, from the first before the root: a stem's nodes come last of all. */
export function wayTo({ nodes }: Tree, end: number): number[] {
  const way = [end];
  for (let i = end; entryAt(nodes, i).parent >= 0 && way[0] === i; ) {
    const { parent } = entryAt(nodes, i);
    way.unshift(parent);
    if (parent < i) i = parent;
  }
  return way;
}

export function inTree(
  { nodes, ends }: Tree,
  way: readonly number[],
  { hilum, ...moved }: Pick<Course, "flow" | "share" | "carries"> & { readonly hilum: Point },
  size: number,
): Course {
  const widths = way.map((i) => entryAt(nodes, i).width);
  const whole = line(way.map((i) => entryAt(nodes, i).at));
  const widest = Math.max(...widths);
  // Continuity: with n of N ends beyond it, a stretch carries n/N of the flow; the widths tell n.
  const part = (i: number) => (entryAt(widths, i) / widest) ** EXPONENT;
  const area = (SPARSE * lastOf(whole.run) * widest) / ends.length ** 0.75;
  const least = (CROWD * widest) / ends.length ** (1 / EXPONENT);
  const seen = Float32Array.from(widths, (width) => Math.min(1, least / width) ** SIDE_BY_SIDE);
  const held = new Float32Array(way.length).fill(1);
  return { ...courseOf(whole, widths, size, part), ...moved, area, seen, rides: { about: hilum, held } };
}

/** Marks in a tree for those that its stem would hold: twigs that carry few show the way well enough. */
const SPARSE = 0.6;

/** Courses side by side that show all of their marks. */
const CROWD = 3;
/** By which the marks of all courses through a width would crowd there: their number goes with the ends', the room with 1. */
const SIDE_BY_SIDE = EXPONENT - 1;

/** @param part of the course's flow that passes at a point */
export function courseOf(whole: Line, widths: readonly number[], size: number, part: (i: number) => number) {
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
