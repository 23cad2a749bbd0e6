/** Where plates come to lie over a plane: near their spot or where they would like, off what must be seen and off each other; one without room is left out. */
import { lineDistance } from "../../sim/geometry/distance.ts";
import type { Box } from "../scene.ts";

/** Heights of a plate: how far from its spot, and in which steps, it is tried. */
const FARTHEST = 7;
const STEP = 1 / 3;
/** Heights of a plate of way that a hairline is worth which crosses another one, a plate or another's spot. */
const CROSSED = 12;
/** CSS px of way that phrases in one line are worth. */
const BROKEN = 120;
/** CSS px between plates, and between hairlines that are to be told apart */
const GAP = 4;
const APART = 5;

/** Centre and size, CSS px. */
export interface Block {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface Plate extends Block {
  /** the spot that it speaks of */
  readonly at: readonly [number, number];
  /** the same in a narrower form, for where it has no room nearby */
  readonly narrow?: this;
}

/**
 * @param covers  whether a plate at that place would lie on what has to be seen
 * @param longest CSS px that a plate's hairline may be long
 */
export function keepOff<T extends Plate>(
  plates: readonly T[],
  box: Box,
  taken: readonly Box[],
  covers: (plate: T) => boolean,
  longest: (plate: T) => number = () => Number.POSITIVE_INFINITY,
): T[] {
  const place = (wished: readonly T[]) => placeInTurn(wished, box, taken, covers, longest);
  let [wishes, best] = [plates, place(plates)];
  // Two whose hairlines tangle want each other's place, before the others choose.
  for (const [i, a] of plates.entries())
    for (const b of plates.slice(i + 1)) {
      const [one, other] = [a, b].map(({ at }) => best.find((plate) => plate.at === at));
      if (!one || !other || !tangled(one, other)) continue;
      const rest = wishes.filter(({ at }) => at !== a.at && at !== b.at);
      const swapped = [{ ...a, x: other.x, y: other.y }, { ...b, x: one.x, y: one.y }, ...rest];
      const tried = place(swapped);
      if (tried.length < best.length || tangles(tried) >= tangles(best)) continue;
      [wishes, best] = [swapped, tried];
    }
  return best;
}

const tangles = (placed: readonly Plate[]): number =>
  placed.reduce(
    (sum, plate, i) => sum + placed.slice(i + 1).filter((other) => tangled(plate, other)).length,
    0,
  );

function placeInTurn<T extends Plate>(
  plates: readonly T[],
  box: Box,
  taken: readonly Box[],
  covers: (plate: T) => boolean,
  longest: (plate: T) => number,
): T[] {
  const placed: T[] = [];
  const free = ({ x, y, width, height }: Block): boolean =>
    x - width / 2 >= box.x &&
    x + width / 2 <= box.x + box.width &&
    y - height / 2 >= box.y &&
    y + height / 2 <= box.y + box.height &&
    taken.every(
      (other) =>
        Math.abs(other.x + other.width / 2 - x) >= (other.width + width) / 2 + GAP ||
        Math.abs(other.y + other.height / 2 - y) >= (other.height + height) / 2 + GAP,
    ) &&
    placed.every(
      (other) =>
        Math.abs(other.x - x) >= (other.width + width) / 2 + GAP ||
        Math.abs(other.y - y) >= (other.height + height) / 2 + GAP,
    );
  const find = (plate: T): readonly [T | null, cost: number] => {
    const [sx, sy] = plate.at;
    let best: T | null = null;
    let least = Number.POSITIVE_INFINITY;
    const consider = (x: number, y: number) => {
      const way = Math.hypot(x - plate.x, y - plate.y) + Math.hypot(x - sx, y - sy);
      if (way >= least) return;
      const tried = { ...plate, x, y };
      if (!free(tried) || lengthOf(hairline(tried)) > longest(plate) || covers(tried)) return;
      const line = hairline(tried);
      const crosses =
        placed.some((other) => tangled(tried, other)) ||
        plates.some(({ at }) => at !== plate.at && isBeside(at, line));
      const cost = way + (crosses ? CROSSED * plate.height : 0);
      if (cost >= least) return;
      least = cost;
      best = tried;
    };
    consider(plate.x, plate.y);
    const steps = Math.ceil(FARTHEST / STEP);
    for (let i = -steps; i <= steps; i++)
      for (let j = -steps; j <= steps; j++)
        consider(sx + i * STEP * plate.height, sy + j * STEP * plate.height);
    return [best, least];
  };
  for (const plate of plates) {
    const [wide, way] = find(plate);
    const [narrow, shorter] = plate.narrow ? find(plate.narrow) : [null, way];
    const best = shorter + BROKEN < way ? narrow : wide;
    if (best) placed.push(best);
  }
  return placed;
}

/** CSS px between a panel and the edge of its box, and in which steps it is tried. */
const EDGE = 8;
const TRIED = 12;

/** Where the first of these panels that has room at all goes: nearest a corner, above on the right among equals; it covers nothing that has to be seen. Null where none has room. */
export function roomFor<T extends { readonly width: number; readonly height: number }>(
  panels: readonly T[],
  box: Box,
  taken: readonly Box[],
  covers: (box: Box) => boolean,
): (T & Box) | null {
  const apart = (a: Box) => (b: Box) =>
    a.x >= b.x + b.width || b.x >= a.x + a.width || a.y >= b.y + b.height || b.y >= a.y + a.height;
  for (const panel of panels) {
    const [left, top] = [box.x + EDGE, box.y + EDGE];
    const [right, bottom] = [
      box.x + box.width - panel.width - EDGE,
      box.y + box.height - panel.height - EDGE,
    ];
    if (right < left || bottom < top) continue;
    let best: (T & Box) | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const x of steps(right, left))
      for (const y of steps(top, bottom)) {
        const way = Math.min(x - left, right - x) + Math.min(y - top, bottom - y);
        if (way >= least) continue;
        const tried = { ...panel, x, y };
        if (!taken.every(apart(tried)) || covers(tried)) continue;
        least = way;
        best = tried;
      }
    if (best) return best;
  }
  return null;
}

/** From one end to the other, both of them tried. */
function steps(from: number, to: number): readonly number[] {
  const count = Math.max(1, Math.ceil(Math.abs(to - from) / TRIED));
  return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
}

type Point = readonly [number, number];

/** From the spot to the plate's nearest edge. */
export const hairline = ({ at: [ax, ay], x, y, width, height }: Plate): readonly [Point, Point] => [
  [ax, ay],
  [clamp(ax, x - width / 2, x + width / 2), clamp(ay, y - height / 2, y + height / 2)],
];

const lengthOf = ([[ax, ay], [bx, by]]: readonly [Point, Point]): number => Math.hypot(bx - ax, by - ay);

/** The hairline of one runs through that of the other or along it, or through the other's plate. */
const tangled = (a: Plate, b: Plate): boolean =>
  cross(hairline(a), hairline(b)) ||
  hairline(a).some((point) => isBeside(point, hairline(b))) ||
  hairline(b).some((point) => isBeside(point, hairline(a))) ||
  diagonals(b).some((line) => cross(hairline(a), line)) ||
  diagonals(a).some((line) => cross(hairline(b), line));

const isBeside = (point: Point, line: readonly [Point, Point]): boolean =>
  lineDistance(line)(...point) < APART;

/** What runs through a plate crosses one of these. */
const diagonals = ({ x, y, width, height }: Block): readonly (readonly [Point, Point])[] =>
  [1, -1].map((rising) => [
    [x - width / 2, y - (rising * height) / 2],
    [x + width / 2, y + (rising * height) / 2],
  ]);

function cross([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean {
  const side = (p: Point, q: Point, r: Point) =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

export const clamp = (value: number, least: number, most: number): number =>
  Math.max(least, Math.min(most, value));
