/** Which marks of a course show: those that nothing lies before. */
import { entryAt } from "../../sim/checked/present.ts";
import { band } from "../../sim/geometry/centreline.ts";
import { type Distance, outlineDistance } from "../../sim/geometry/distance.ts";
import { WALL } from "../layers/fade.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import type { Course } from "./side-course.ts";
import type { Tree } from "./tree.ts";

/** mm: nothing is near */
export const FAR = 1e3;

/** mm of room beside a course that count at most: a stream through a chamber shows on one side of what lies before the other */
const WIDE = 3.5;

/** mm over which they grow fewer before that: blood goes on behind it, and does not stop */
const SOFT = 5;

/** Its marks do not show where one of these lies before them, however far to the side they keep. */
export const hiddenBy =
  (covers: readonly Distance[], soft = 0.01) =>
  (course: Course): Course => ({
    ...course,
    seen: course.seen.map((shown, i) => {
      const room = Math.min(WIDE, Math.max(1.5, entryAt(course.room, i) + 1));
      const free = Math.min(
        ...covers.map((distance) => distance(entryAt(course.x, i), entryAt(course.y, i)) - room),
      );
      return shown * Math.min(1, Math.max(0, free / soft));
    }),
  });

/** What lies before the lungs' vessels: heart and aorta, the pericardium, these limbs of a tree, and the pathway but for the arteries' own first stretch. */
export function partlyHidden(
  { parts, pericardium, frame, behind }: Anatomy,
  carries: Course["carries"],
  pathway: Distance,
  limbs: readonly (readonly [tree: Tree, nodes: readonly number[]])[] = [],
): (course: Course) => Course {
  const rich = carries === "rich";
  const organs = parts
    .filter(({ name }) => (rich ? HEART_PARTS : BEFORE_ARTERIES).test(name))
    .map(({ outline }) => outlineDistance(outline));
  const veins = behind.filter(({ holds }) => holds === "pulmonaryVein");
  const inVein = veins.map(({ line, from, to }) => outlineDistance(band(line, from, to)));
  const inPericardium = outlineDistance(pericardium);
  // The great pulmonary veins lie before the pericardium, and the lungs' own vessels behind it.
  const pericardiumAt: Distance = (x, y) =>
    rich && inVein.some((vein) => vein(x, y) < 0) ? FAR : inPericardium(x, y);
  const before = limbs.flatMap(([{ nodes }, which]) =>
    which.map((i) => entryAt(nodes, i)).filter(({ width }) => width > THICK * frame.scale),
  );
  const limbAt: Distance = (x, y) =>
    before.some(({ at, width }) => Math.hypot(at[0] - x, at[1] - y) < 0.7 * width) ? 0 : FAR;
  const wall: Distance = (x, y) => pathway(x, y) - WALL;
  const mouths = [frame.left, frame.right];
  // An artery's own first stretch lies before both.
  const past =
    (cover: Distance): Distance =>
    (x, y) =>
      !rich && mouths.some(({ centre, width }) => Math.hypot(x - centre[0], y - centre[1]) < 1.2 * width)
        ? FAR
        : cover(x, y);
  return hiddenBy([...organs, past(pericardiumAt), limbAt, past(wall)], SOFT);
}

const HEART_PARTS = /^(atrium|ventricle)$|[aA]orta/;
const BEFORE_ARTERIES = /^(atrium|ventricle|left\w+PulmonaryVein)$|[aA]orta/;

/** mm of a 5-year-old from which a limb hides the marks behind it */
const THICK = 2.4;
