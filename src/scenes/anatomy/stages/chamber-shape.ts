/** Where things lie in a right atrium that is the pathway itself. */
import { entryAt } from "../../../sim/checked/present.ts";
import type { ChestFrame, Point } from "../../../sim/geometry/geometry.ts";
import type { Outlines } from "../painted-sheet.ts";
import { smoothLine } from "../placing.ts";

export type Loops = NonNullable<Outlines["lumen"]>;

/** degrees from the top at which the pulmonary arteries leave it, and how far out that is, mm of a 5-year-old */
const MOUTH = 50;
const CUFF = 3;
/** Their first direction, to the patient's left and right. */
const WAYS: Readonly<Record<"left" | "right", Point>> = { left: [0.86, 0.51], right: [-0.885, 0.466] };

/** A place by parts of half the width and half the height. */
export const placesIn =
  ([a, b]: Point) =>
  (x: number, y: number): Point => [a * x, b * y];

/** Points to either side over which the lumen's edge is rounded. */
export const INNER = 2;

/** The line's points, each the mean of those around it. @param reach points to either side */
export function rounded(loop: readonly number[], reach: number): readonly Point[] {
  const count = loop.length / 2;
  const at = (i: number, k: 0 | 1) => entryAt(loop, 2 * ((i + count) % count) + k);
  return Array.from({ length: count }, (_, i): Point => {
    let [x, y] = [0, 0];
    for (let n = -reach; n <= reach; n++) {
      x += at(i + n, 0);
      y += at(i + n, 1);
    }
    return [x / (2 * reach + 1), y / (2 * reach + 1)];
  });
}

interface Mouth {
  /** mm, on the lumen's lower and upper edge */
  readonly low: Point;
  readonly high: Point;
  /** unit vector out of the atrium */
  readonly way: Point;
}

/** Where a pulmonary artery comes out from behind the roof. */
export function mouthOf(
  { chamber, scale, left, right }: ChestFrame & { readonly chamber: Point },
  side: "left" | "right",
  lumen: Loops,
): Mouth {
  const angle = (MOUTH * Math.PI) / 180;
  const way = WAYS[side];
  const sign = Math.sign(way[0]);
  const middle: Point = [
    sign * chamber[0] * Math.sin(angle) + CUFF * scale * way[0],
    chamber[1] * Math.cos(angle) + CUFF * scale * way[1],
  ];
  const half = { left, right }[side].width / 2;
  const up: Point = [-sign * way[1], sign * way[0]];
  const edge = (turn: 1 | -1): Point => {
    const far = crossing(lumen, middle, [turn * up[0], turn * up[1]]) ?? half;
    return [middle[0] + turn * far * up[0], middle[1] + turn * far * up[1]];
  };
  return { low: edge(-1), high: edge(1), way };
}

/** mm from a place in the lumen to its edge; null where it has none that way */
function crossing(loops: Loops, [x, y]: Point, [dx, dy]: Point): number | null {
  let least = Number.POSITIVE_INFINITY;
  for (const loop of loops)
    for (let i = 0; i < loop.length; i += 2) {
      const k = (i + 2) % loop.length;
      const [ax, ay] = [entryAt(loop, i) - x, entryAt(loop, i + 1) - y];
      const [bx, by] = [entryAt(loop, k) - x, entryAt(loop, k + 1) - y];
      const [from, to] = [ax * dy - ay * dx, bx * dy - by * dx];
      if (from * to > 0 || from === to) continue;
      const part = from / (from - to);
      const far = (ax + part * (bx - ax)) * dx + (ay + part * (by - ay)) * dy;
      if (far > 0) least = Math.min(least, far);
    }
  return Number.isFinite(least) ? least : null;
}

/** mm of a 5-year-old by which an artery goes on beyond its mouth */
const ONWARD = 26;
/** The opening, left of the upper vein's mouth: its middle and half of its width by parts of the chamber's half width, short of where the aorta lies before it; half of its height by that of the arteries', and mm of a 5-year-old by which it lies beneath their middle. */
const OPENING = { x: 0.2, low: 3, wide: 0.36, high: 0.82 } as const;

/** Both pulmonary arteries are one vessel behind the roof, to which that is sewn by one oval opening in its underside. */
export function connectionOf(frame: ChestFrame & { readonly chamber: Point }, lumen: Loops) {
  const [right, left] = [mouthOf(frame, "right", lumen), mouthOf(frame, "left", lumen)];
  const out = ([x, y]: Point, { way }: Mouth, far: number): Point => [
    x + far * frame.scale * way[0],
    y + far * frame.scale * way[1],
  ];
  const mid = ({ low, high }: Mouth): number => (low[1] + high[1]) / 2;
  const [x, y] = [OPENING.x * frame.chamber[0], (mid(right) + mid(left)) / 2 - OPENING.low * frame.scale];
  const half: Point = [OPENING.wide * frame.chamber[0], (OPENING.high * frame.right.width) / 2];
  return {
    mouths: [right, left] as const,
    /** of the arteries, open from their mouths on */
    beyond: [right, left].map((mouth) => [
      mouth.low,
      out(mouth.low, mouth, ONWARD),
      out(mouth.high, mouth, ONWARD),
      mouth.high,
    ]),
    /** edges of the one vessel behind the roof, from mouth to mouth */
    vessel: [
      smoothLine([right.low, [x, y - half[1] - frame.scale], left.low]),
      smoothLine([right.high, [x, y + half[1] + frame.scale], left.high]),
    ],
    /** @param more mm further out */
    rim: (more = 0): readonly Point[] =>
      Array.from({ length: 65 }, (_, i) => {
        const turn = (Math.PI * i) / 32;
        return [x + (half[0] + more) * Math.cos(turn), y + (half[1] + more) * Math.sin(turn)];
      }),
  };
}

/** Where the side wall passes before an artery: from below the mouth to above it, bowed outwards, mm. */
export function sideWall({ low, high, way }: Mouth, scale: number): readonly Point[] {
  const at = (part: number, out: number): Point => [
    low[0] + part * (high[0] - low[0]) + out * scale * way[0],
    low[1] + part * (high[1] - low[1]) + out * scale * way[1],
  ];
  return smoothLine([at(-0.2, 0), at(0, 1), at(0.5, 2.2), at(0.94, 0.6), at(1.06, -0.6)]);
}

/** mm of a 5-year-old over which its muscle grows thin on the veins, and ends beyond an artery's mouth */
const SLEEVE = 9;
const END = 2.6;

interface Muscle {
  /** 1 where the wall is muscle, 0 on an artery */
  readonly on: number;
  /** how far it has thinned on a vein: 1 at its end and beyond */
  readonly sleeve: number;
}

/** What the wall is at a place on the lumen's edge. */
export function muscleOf(
  frame: ChestFrame & { readonly chamber: Point },
  lumen: Loops,
): (point: Point) => Muscle {
  const { chamber, scale: s } = frame;
  const mouths = (["left", "right"] as const).map((side) => mouthOf(frame, side, lumen));
  const top = Math.max(...mouths.map(({ high }) => high[1]));
  const bottom = -0.97 * chamber[1];
  return ([x, y]) => {
    const sleeve = Math.min(1, Math.max(0, y - top, bottom - y) / (SLEEVE * s));
    let on = 1;
    for (const { low, high, way } of mouths) {
      const [dx, dy] = [x - (low[0] + high[0]) / 2, y - (low[1] + high[1]) / 2];
      const beyond = (dx * way[0] + dy * way[1]) / (END * s);
      const aside = x * Math.sign(way[0]) > Math.min(Math.abs(low[0]), Math.abs(high[0])) - s;
      if (beyond > 0 && aside) on = Math.sqrt(Math.max(0, 1 - beyond));
    }
    return { on, sleeve };
  };
}
