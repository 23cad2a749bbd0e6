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

/**
 * mm: inner diameters near the means for 0.7 m2: pulmonary trunk 15.5 and its branches 9.5 (z-score tables of echocardiography, from
 * memory); the trunk some 1.6 times as long as wide, as an adult's (5 cm by 3 cm, textbooks, from memory).
 */
const TRUNK = [15.2, 13.2] as const;
const BRANCH = 10;
/** From before the aorta's root it rises back and to the left, and divides beneath the arch; where that lies high, higher by a part of it. */
const TRUNK_WAY = spots("32 -28, 34.8 -19.5, 37.6 -11, 40.4 -3.6, 42 0.8");
const TO_RIGHT = spots("39.6 -5.6, 37.2 0, 31 3.2, 22 3.8, 8 2.6, -8 -0.4, -19 -3");
const TO_LEFT = spots("39.6 -5.6, 43.4 1, 48.4 3.6");
/** mm before its lung from where it turns into it. */
const TURNS = 14;
const FOLLOWS = 0.4;
/** mm, height of the trunk's foot, which stays. */
const FOOT = -22;

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

/** Above this height (mm) the arch runs as in any other heart, but at least as high: over the pulmonary arteries, not before them. */
const ARCH_FROM = 2;
const MIN_ARCH = 14.4;
/** and down to here its end lies before what is behind the heart: the left pulmonary artery covers the place. */
const DOWN_TO = -1;

/** Axis of the aorta's root. */
const ROOT = spots("21 -33.4, 18.2 -27.2, 16.4 -20.6, 16.2 -14");
const ROOT_X = 16.6;

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

/** mm over which a stem of a lung's veins is painted again, before the sac where that would hide it. */
const STEM_OF = { right: 1.6 * OVER_STEM, left: 18 } as const;

/** A stem of a lung's veins from within the lung to where it leaves it. */
function towardsHeart({ nodes }: Tree, which: readonly number[], most: number): readonly Point[] {
  const root = present(which.find((i) => entryAt(nodes, i).parent < 0));
  const [x, y] = entryAt(nodes, root).at;
  const way: Point[] = [];
  for (let i: number | undefined = root; i !== undefined; ) {
    const { at } = entryAt(nodes, i);
    const away = Math.hypot(at[0] - x, at[1] - y);
    if (away > most) break;
    if (away > 2) way.push(at);
    const before: number = i;
    i = which
      .filter((k) => entryAt(nodes, k).parent === before)
      .sort((a, b) => entryAt(nodes, b).width - entryAt(nodes, a).width)[0];
  }
  return way.reverse().filter((_, i) => i % 2 === 0);
}

function stems({ veins, side }: LungShape): readonly [upper: readonly Point[], lower: readonly Point[]] {
  const [upper, lower] = stemsOf(veins);
  return [towardsHeart(veins, upper, STEM_OF[side]), towardsHeart(veins, lower, STEM_OF[side])];
}

const named = (tubes: readonly BloodTube[], name: string): BloodTube =>
  present(tubes.find((each) => each.name === name));

/** From all four stems to their mouths in the left atrium's back wall: the right ones behind the right atrium, the left ones where that wall is seen. */
function returningVeins({ behind, lungs }: Anatomy): readonly BloodTube[] {
  const vein = (name: string, stem: readonly Point[], ...way: readonly Point[]): BloodTube => {
    const drawn = smoothLine([...stem, ...way]);
    const [from, to] = VEIN;
    return { ...named(behind, name), line: drawn, from, to, over: CLEARS / lastOf(line(drawn).run) };
  };
  const [[rightUpper, rightLower], [leftUpper, leftLower]] = [stems(lungs[0]), stems(lungs[1])];
  return [
    vein("rightUpperPulmonaryVein", rightUpper, [-12, -16.6], [0, -17], [13, -15.4]),
    vein("rightLowerPulmonaryVein", rightLower, [-13, -29], [0, -28.4], [14, -22]),
    vein("leftUpperPulmonaryVein", leftUpper, [56.4, -12]),
    vein("leftLowerPulmonaryVein", leftLower, [56.6, -20.8]),
  ];
}

export function greatVessels(anatomy: Anatomy): GreatVessels {
  const { frame, behind, before } = anatomy;
  const { left, right, svc, ivc } = frame;
  const high = Math.max(...lastOf(before).line.map(([, y]) => y));
  const more = Math.max(0, MIN_ARCH - high);
  const lift = FOLLOWS * Math.max(0, high - MIN_ARCH);
  const lifted = (way: readonly Point[]) =>
    way.map(([x, y]): Point => [x, y + lift * Math.min(1, Math.max(0, 1 - y / FOOT))]);
  const higher = (tube: BloodTube): BloodTube => ({
    ...tube,
    line: tube.line.map(([x, y]): Point => [x, y + more]),
  });
  const raised = before.map(higher);
  const arch = lastOf(raised);
  const onward = arch.line.filter(([, y], i) => y > ARCH_FROM || i > arch.line.length / 2);
  const down = higher(named(behind, "descendingAorta")).line.slice(1);
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
    returning: returningVeins(anatomy),
    rightArtery: tube(
      "rightPulmonaryArtery",
      // It has gone over into its stem where the vein before that crosses it.
      [...lifted(TO_RIGHT).filter(([x]) => x > right.centre[0] + TURNS), ...into(right, -12, -5)],
      [BRANCH, right.width + STEM],
      "end",
    ),
    aorta: {
      ...arch,
      line: [
        ...smoothLine([...ROOT, [(ROOT_X + entryAt(onward, 0)[0]) / 2, -6], entryAt(onward, 0)]),
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
    trunk: tube("lungTrunk", lifted(TRUNK_WAY), TRUNK),
    leftArtery: tube(
      "leftPulmonaryArtery",
      [...lifted(TO_LEFT), ...into(left, 0, OVER_STEM)],
      [BRANCH, left.width + STEM],
      "end",
    ),
  };
}
