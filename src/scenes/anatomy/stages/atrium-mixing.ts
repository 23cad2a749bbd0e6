/** Ways of blood through an atrium in which that from the lungs and that from below mix: each keeps its colour until it has mixed within the ventricle. */
import { entryAt, lastOf } from "../../../sim/checked/present.ts";
import { outlineDistance } from "../../../sim/geometry/distance.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { spots } from "../../drawing/curve-drawing.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import { ATRIOVENTRICULAR_MIDDLE, isCommon } from "../heart-shape.ts";
import { placing, smoothLine } from "../placing.ts";
import type { Course, CourseOf } from "../side-course.ts";
import { defectOf } from "./paint-common-atrium.ts";

/** From a pulmonary vein's mouth on, x and y in the heart: those of the right lung behind the aorta and over the pulmonary trunk's stump. */
const FROM_LUNGS: Readonly<Record<string, readonly Point[]>> = {
  rightUpperPulmonaryVein: spots("11 6, 17 15.2, 24 14.4, 30.6 9, 34.2 1.8"),
  rightLowerPulmonaryVein: spots("10 -2, 17 12.6, 23 12.2, 28.8 6.6, 31.6 0.5"),
  leftUpperPulmonaryVein: spots("32.6 7.4, 35.6 1"),
  leftLowerPulmonaryVein: spots("31.4 -1, 32 -6"),
};
/** From the inferior vena cava's end on, side by side over its width: up before the septum, some of it round beneath the roof; and from the septum's defect on behind that and the aorta. */
const FROM_BELOW: readonly (readonly [before: readonly Point[], after: readonly Point[]])[] = [
  [
    "-10.4 -28, -10.4 -22, -14.5 -14, -18.2 -6, -18.6 2, -15.5 8.4, -11 8, -8 3.5, -5.6 0.6",
    "2 4, 9 12, 16 15.8, 24 15, 31 9.5, 35 2, 35.4 -5",
  ],
  [
    "-8.2 -28, -8.2 -22, -11.8 -14, -14.6 -6, -14 1, -10.4 2.8, -7.4 0.6, -5.4 -1.4",
    "2 2, 9 10, 16 14.6, 23.6 13.8, 30 8.6, 33.6 1.6, 34 -6",
  ],
  [
    "-6 -28, -6 -22, -8.6 -15, -10.8 -8.6, -9.6 -4, -5.4 -3.8",
    "2 0, 9 8, 16 13.4, 23 12.6, 29 7.4, 32.2 1, 32.6 -7",
  ],
  [
    "-3.8 -28, -3.8 -22, -5.6 -16, -7.6 -10.4, -5.4 -6.4",
    "2 -2, 9 6, 16 12, 22.6 11.6, 28.6 5.6, 30.8 0, 31.2 -8",
  ],
  [
    "-1.6 -28, -1.6 -22, -3 -17.6, -4.8 -12.4, -4.8 -8.6",
    "2 -4, 9 4, 16 11, 22 10.8, 28 4.5, 29.6 -1, 29.8 -9",
  ],
].map(([before = "", after = ""]) => [spots(before), spots(after)]);

/** Marks in these for those of other ways through the heart, where those of the lower vein are among them, and where they are not. */
const DENSE = [1.2, 1.7] as const;
/** Points of a pulmonary vein's line from its mouth back to where marks begin to show. */
const BEFORE = 6;
/** mm of a 5-year-old's heart within the defect from where on a mark is not cut by its rim */
const CLEAR = 1.6;
/** Along the ventricle's axis: where streams begin and end to become one; and the width of that one, the valve's own. */
const [PARTED, MIXED] = [1, 23];
const WIDE = 17;

/** Part of the marks that are still of one origin, by the way along the ventricle's axis. */
function partedAt({ heart: { base, lean, size } }: Anatomy, x: number, y: number): number {
  const along = ((x - base[0]) * Math.cos(lean) + (y - base[1]) * Math.sin(lean)) / size;
  return Math.min(1, Math.max(0, (MIXED - along) / (MIXED - PARTED)));
}

const shownBy = (course: Course, part: (x: number, y: number, i: number) => number): Course => ({
  ...course,
  seen: course.seen.map((shown, i) => shown * part(entryAt(course.x, i), entryAt(course.y, i), i)),
});

/** Null where nothing mixes. */
export function mixing(anatomy: Anatomy, course: CourseOf): readonly Course[] | null {
  if (!isCommon(anatomy.frame)) return null;
  const { behind, heart, frame } = anatomy;
  const { inHeart } = placing(frame);
  const valve = (place: number): readonly Point[] =>
    [1, 12, MIXED].map((along, i) => heart.at(along, ATRIOVENTRICULAR_MIDDLE + place + 1.5 * i));
  const dense = DENSE[frame.lowerVein ? 0 : 1];
  const entering = (each: Course): Course => ({ ...parted(each), pooled: true, area: dense * each.area });
  const placed = (points: readonly Point[]) => points.map((point) => inHeart(...point));
  const parted = (each: Course) => shownBy(each, (x, y) => partedAt(anatomy, x, y));
  const fromLungs = behind.flatMap(({ name, line }) => {
    const way = FROM_LUNGS[name];
    if (!way) return [];
    const side = name.startsWith("left") ? "left" : "right";
    const [width, place] = side === "left" ? [9, -3] : [7, 1.6];
    // Those of the right lung are full at their mouths already: little is seen of their way to the aorta.
    const before = side === "left" ? [] : [entryAt(line, line.length - BEFORE)];
    const points = smoothLine([...before, lastOf(line), ...placed(way), ...valve(place)]);
    return [entering(course([side, 0.5, "rich"], width, points))];
  });
  const defect = outlineDistance(defectOf(anatomy));
  const fromBelow = (frame.lowerVein ? FROM_BELOW : []).map(([before, after], i) => {
    const points = smoothLine([...placed(before), ...placed(after), ...valve(2 * i - 3.4)]);
    const beyond = inHeart(...entryAt(after, 1))[0];
    const through = 10 * (before.length - 1);
    const whole = course(["ivc", 1 / FROM_BELOW.length, "lower"], 6.4, points);
    // Beyond the septum it shows through the defect alone, until it has passed the aorta.
    const septum = (x: number, y: number, k: number) =>
      k <= through || x > beyond || defect(x, y) < -CLEAR * heart.size ? 1 : 0;
    return entering(shownBy(whole, septum));
  });
  const mixed = course(
    ["atrioventricularValve", 1, "arterial"],
    WIDE,
    smoothLine([heart.at(-5, -7), ...valve(0), heart.at(30, -3)]),
  );
  // By turns, so that neither covers the other.
  const streams = FROM_BELOW.flatMap((_, i) =>
    [fromBelow, fromLungs].flatMap((each) => each.slice(i, i + 1)),
  );
  return [...streams, shownBy(mixed, (x, y) => 1 - partedAt(anatomy, x, y))];
}
