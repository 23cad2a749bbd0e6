/** Courses of the great vessels around the heart: aorta with its arch and neck branches, pulmonary veins, veins above and below the pathway. */
import { entryAt, lastOf, present } from "../../sim/checked/present.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";
import { atriumRight, type HeartShape, isCommon } from "./heart-shape.ts";
import { type Placing, smoothLine } from "./placing.ts";

/** Which blood a vessel holds, by the circulation's saturations. */
export type Holds = "arterial" | "pulmonaryVein" | "svc" | "ivc";

export interface Tube {
  readonly name: string;
  readonly line: readonly Point[];
  /** mm at its first and last point */
  readonly from: number;
  readonly to: number;
  /** which of its ends goes on out of the picture, and over which part of its way (0..1); two fifths when left out */
  readonly fades?: "start" | "end";
  readonly over?: number;
  /** part of its way over which its end is closed as a dome */
  readonly dome?: number;
}

/** One whose colour is that of its blood. */
export interface BloodTube extends Tube {
  readonly holds: Holds;
}

/** mm of a 5-year-old: inner diameters near the means for 0.7 m2 (ascending aorta 16, arch 13, descending 11: Kaiser et al. 2008, rounded and drawn slightly narrower). */
export const ASCENDING = 14;
const ARCH = 10.6;
const DESCENDING = 9.5;

/** mm of a 5-year-old: how far across the ascending aorta's axis lies, beside the superior vena cava, and further beside a conduit, where the right atrium comes between. */
const besideCava = ({ scale, svc, graft }: ChestFrame): number =>
  (svc.centre[0] + svc.width / 2 + 3) / scale + ASCENDING / 2 + (graft?.kind === "conduit" ? 4 : 0);

/** Axis of the arch, across from the ascending aorta's and up in the chest: highest where its branches leave, and as it goes back it is seen foreshortened. */
const ARC: readonly Point[] = [
  [-0.2, 33],
  [-0.3, 39],
  [1.4, 44.8],
  [6, 49.8],
  [12.6, 51.8],
  [19.6, 49.6],
  [24, 44.8],
];

/** In front of the heart: from the ventricle's outflow beside the superior vena cava to the top of the arch and its left end. */
export function aorta({ frame, inChest }: Placing, heart: HeartShape): readonly BloodTube[] {
  const { scale: s } = frame;
  const beside = besideCava(frame);
  const up = (x: number, y: number): Point => inChest(beside + x, y);
  const branch = (name: string, width: number, ...line: readonly Point[]): BloodTube => ({
    name,
    line: smoothLine(line),
    from: width * s,
    to: 0.86 * width * s,
    holds: "arterial",
    fades: "end",
  });
  // Beside a graft it leaves room in which an atrium is seen.
  const ascent = frame.graft
    ? [heart.at(-13, 7.2), heart.at(-22, 3.4), heart.at(-31, -3)]
    : [heart.at(-16, 7.4)];
  const arch = ARC.map(([x, y]) => up(x, y));
  const [[x, y], [topX, topY]] = [lastOf(ascent), entryAt(arch, 0)];
  // In steps as short as the arch's: unlike ones would give the line a corner.
  const between = [0.35, 0.7].map((part): Point => [x + part * (topX - x), y + part * (topY - y)]);
  return [
    branch("brachiocephalicArtery", 7, up(4, 46.6), up(0.4, 60), up(-6, 76), up(-10, 92)),
    branch("leftCarotidArtery", 5, up(11, 49), up(11.5, 64), up(14, 92)),
    branch("leftSubclavianArtery", 5.4, up(18, 48.4), up(21.4, 61), up(28, 75), up(37, 90)),
    {
      name: "aorta",
      line: smoothLine([heart.at(1.5, 9), heart.at(-7, 8.6), ...ascent, ...between, ...arch]),
      from: ASCENDING * s,
      to: ARCH * s,
      holds: "arterial",
    },
  ];
}

/** Behind the heart and the pathway. */
export function behind(place: Placing, heart: HeartShape): readonly BloodTube[] {
  const { frame, inChest } = place;
  const { scale: s } = frame;
  const beside = besideCava(frame);
  return [
    {
      name: "descendingAorta",
      line: smoothLine([
        ...ARC.slice(-2).map(([x, y]) => inChest(beside + x, y)),
        inChest(beside + 26, 39),
        inChest(beside + 26.8, 30),
        inChest(beside + 26, 12),
        inChest(beside + 23.6, -14),
        inChest(beside + 18.6, -44),
        inChest(beside + 13, -66),
        inChest(beside + 11, -84),
      ]),
      from: ARCH * s,
      to: DESCENDING * s,
      holds: "arterial",
      fades: "end",
      over: 0.12,
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
    [58.5, 14],
    [60, 4],
  ],
} as const;

/** From where in the lung each is drawn, over its stem there: outside the pericardium, and the left lower one under the artery before it. */
const ON_STEM: Readonly<Record<string, Point>> = {
  rightUpper: [-30, 13.3],
  rightLower: [-31, -13.6],
  leftUpper: [72.4, 13.2],
  leftLower: [74.4, -4],
};

function pulmonaryVeins(place: Placing, { size }: HeartShape): readonly BloodTube[] {
  const { frame, inChest, inHeart } = place;
  const right = atriumRight(frame);
  const course = (name: string, at: readonly [number, number], lift: number, mouth: Point): BloodTube => {
    const root = inChest(...at);
    const stem = inChest(...present(ON_STEM[name]));
    // Before the sac around an atrium that bulges to the right.
    const out = frame.chamber && name.startsWith("right") ? 1.7 : 1;
    const mid: Point = [(root[0] + mouth[0]) / 2, (root[1] + mouth[1]) / 2 + lift * size];
    return {
      name: `${name}PulmonaryVein`,
      line: smoothLine([
        [root[0] + out * (stem[0] - root[0]), root[1] + out * (stem[1] - root[1])],
        root,
        mid,
        mouth,
      ]),
      from: (name === "leftLower" ? 6.6 : 8.2) * frame.scale,
      to: 9.4 * frame.scale,
      holds: "pulmonaryVein",
      fades: "start",
      over: name === "leftLower" ? 0.03 : 0.12,
    };
  };
  // Behind an atrium that reaches far to the right they go on to its left part, close to where the septum was.
  const common = isCommon(frame);
  const mouth = common ? right + (frame.lowerVein ? 30 : 21.6) : Math.max(0, right) + 12;
  const [upper, lower] = common ? [-4, -13.6] : [8, -7];
  // Beside a conduit they pass the right atrium and the aorta, to where the left one is seen.
  const [upperMouth, lowerMouth]: readonly Point[] =
    frame.graft?.kind === "conduit"
      ? [
          [17, 10],
          [17.6, 1.6],
        ]
      : [
          [mouth + 1, upper],
          [mouth, lower],
        ];
  const [rightUpper, rightLower] = VEIN_ROOTS.right;
  const [leftUpper, leftLower] = VEIN_ROOTS.left;
  return [
    course("rightUpper", rightUpper, 1, inHeart(...present(upperMouth))),
    course("rightLower", rightLower, -1, inHeart(...present(lowerMouth))),
    course("leftUpper", leftUpper, 1.5, inHeart(28, 12)),
    course("leftLower", leftLower, 0.5, inHeart(29, 3)),
  ];
}

type Behind = { readonly behind: readonly BloodTube[] };

/** Veins of the right lung, which pass behind the pathway. */
export const returning = ({ behind: tubes }: Behind): readonly BloodTube[] =>
  tubes.filter(({ name }) => name.startsWith("right"));

/** The aorta behind the heart. */
export const descending = ({ behind: tubes }: Behind): readonly BloodTube[] =>
  tubes.filter(({ name }) => name === "descendingAorta");
