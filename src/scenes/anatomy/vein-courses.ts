/** Ways of blood from the lungs: through the great pulmonary veins, and on through an atrium of its own to the ventricle. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Distance } from "../../sim/geometry/distance.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { spots } from "../drawing/curve-drawing.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { ATRIOVENTRICULAR_MIDDLE } from "./heart-shape.ts";
import { partlyHidden } from "./hidden-marks.ts";
import { placing, smoothLine } from "./placing.ts";
import type { Course, CourseOf } from "./side-course.ts";

/** Each carries a quarter of what all four bring (common textbook share). */
const EACH = 0.25;
/** Their width for marks, in the heart's own lengths, and their marks for those of other ways through the heart. */
const WIDE = 8.6;
const DENSE = 1.3;
/** From each mouth on, x and y in the heart: those of the right lung over the pulmonary trunk's stump. */
const ONWARD: Readonly<Record<string, readonly Point[]>> = {
  rightUpperPulmonaryVein: spots("21.6 11.6, 26 8, 31 1"),
  rightLowerPulmonaryVein: spots("21 4.6, 25 3, 29.4 -2"),
  leftUpperPulmonaryVein: spots("32 5, 33.6 -2"),
  leftLowerPulmonaryVein: spots("31.6 -1, 32.4 -5"),
};

const veinsOf = ({ behind }: Anatomy) => behind.filter(({ holds }) => holds === "pulmonaryVein");

const denser = (course: Course): Course => ({ ...course, area: DENSE * course.area });

/** From where each leaves its lung to its mouth. */
export function fromLungs(anatomy: Anatomy, pathway: Distance, course: CourseOf): readonly Course[] {
  return veinsOf(anatomy).map(({ name, line }) => {
    const { arteries } = entryAt(anatomy.lungs, name.startsWith("right") ? 0 : 1);
    // The lower ones lie behind their lung's artery.
    const before = /Lower/.test(name) ? [[arteries, [...arteries.nodes.keys()]] as const] : [];
    const whole = denser(course(["pulmonaryVein", EACH, "rich"], WIDE, line));
    return partlyHidden(anatomy, "rich", pathway, before)(whole);
  });
}

/** The veins' own flow fills the atrium; what passes the valve empties it. */
export function intoVentricle(anatomy: Anatomy, course: CourseOf): readonly Course[] {
  const { inHeart } = placing(anatomy.frame);
  const { at } = anatomy.heart;
  const valve = at(1, ATRIOVENTRICULAR_MIDDLE);
  const filling = veinsOf(anatomy).map(({ name, line }) => {
    const on = (ONWARD[name] ?? []).map((point) => inHeart(...point));
    const points = [entryAt(line, line.length - BEFORE), lastOf(line), ...on, valve];
    return denser(course(["pulmonaryVein", EACH, "rich"], WIDE, smoothLine(points)));
  });
  const emptying = course(
    ["atrioventricularValve", 1, "arterial"],
    14,
    smoothLine([at(-10, -9), at(-4, -8), valve, at(15, -6), at(28, -3)]),
  );
  return [...filling, emptying];
}

/** Points of a vein's line from its mouth back to where marks begin to show within the atrium. */
const BEFORE = 5;
