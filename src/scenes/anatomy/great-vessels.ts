/** Courses of the great vessels around the heart: aorta with its arch and neck branches, pulmonary veins, veins above and below the pathway. */
import type { Point } from "../../sim/geometry/geometry.ts";
import type { HeartShape } from "./heart-shape.ts";
import { type Placing, smoothLine } from "./place.ts";

/** Which blood a vessel holds, by the circulation's saturations. */
export type Holds = "arterial" | "pulmonaryVein" | "svc" | "ivc";

export interface Tube {
  readonly name: string;
  readonly line: readonly Point[];
  /** mm at its first and last point */
  readonly from: number;
  readonly to: number;
  readonly holds: Holds;
  /** which of its ends goes on out of the picture, and over which part of its way (0..1); two fifths when left out */
  readonly fades?: "start" | "end";
  readonly over?: number;
}

/** mm of a 5-year-old: inner diameters near the means for 0.7 m2 (ascending aorta 16, arch 13, descending 11: Kaiser et al. 2008, rounded and drawn slightly narrower). */
const ASCENDING = 14;
const ARCH = 12;
const DESCENDING = 9.5;

/** In front of the heart: from the ventricle's outflow beside the superior vena cava to the top of the arch and its left end. */
export function aorta({ frame, inChest }: Placing, heart: HeartShape): readonly Tube[] {
  const { scale: s, svc } = frame;
  const beside = (svc.centre[0] + svc.width / 2 + 3) / s + ASCENDING / 2;
  const up = (x: number, y: number): Point => inChest(beside + x, y);
  const branch = (name: string, width: number, ...line: readonly Point[]): Tube => ({
    name,
    line: smoothLine(line),
    from: width * s,
    to: 0.86 * width * s,
    holds: "arterial",
    fades: "end",
  });
  return [
    branch("brachiocephalicArtery", 7, up(5, 53), up(0, 66), up(-6, 78), up(-10, 92)),
    branch("leftCarotidArtery", 5, up(13, 58), up(13.5, 70), up(16, 92)),
    branch("leftSubclavianArtery", 5.6, up(22, 57), up(26, 68), up(33, 78), up(40, 90)),
    {
      name: "aorta",
      line: smoothLine([
        heart.at(1.5, 9),
        heart.at(-7, 8.6),
        heart.at(-16, 7.4),
        up(0.6, 29),
        up(0, 42),
        up(4, 53.5),
        up(14.5, 58.5),
        up(25, 54),
        up(29.5, 43),
        up(30, 32),
      ]),
      from: ASCENDING * s,
      to: ARCH * s * 0.92,
      holds: "arterial",
    },
  ];
}

/** Behind the heart and the pathway. */
export function behind(place: Placing, heart: HeartShape): readonly Tube[] {
  const { frame, inChest } = place;
  const { scale: s, svc } = frame;
  const beside = (svc.centre[0] + svc.width / 2 + 3) / s + ASCENDING / 2;
  return [
    {
      name: "descendingAorta",
      line: smoothLine([
        inChest(beside + 29, 44),
        inChest(beside + 30, 32),
        inChest(beside + 29, 14),
        inChest(beside + 24, -14),
        inChest(beside + 16, -44),
        inChest(beside + 12, -66),
        inChest(beside + 11, -84),
      ]),
      from: ARCH * s * 0.92,
      to: DESCENDING * s,
      holds: "arterial",
      fades: "end",
    },
    ...pulmonaryVeins(place, heart),
  ];
}

/** Where the veins leave the lungs, in the chest: right upper and lower, left upper and lower. */
export const VEIN_ROOTS = {
  right: [
    [-19, 9],
    [-21, -11],
  ],
  left: [
    [64, 10],
    [66, -9],
  ],
} as const;

function pulmonaryVeins({ frame, inChest, inHeart }: Placing, { size }: HeartShape): readonly Tube[] {
  const right = Math.max(0, (Math.min(...frame.atrium.map(([x]) => x)) - frame.heart) / size);
  const course = (name: string, root: readonly [number, number], lift: number, mouth: Point): Tube => {
    const from = inChest(root[0] + (root[0] < 0 ? -5 : 5), root[1]);
    const mid: Point = [(from[0] + mouth[0]) / 2, (from[1] + mouth[1]) / 2 + lift * size];
    return {
      name,
      line: smoothLine([from, mid, mouth]),
      from: 6.4 * frame.scale,
      to: 8 * frame.scale,
      holds: "pulmonaryVein",
      fades: "start",
      over: 0.3,
    };
  };
  const [rightUpper, rightLower] = VEIN_ROOTS.right;
  const [leftUpper, leftLower] = VEIN_ROOTS.left;
  return [
    course("rightUpperPulmonaryVein", rightUpper, 1, inHeart(right + 13, 8)),
    course("rightLowerPulmonaryVein", rightLower, -1, inHeart(right + 12, -7)),
    course("leftUpperPulmonaryVein", leftUpper, 1.5, inHeart(27, 9)),
    course("leftLowerPulmonaryVein", leftLower, 1, inHeart(27, -1)),
  ];
}

/** mm of a 5-year-old by which a feeding vein runs on into the pathway, whose wall covers it */
const INTO = 5;

/** The veins that bring blood to the pathway from beyond its openings. */
export function feedingVeins({ frame, inChest }: Placing): readonly Tube[] {
  const { scale: s, svc, ivc, hepaticVein, lowerVein } = frame;
  const [ax, ay] = svc.centre;
  const [bx, by] = ivc.centre;
  const above = (x: number, y: number): Point => [ax + x * s, ay + y * s];
  const below = (x: number, y: number): Point => [bx + x * s, by + y * s];
  const liver = (name: string, width: number, ...line: readonly Point[]): Tube => ({
    name,
    line: smoothLine(line),
    from: 0.14 * width * hepaticVein,
    to: width * hepaticVein,
    holds: "ivc",
  });
  return [
    {
      name: "lowerInferiorVenaCava",
      line: smoothLine([below(-1, -52), below(-0.6, -24), below(0, -7), [bx, by], below(0, INTO)]),
      from: 0.8 * ivc.width,
      to: ivc.width,
      holds: "ivc",
      fades: "start",
    },
    liver(
      "rightHepaticVein",
      0.78,
      inChest(-50, -62),
      inChest(-30, -54),
      below(-9, -7.5),
      below(-2.5, -1),
      below(-2, INTO),
    ),
    liver(
      "middleHepaticVein",
      0.66,
      inChest(-14, -70),
      inChest(-6, -62),
      below(-6, -13),
      below(-1.5, -3),
      below(-1, INTO),
    ),
    liver(
      "leftHepaticVein",
      0.66,
      inChest(48, -57),
      inChest(32, -56),
      below(9, -8.5),
      below(2.5, -2),
      below(2, INTO),
    ),
    liver("upperHepaticTwig", 0.4, inChest(-54, -50), inChest(-38, -50), inChest(-26, -53)),
    liver(
      "lowerHepaticTwig",
      0.36,
      inChest(-44, -78),
      inChest(-34, -66),
      inChest(-24, -58),
      inChest(-18, -52),
    ),
    liver("leftHepaticTwig", 0.3, inChest(24, -66), inChest(22, -60), inChest(16, -54)),
    {
      name: "rightBrachiocephalicVein",
      line: smoothLine([above(-14, 36), above(-11, 22), above(-5, 9), [ax, ay], above(-0.6, -INTO)]),
      from: 0.7 * svc.width,
      to: 0.8 * svc.width,
      holds: "svc",
      fades: "start",
    },
    {
      name: "leftBrachiocephalicVein",
      line: smoothLine([
        above(56, 29),
        above(36, 20),
        above(16, 11),
        above(4, 4),
        [ax, ay],
        above(-0.4, -INTO),
      ]),
      from: 0.66 * svc.width,
      to: 0.78 * svc.width,
      holds: "svc",
      fades: "start",
    },
    ...(lowerVein
      ? [{ name: "lowerVein", line: lowerVein, from: ivc.width, to: ivc.width, holds: "ivc" } as const]
      : []),
  ];
}
