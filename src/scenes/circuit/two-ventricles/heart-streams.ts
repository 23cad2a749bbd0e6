/** Ways that marks of blood take through a heart with two ventricles and both lungs where these fill the picture, as those beyond a pathway's openings do. */
import { lastOf } from "../../../sim/checked/present.ts";
import { band, line, spotAt } from "../../../sim/geometry/centreline.ts";
import { type Distance, outlineDistance } from "../../../sim/geometry/distance.ts";
import type { ChestFrame, Point } from "../../../sim/geometry/geometry.ts";
import { anatomyOf } from "../../anatomy/chest-anatomy.ts";
import { branches, courseOf, feeding, inTree, toNeck, wayTo } from "../../anatomy/courses.ts";
import type { BloodTube } from "../../anatomy/great-vessels.ts";
import { hiddenBy } from "../../anatomy/hidden-marks.ts";
import type { LungShape } from "../../anatomy/lung-shape.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import type { Course } from "../../anatomy/side-course.ts";
import { stemsOf } from "../../anatomy/tree.ts";
import type { Spot } from "../../drawing/curve-drawing.ts";
import { CHEST_AT, inChest, onPlane } from "../chest-plan.ts";
import { layVessels } from "../dots.ts";
import { seenAlong, seenAt } from "../hidden.ts";
import type { Blood, Vessel } from "../vessel.ts";
import { throughHeart } from "./heart-courses.ts";
import { BEFORE_OUTFLOW, EARS, LEFT_ATRIUM, RIGHT_ATRIUM, SAC, VENTRICLES } from "./heart-plan.ts";
import { type GreatVessels, greatVessels } from "./heart-vessels.ts";

const CARRIES: Partial<Record<Blood, Course["carries"]>> = {
  svc: 0,
  ivc: "lower",
  pulmonaryArtery: "left",
  pulmonaryVein: "rich",
  arterial: "arterial",
};

/** Side by side through a chamber. */
const STRANDS = 5;
/** Marks in these for those that vessels of their width would hold. */
const SPARSE = 0.5;
/** The veins that feed them run side by side in their last stretch. */
const thinned = (course: Course): Course => ({ ...course, area: 0.7 * course.area });
/** mm: both walls of a great vessel. */
const WALLS = 2.4;

const bandOf = ({ line: way, from, to }: BloodTube): Distance =>
  outlineDistance(band(way, from + WALLS, to + WALLS));

/** Through a chamber, each strand with its part of the flow and of the room. */
function strands(
  vessel: Vessel,
  [one, other]: readonly [readonly Spot[], readonly Spot[]],
): readonly Course[] {
  const sides = [one, other].map((side) => line(smoothLine(side.map(inChest), 8)));
  const steps = 40;
  return Array.from({ length: STRANDS }, (_, k) => {
    const part = (k + 0.5) / STRANDS;
    const [points, gaps]: [Point[], number[]] = [[], []];
    for (let i = 0; i <= steps; i++) {
      const [[ax, ay], [bx, by]] = sides.map((side) => spotAt(side, i / steps).at) as [Point, Point];
      points.push([ax + part * (bx - ax), ay + part * (by - ay)]);
      gaps.push(Math.hypot(bx - ax, by - ay) / STRANDS);
    }
    const whole = line(points);
    // So wide that all strands have the chamber's own section.
    const along = courseOf(
      whole,
      gaps.map((gap) => gap * Math.sqrt(STRANDS)),
      1,
      () => 1,
    );
    const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
    const { beats, about } = vessel;
    const held = new Float32Array(gaps.length).fill(1);
    return {
      ...along,
      ...(beats && about && { rides: { about: inChest(about), held, beats } }),
      room: Float32Array.from(gaps, (gap) => 0.46 * gap),
      ...movedBy(vessel, 1 / STRANDS),
      area: SPARSE * lastOf(whole.run) * mean,
    };
  });
}

const movedBy = ({ flow, share = 1, blood }: Vessel, part = 1) => ({
  flow,
  share: share * part,
  carries: CARRIES[blood] ?? 0,
});

function along(vessel: Vessel): Course {
  const whole = line(smoothLine(vessel.points.map(inChest), 8));
  const width = vessel.width / CHEST_AT.scale;
  const own = courseOf(
    whole,
    whole.run.map(() => width),
    1,
    () => 1,
  );
  return { ...own, ...movedBy(vessel), area: lastOf(whole.run) * width };
}

/** What lies before a way that is painted behind the heart. */
function coversOf(name: string, drawn: GreatVessels): readonly Distance[] {
  const { upperVein, aorta, trunk, rightArtery, leftArtery } = drawn;
  const ascending = { ...aorta, line: aorta.line.filter((_, i) => i < aorta.line.length / 2) };
  if (name === "rightPulmonaryArtery") return [upperVein, ascending].map(bandOf);
  if (name.startsWith("left")) return [...[EARS.left, VENTRICLES].map(outlineDistance), bandOf(leftArtery)];
  return [
    ...[RIGHT_ATRIUM, VENTRICLES, EARS.right, BEFORE_OUTFLOW].map(outlineDistance),
    ...[upperVein, ascending, trunk, rightArtery].map(bandOf),
  ];
}

/** From its mouth through the left atrium to the mitral valve. */
function intoVentricle(vessel: Vessel): Vessel {
  const onward: readonly Point[] = vessel.name.startsWith("left")
    ? [
        [55.6, -25],
        [54.4, -31],
      ]
    : [
        [30, -16],
        [46, -15.6],
        [49.6, -23],
        [50, -31],
      ];
  return { ...vessel, points: [...vessel.points, ...onward.map(onPlane)] };
}

function inHeart(drawn: GreatVessels): readonly Course[] {
  const vessels = throughHeart(drawn)
    .filter(({ name }) => name !== "inLeftAtrium")
    .map((vessel) => (vessel.behind && vessel.blood === "pulmonaryVein" ? intoVentricle(vessel) : vessel));
  const seen = seenAlong(layVessels(vessels));
  return vessels.flatMap((vessel, i): readonly Course[] => {
    if (vessel.sides) return strands(vessel, vessel.sides);
    const own = along(vessel);
    const total = lastOf(own.run as unknown as readonly number[]);
    const shown = { ...own, seen: own.run.map((run) => seenAt(seen[i], run / total)) };
    return [vessel.behind ? hiddenBy(coversOf(vessel.name, drawn))(shown) : shown];
  });
}

/** From each end of a lung's veins back to its stem. */
function returns({ veins, side, hilum }: LungShape, drawn: GreatVessels): readonly Course[] {
  const lower = new Set(stemsOf(veins)[1]);
  return veins.ends.map((end) => {
    const way = wayTo(veins, end).reverse();
    const name = `${side}${lower.has(end) ? "Lower" : "Upper"}PulmonaryVein`;
    const course = inTree(veins, way, { flow: side, share: 0.5, carries: "rich", hilum }, 1);
    // The heart's vessels go on from where their own way begins.
    return hiddenBy([...coversOf(name, drawn), ...[LEFT_ATRIUM, SAC].map(outlineDistance)])(course);
  });
}

/** As `coursesOf` for a chest with one ventricle. */
export function heartStreams(frame: ChestFrame): readonly Course[] {
  const anatomy = anatomyOf(frame);
  const { veins, abdomen, lungs } = anatomy;
  const drawn = greatVessels(anatomy);
  const heart = [VENTRICLES, LEFT_ATRIUM, RIGHT_ATRIUM, SAC].map(outlineDistance);
  const before = hiddenBy([...heart, ...drawn.returning.map(bandOf)]);
  return [
    ...[...veins, ...abdomen.portal].flatMap((vein) => feeding(vein, frame).map(thinned)),
    ...inHeart(drawn),
    ...toNeck(anatomy),
    ...lungs.flatMap((lung) => branches(lung, frame.scale).map(before)),
    ...lungs.flatMap((lung) => returns(lung, drawn)),
  ];
}
