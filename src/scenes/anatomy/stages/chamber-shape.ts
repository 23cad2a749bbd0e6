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
const OPENING = { x: 0.25, low: 5, wide: 0.36, high: 0.82 } as const;

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

/** Parts of its size above the chamber's middle, and beyond its oval, from where on a place lies in an artery. */
const ABOVE = 0.3;
const BEYOND = 0.01;
/** Points with which it is closed before an artery. */
const CLOSING = 16;

/** The chamber's own edge: the lumen's, but closed before the arteries, which come out from behind it. */
export function edgeOf(
  { chamber: [a, b], scale: s, svc }: ChestFrame & { readonly chamber: Point },
  lumen: Loops,
): readonly (readonly Point[])[] {
  // The upper vein leans above the chamber.
  const aside = (y: number) => svc.width / 2 + 2 * s + (y > b ? Math.abs(svc.centre[0]) : 0);
  const inArtery = ([x, y]: Point) =>
    y > ABOVE * b && Math.abs(x) > aside(y) && Math.hypot(x / a, y / b) > 1 + BEYOND;
  const turnOf = ([x, y]: Point) => Math.atan2(x / a, y / b);
  return lumen.map((loop) => {
    const whole = rounded(loop, INNER);
    const first = whole.findIndex((point) => !inArtery(point));
    const kept = [...whole.slice(first), ...whole.slice(0, first + 1)].filter((point) => !inArtery(point));
    return kept.flatMap((point, i): Point[] => {
      const next = entryAt(kept, (i + 1) % kept.length);
      if (Math.hypot(next[0] - point[0], next[1] - point[1]) < CUFF * s) return [point];
      const [from, to] = [turnOf(point), turnOf(next)];
      const closing = Array.from({ length: CLOSING - 1 }, (_, k): Point => {
        const turn = from + ((k + 1) / CLOSING) * (to - from);
        return [a * Math.sin(turn), b * Math.cos(turn)];
      });
      return [point, ...closing];
    });
  });
}

/** mm of a 5-year-old over which its muscle grows thin on the veins */
const SLEEVE = 9;

/** How far its muscle has thinned on a vein at a place on its edge: 1 where it ends, and beyond. */
export function sleeveOf(
  frame: ChestFrame & { readonly chamber: Point },
  lumen: Loops,
): (point: Point) => number {
  const top = Math.max(...(["left", "right"] as const).map((side) => mouthOf(frame, side, lumen).high[1]));
  const bottom = -0.97 * frame.chamber[1];
  return ([, y]) => Math.min(1, Math.max(0, y - top, bottom - y) / (SLEEVE * frame.scale));
}
