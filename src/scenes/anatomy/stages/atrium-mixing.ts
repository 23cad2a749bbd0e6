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
    "-10.4 -28, -10.4 -22, -14.5 -14, -18.2 -6, -18.6 2, -15.8 8, -11.6 8.2, -8.4 5, -5 3.4",
    "3 6.4, 10 9, 17 11, 23 10.4, 28.8 6.8, 32.8 1.2, 34.8 -5",
  ],
  [
    "-8.2 -28, -8.2 -22, -11.8 -14, -14.8 -6, -14.6 0.6, -11 3, -8 1.8, -5 0.4",
    "3 3.6, 10 6.8, 17 9, 22.6 8.4, 28.2 4.8, 31.8 -0.4, 33.6 -6",
  ],
  [
    "-6 -28, -6 -22, -8.8 -15, -11 -8.8, -10.4 -3.6, -7.4 -2, -4.6 -2",
    "3 1, 10 4.8, 17 7, 22 6.6, 27.4 3, 30.8 -2, 32.4 -7",
  ],
  [
    "-3.8 -28, -3.8 -22, -5.8 -16, -8 -10.6, -6.6 -6, -4 -5",
    "3 -1.4, 10 3, 17 6, 21.8 6.2, 27 3, 30.4 -1.8, 31.8 -7.2",
  ],
  [
    "-1.6 -28, -1.6 -22, -3 -17.6, -5 -12.8, -5 -9.4, -3.4 -8.4",
    "3 -4, 10 1, 17 5, 21.6 5.4, 27 2.2, 30 -2.4, 31 -7.6",
  ],
].map(([before = "", after = ""]) => [spots(before), spots(after)]);

/** Marks in these for those of other ways through the heart, where those of the lower vein are among them, and where they are not. */
const DENSE = [1.2, 1.7] as const;
/** Points of a pulmonary vein's line from its mouth back to where marks begin to show. */
const BEFORE = 6;
/** mm of a 5-year-old's heart within the defect from where on a mark is not cut by its rim */
const CLEAR = 1.6;
/** Along the ventricle's axis: between which places streams become one, and before that each mark's colour the mixture's; and the width of that one, the valve's own. */
const [PARTED, MIXED] = [8, 22];
const COLOURED = [-12, 16] as const;
const WIDE = 17;

/** 1 before the first of two places on the ventricle's axis, 0 beyond the second. */
function leftAt(
  { heart: { base, lean, size } }: Anatomy,
  [from, to]: readonly [number, number],
  [x, y]: Point,
): number {
  const along = ((x - base[0]) * Math.cos(lean) + (y - base[1]) * Math.sin(lean)) / size;
  return Math.min(1, Math.max(0, (to - along) / (to - from)));
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
  const partedAt = (x: number, y: number) => leftAt(anatomy, [PARTED, MIXED], [x, y]);
  const parted = (each: Course) => shownBy(each, partedAt);
  const entering = (each: Course): Course => ({
    ...parted(each),
    unmixed: each.x.map((x, i) => leftAt(anatomy, COLOURED, [x, entryAt(each.y, i)])),
    pooled: true,
    area: dense * each.area,
  });
  const placed = (points: readonly Point[]) => points.map((point) => inHeart(...point));
  const fromLungs = behind.flatMap(({ name, line }) => {
    const onward = FROM_LUNGS[name];
    if (!onward) return [];
    const side = name.startsWith("left") ? "left" : "right";
    const [width, place] = side === "left" ? [9, -3] : [7, 1.6];
    // Those of the right lung are full at their mouths already, for little is seen of their way to the aorta; but fabric hides what is before a mouth.
    const before = side === "left" || frame.graft ? [] : [entryAt(line, line.length - BEFORE)];
    const points = smoothLine([...before, lastOf(line), ...placed(onward), ...valve(place)]);
    const way = course([side, 0.5, "rich"], width, points);
    // Before a Fontan they are seen from where the aorta has hidden them: right of it lies the blood from below.
    const past = frame.lowerVein && side === "right" ? inHeart(9, 0)[0] : Number.NEGATIVE_INFINITY;
    return [entering(shownBy(way, (x) => (x < past ? 0 : 1)))];
  });
  const defect = outlineDistance(defectOf(anatomy));
  const fromBelow = (frame.lowerVein ? FROM_BELOW : []).map(([before, after], i) => {
    const points = smoothLine([...placed(before), ...placed(after), ...valve(1.4 * i - 4.6)]);
    const beyond = inHeart(...entryAt(after, 0))[0];
    const through = 10 * (before.length - 1);
    const whole = course(["ivc", 1 / FROM_BELOW.length, "lower"], 6.4, points);
    // Beyond the septum it shows through the defect, and on where that ends.
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
  return [...streams, shownBy(mixed, (x, y) => 1 - partedAt(x, y))];
}
