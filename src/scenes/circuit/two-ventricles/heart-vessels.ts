/** Veins into a heart with two ventricles and arteries out of it, in the chest's plane (mm, y up). */
import { entryAt, lastOf, present } from "../../../sim/checked/present.ts";
import { line } from "../../../sim/geometry/centreline.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import type { Anatomy } from "../../anatomy/chest-anatomy.ts";
import type { BloodTube } from "../../anatomy/great-vessels.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { spots } from "../../drawing/curve-drawing.ts";

/** What the trunk divides into, and where. */
const FORK: Point = [37.4, -1.8];

export interface GreatVessels {
  /** back to front */
  readonly descending: BloodTube;
  readonly returning: readonly BloodTube[];
  readonly rightArtery: BloodTube;
  readonly aorta: BloodTube;
  readonly branches: readonly BloodTube[];
  readonly upperVein: BloodTube;
  readonly lowerVein: BloodTube;
  readonly trunk: BloodTube;
  readonly leftArtery: BloodTube;
}

/** mm by which an artery runs on into its lung. */
const INTO = 5;

/** mm over which a vein's beginning clears into those of its lung. */
const CLEARS = 5;

/** Above this height (mm) the arch runs as in any other heart. */
const ARCH_FROM = 2;
/** and down to here its end lies before what is behind the heart: the left pulmonary artery covers the place. */
const DOWN_TO = -1;

/** mm: from here down the aorta shows again, as in every other body. */
const LEAVES_HEART = -80;

/** The descending aorta as far as the heart hides it. */
export const downToDiaphragm = ({ name, holds, line, from, to }: BloodTube): BloodTube => ({
  name,
  holds,
  from,
  to,
  line: line.filter(([, y]) => y > LEAVES_HEART),
});

export function greatVessels({ frame, behind, before }: Anatomy): GreatVessels {
  const named = (tubes: readonly BloodTube[], name: string) =>
    present(tubes.find((each) => each.name === name));
  const { left, right, svc, ivc } = frame;
  const arch = lastOf(before);
  const onward = arch.line.filter(([, y], i) => y > ARCH_FROM || i > arch.line.length / 2);
  const down = named(behind, "descendingAorta").line.slice(1);
  const vein = (name: string, ...way: readonly Point[]): BloodTube => {
    const tube = named(behind, name);
    const drawn = smoothLine([entryAt(tube.line, 0), ...way]);
    return { ...tube, line: drawn, over: CLEARS / lastOf(line(drawn).run) };
  };
  const tube = (
    name: string,
    way: readonly Point[],
    widths: readonly [number, number],
    fades?: "end",
  ): BloodTube => ({
    name,
    line: smoothLine(way),
    from: widths[0],
    to: widths[1],
    holds: "svc",
    ...(fades && { fades, over: 0.14 }),
  });
  const into = ({ centre: [x, y], normal }: typeof left): readonly Point[] => [
    [x, y],
    [x + INTO * normal[0], y + INTO * normal[1]],
  ];
  return {
    descending: named(behind, "descendingAorta"),
    returning: [
      vein("rightUpperPulmonaryVein", [-4, -15.6], [12, -15]),
      vein("rightLowerPulmonaryVein", [-15, -33.6], [-5, -27], [12, -20]),
      vein("leftUpperPulmonaryVein", [58.6, -12.4], [51.6, -14.4]),
      vein("leftLowerPulmonaryVein", [61, -20.4], [51, -22.2]),
    ],
    rightArtery: tube(
      "rightPulmonaryArtery",
      [FORK, [28, 0.6], [14, 0], [-6, -1.4], [-24, -4.6], ...into(right)],
      [9, right.width],
      "end",
    ),
    aorta: {
      ...arch,
      line: [
        ...smoothLine([...spots("21.4 -26.4, 18.4 -20.8, 15.6 -14, 14.4 -6"), entryAt(onward, 0)]),
        ...onward.slice(1),
        ...down.filter(([, y]) => y > DOWN_TO),
      ],
    },
    branches: before.slice(0, -1),
    upperVein: tube(
      "svc",
      [
        [svc.centre[0] + 0.2, svc.centre[1] + 4],
        [svc.centre[0], svc.centre[1] - 5],
        [0, 0],
        [0, -17.4],
      ],
      [svc.width + 1.2, svc.width],
    ),
    lowerVein: {
      ...tube(
        "ivc",
        [
          [ivc.centre[0], -79],
          [0, -64],
          [0, -52],
        ],
        [ivc.width, ivc.width],
      ),
      holds: "ivc",
      fades: "start",
      over: 0.24,
    },
    trunk: tube("lungTrunk", [[30, -23], [32, -16.6], [34.8, -8.6], FORK, [39.2, 0.4]], [11.4, 10.6]),
    leftArtery: tube(
      "leftPulmonaryArtery",
      [[34.8, -8.6], FORK, [43, 0.6], [48, -0.4], ...into(left)],
      [9.4, left.width],
      "end",
    ),
  };
}
