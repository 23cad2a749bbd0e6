/** Ways of blood through an atrium in which that from the lungs and that from below mix: each keeps its colour as far as the valve. */
import { lastOf } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import { smoothLine } from "../placing.ts";
import type { Course, CourseOf } from "../side-course.ts";

export function mixing({ behind, heart: { at }, frame }: Anatomy, course: CourseOf): readonly Course[] {
  const { lowerVein, scale: s } = frame;
  if (!lowerVein) return [];
  const valve = at(1, -7.4);
  const [x, y] = lastOf(lowerVein);
  return [
    ...(["left", "right"] as const).flatMap((side) =>
      behind
        .filter(({ name }) => name.startsWith(side))
        .map(({ line }, i) =>
          course([side, 0.5, "rich"], 8, smoothLine([lastOf(line), at(-15, i - 4), at(-5, -6), valve])),
        ),
    ),
    ...[-1, 0, 1].map((k) => {
      const fan: Point = [x + (4 * k - 1) * s, y + (15 + 5 * Math.abs(k)) * s];
      const over: Point = [fan[0] + 13 * s, fan[1] + (6 - 4 * k) * s];
      return course(["ivc", 1 / 3, "lower"], 9, smoothLine([[x + 2 * k, y], fan, over, at(-6, -7), valve]));
    }),
  ];
}
