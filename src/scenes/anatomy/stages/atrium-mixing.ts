/** Ways of blood through an atrium in which that from the lungs and that from below mix: each keeps its colour as far as the valve. */
import { lastOf } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { spots } from "../../drawing/curve-drawing.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import { ATRIOVENTRICULAR_MIDDLE, isCommon } from "../heart-shape.ts";
import { placing, smoothLine } from "../placing.ts";
import type { Course, CourseOf } from "../side-course.ts";

/** From a pulmonary vein's mouth on, x and y in the heart. */
const FROM_LUNGS: Readonly<Record<string, readonly Point[]>> = {
  rightUpperPulmonaryVein: [
    [13, 4],
    [19, 2],
    [28, -6],
  ],
  rightLowerPulmonaryVein: [
    [11, -3],
    [19, -3],
    [28, -9],
  ],
  leftUpperPulmonaryVein: [
    [29, 5],
    [31, -3],
  ],
  leftLowerPulmonaryVein: [
    [30, -1],
    [32, -5.6],
  ],
};
/** From the inferior vena cava's mouth: through the septum's defect to the other side, behind the aorta; two turn round beneath the roof before. */
const FROM_BELOW: readonly (readonly Point[])[] = [
  "-9.6 -20, -14.6 -11, -16.4 -1, -15 7.4, -11 8.6, -7.6 3.4, -4.6 -0.6, 0 -0.4, 6 4, 12 6, 18 4, 25 -2",
  "-8 -20, -12.6 -12, -13 -3, -10 0.6, -6.4 -2.4, 0 -3, 6 1, 13 2, 22 -3",
  "-5.6 -20, -9.6 -14, -9 -8, -5 -5.4, 0 -5, 6 -2, 13 -1, 21 -5",
  "-3 -20.6, -5.6 -15.6, -6 -11, -3 -8.2, 3 -5.6, 10 -3.6, 16 -4, 25 -8",
].map(spots);

/** Null where nothing mixes. */
export function mixing(anatomy: Anatomy, course: CourseOf): readonly Course[] | null {
  if (!isCommon(anatomy.frame)) return null;
  const { behind, heart, frame } = anatomy;
  const { inHeart } = placing(frame);
  // Side by side through the valve, in the order in which they come to it.
  const on = (points: readonly Point[], place: number) => [
    ...points.map((point) => inHeart(...point)),
    heart.at(1, ATRIOVENTRICULAR_MIDDLE + place),
  ];
  const below = frame.lowerVein ? FROM_BELOW : [];
  return [
    ...behind.flatMap(({ name, line }) => {
      const way = FROM_LUNGS[name];
      const side = name.startsWith("left") ? "left" : "right";
      return way
        ? [
            course(
              [side, 0.5, "rich"],
              side === "left" ? 9 : 12,
              smoothLine([lastOf(line), ...on(way, side === "left" ? -2.4 : 1)]),
            ),
          ]
        : [];
    }),
    ...below.map((way, i) =>
      course(["ivc", 1 / below.length, "lower"], 6.4, smoothLine(on(way, 0.9 * i - 1))),
    ),
  ];
}
