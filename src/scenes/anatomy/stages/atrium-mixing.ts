/** Ways of blood through an atrium in which that from the lungs and that from below mix: each keeps its colour as far as the valve. */
import { lastOf } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import { INLET_MIDDLE, isCommon } from "../heart-shape.ts";
import { placing, smoothLine } from "../placing.ts";
import type { Course, CourseOf } from "../side-course.ts";

/** From a pulmonary vein's mouth on, x and y in the heart. */
const FROM_LUNGS: Readonly<Record<string, readonly Point[]>> = {
  rightUpperPulmonaryVein: [
    [7, 1],
    [12, 5],
    [19, 2],
    [28, -6],
  ],
  rightLowerPulmonaryVein: [
    [4, -7],
    [11, -1],
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
/** From the inferior vena cava's mouth: by the septum's hole to the other side, behind the aorta; two turn round beneath the roof before. */
const FROM_BELOW: readonly (readonly Point[])[] = [
  [
    [-9.6, -20],
    [-12.4, -10],
    [-13, 1],
    [-11.6, 7],
    [-8.6, 7.4],
    [-7, 1],
    [-4.4, -5],
    [0, -6.6],
    [5, -3],
    [11, 4],
    [18, 4],
    [25, -2],
  ],
  [
    [-8, -20],
    [-10, -11],
    [-10, -1],
    [-8.6, 3],
    [-6.4, -1],
    [-4, -6],
    [0, -8],
    [6, -3],
    [13, 0],
    [22, -3],
  ],
  [
    [-5.6, -20],
    [-9, -13],
    [-5, -9],
    [0, -9.6],
    [6, -5],
    [13, -3],
    [21, -5],
  ],
  [
    [-3, -20.6],
    [-5, -15.4],
    [-3, -12.4],
    [0.4, -11.4],
    [6, -8],
    [14, -6],
    [25, -8],
  ],
];

/** Null where nothing mixes. */
export function mixing(anatomy: Anatomy, course: CourseOf): readonly Course[] | null {
  if (!isCommon(anatomy.frame)) return null;
  const { behind, heart, frame } = anatomy;
  const { inHeart } = placing(frame);
  // Side by side through the valve, in the order in which they come to it.
  const on = (points: readonly Point[], place: number) => [
    ...points.map((point) => inHeart(...point)),
    heart.at(1, INLET_MIDDLE + place),
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
