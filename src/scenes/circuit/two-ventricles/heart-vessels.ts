/** Veins into a heart with two ventricles and arteries out of it, in the chest's plane (mm, y up). */
import { entryAt, lastOf, present } from "../../../sim/checked/present.ts";
import { line } from "../../../sim/geometry/centreline.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import type { Anatomy } from "../../anatomy/chest-anatomy.ts";
import type { BloodTube } from "../../anatomy/great-vessels.ts";
import type { LungShape } from "../../anatomy/lung-shape.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { stemsOf, type Tree } from "../../anatomy/tree.ts";
import { spots } from "../../drawing/curve-drawing.ts";

/** What the trunk divides into, and where. */
const FORK: Point = [37, -3.8];

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

/** mm of its lung's stem over which a vessel lies, and over which of these it clears. */
const OVER_STEM = 6;
const CLEARS = 4;
/** mm by which its stem is wider than its opening. */
const STEM = 1.2;
/** mm: lumen of a pulmonary vein where its lung's stem goes on, and at the atrium. */
const VEIN = [7, 8] as const;

/** Above this height (mm) the arch runs as in any other heart, but higher: over the lung arteries, not before them. */
const ARCH_FROM = 2;
const HIGHER = 3.5;
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

/** A stem of a lung's veins from within the lung to where it leaves it. */
function towardsHeart({ nodes }: Tree, which: readonly number[]): readonly Point[] {
  const root = present(which.find((i) => entryAt(nodes, i).parent < 0));
  const [x, y] = entryAt(nodes, root).at;
  const way: Point[] = [];
  for (let i: number | undefined = root; i !== undefined; ) {
    const { at } = entryAt(nodes, i);
    const away = Math.hypot(at[0] - x, at[1] - y);
    if (away > 1.6 * OVER_STEM) break;
    if (away > 2) way.push(at);
    const before: number = i;
    i = which
      .filter((k) => entryAt(nodes, k).parent === before)
      .sort((a, b) => entryAt(nodes, b).width - entryAt(nodes, a).width)[0];
  }
  return way.reverse().filter((_, i) => i % 2 === 0);
}

function stems({ veins }: LungShape): readonly [upper: readonly Point[], lower: readonly Point[]] {
  const [upper, lower] = stemsOf(veins);
  return [towardsHeart(veins, upper), towardsHeart(veins, lower)];
}

export function greatVessels({ frame, behind, before, lungs }: Anatomy): GreatVessels {
  const named = (tubes: readonly BloodTube[], name: string) =>
    present(tubes.find((each) => each.name === name));
  const { left, right, svc, ivc } = frame;
  const higher = (tube: BloodTube): BloodTube => ({
    ...tube,
    line: tube.line.map(([x, y]): Point => [x, y + HIGHER]),
  });
  const raised = before.map(higher);
  const arch = lastOf(raised);
  const onward = arch.line.filter(([, y], i) => y > ARCH_FROM || i > arch.line.length / 2);
  const down = higher(named(behind, "descendingAorta")).line.slice(1);
  const vein = (name: string, stem: readonly Point[], ...way: readonly Point[]): BloodTube => {
    const drawn = smoothLine([...stem, ...way]);
    const [from, to] = VEIN;
    return { ...named(behind, name), line: drawn, from, to, over: CLEARS / lastOf(line(drawn).run) };
  };
  const [[rightUpper, rightLower], [leftUpper, leftLower]] = [stems(lungs[0]), stems(lungs[1])];
  const tube = (
    name: string,
    way: readonly Point[],
    [from, to]: readonly [number, number],
    fades?: "end",
  ): BloodTube => {
    const drawn = smoothLine(way);
    const over = CLEARS / lastOf(line(drawn).run);
    return { name, line: drawn, from, to, holds: "svc", ...(fades && { fades, over }) };
  };
  const into = ({ centre: [x, y], normal }: typeof left, ...along: readonly number[]): readonly Point[] =>
    along.map((off): Point => [x + off * normal[0], y + off * normal[1]]);
  return {
    descending: named(behind, "descendingAorta"),
    returning: [
      vein("rightUpperPulmonaryVein", rightUpper, [-12, -17], [5, -20]),
      vein("rightLowerPulmonaryVein", rightLower, [-13, -28.8], [4.8, -27]),
      vein("leftUpperPulmonaryVein", leftUpper, [51.6, -14]),
      vein("leftLowerPulmonaryVein", leftLower, [51.4, -22.6]),
    ],
    rightArtery: tube(
      "rightPulmonaryArtery",
      // It has gone over into its stem where the vein before that crosses it.
      [[43, -1.6], [36, -1], [28, -1.2], [14, -1.6], [-6, -1.8], [-18, -1.6], ...into(right, -12, -5)],
      [9, right.width + STEM],
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
    branches: raised.slice(0, -1),
    upperVein: tube(
      "svc",
      [
        [svc.centre[0] + 0.2, svc.centre[1] + 4],
        [svc.centre[0], svc.centre[1] - 5],
        [0, 0],
        [0, -24],
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
    trunk: tube("lungTrunk", [[30, -23], [32, -16.6], [34.8, -8.6], FORK, [38.6, -1.6]], [11.4, 10.6]),
    leftArtery: tube(
      "leftPulmonaryArtery",
      [[34.8, -8.6], FORK, [44, -1.1], ...into(left, 0, OVER_STEM)],
      [9.4, left.width + STEM],
      "end",
    ),
  };
}
