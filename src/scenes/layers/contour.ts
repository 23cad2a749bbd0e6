/** Outlines of a signed-distance grid at any level, by marching squares: lumen, wall and soft shading come from one field. */

import { present } from "../../sim/checked/present.ts";
import type { FieldGrid } from "../../sim/flow-field/flow-field.ts";

/** A closed line in mm, interleaved x, y; first point not repeated. */
export type Loop = number[];

/** Edges of a square that a line crosses. */
const BOTTOM = 0;
const RIGHT = 1;
const TOP = 2;
const LEFT = 3;

/**
 * By the corners that lie inside (1 lower left, 2 lower right, 4 upper right, 8 upper left): from which edge to which the line
 * runs, with the inside on its left. 5 and 10, with two corners across from each other, are ambiguous: {@link SADDLES}.
 */
const RUNS: readonly (readonly (readonly [from: number, to: number])[])[] = [
  [],
  [[BOTTOM, LEFT]],
  [[RIGHT, BOTTOM]],
  [[RIGHT, LEFT]],
  [[TOP, RIGHT]],
  [],
  [[TOP, BOTTOM]],
  [[TOP, LEFT]],
  [[LEFT, TOP]],
  [[BOTTOM, TOP]],
  [],
  [[RIGHT, TOP]],
  [[LEFT, RIGHT]],
  [[BOTTOM, RIGHT]],
  [[LEFT, BOTTOM]],
  [],
];

/** The two runs of an ambiguous square, by whether its middle lies inside. */
const SADDLES: Readonly<Record<number, Readonly<Record<"inside" | "outside", (typeof RUNS)[number]>>>> = {
  5: {
    inside: [
      [BOTTOM, RIGHT],
      [TOP, LEFT],
    ],
    outside: [
      [BOTTOM, LEFT],
      [TOP, RIGHT],
    ],
  },
  10: {
    inside: [
      [RIGHT, TOP],
      [LEFT, BOTTOM],
    ],
    outside: [
      [RIGHT, BOTTOM],
      [LEFT, TOP],
    ],
  },
};

/**
 * Lines on which `values` [ny*nx] equals `level`, with smaller values inside. Values beyond the grid count as outside,
 * so every line closes.
 */
export const contour = (grid: FieldGrid, values: ArrayLike<number>, level: number): Loop[] =>
  contours(grid, values, level, level)(level);

/** {@link contour} at any level between two: squares that none of them crosses are looked at but once. */
export function contours(
  grid: FieldGrid,
  values: ArrayLike<number>,
  lowest: number,
  highest: number,
): (level: number) => Loop[] {
  const squares = crossed(grid, values, lowest, highest);
  return (level) => linesIn(grid, values, level, squares);
}

/** Numbers of the squares, counted with a rim of one around the grid, that a line between these levels can cross. */
function crossed(
  { nx, ny }: FieldGrid,
  values: ArrayLike<number>,
  lowest: number,
  highest: number,
): readonly number[] {
  const width = nx + 2;
  const squares: number[] = [];
  const at = (i: number, j: number): number =>
    i < nx && j >= 0 && j < ny ? values[j * nx + i]! : Number.POSITIVE_INFINITY;
  for (let j = -1; j < ny; j++) {
    // A square's right corners are the left ones of the next.
    let least = Number.POSITIVE_INFINITY;
    let most = least;
    for (let i = 0; i <= nx; i++) {
      const b = at(i, j);
      const c = at(i, j + 1);
      const low = Math.min(b, c);
      const high = Math.max(b, c);
      if (Math.min(low, least) < highest && Math.max(high, most) >= lowest) squares.push((j + 1) * width + i);
      least = low;
      most = high;
    }
  }
  return squares;
}

function linesIn(
  grid: FieldGrid,
  values: ArrayLike<number>,
  level: number,
  squares: readonly number[],
): Loop[] {
  const { nx, ny, dx, originX, originY } = grid;
  const outside = level + dx;
  const at = (i: number, j: number): number =>
    i < 0 || j < 0 || i >= nx || j >= ny ? outside : values[j * nx + i]!;
  const width = nx + 2;
  const next = crossings(squares, width, at, level);

  const place = (key: number, loop: Loop): void => {
    const vertical = (key & 1) === 1;
    const square = key >> 1;
    const i = (square % width) - 1;
    const j = Math.floor(square / width) - 1;
    const from = at(i, j);
    const to = vertical ? at(i, j + 1) : at(i + 1, j);
    const share = (level - from) / (to - from);
    loop.push(originX + dx * (i + (vertical ? 0 : share)), originY + dx * (j + (vertical ? share : 0)));
  };

  const loops: Loop[] = [];
  for (const start of next.keys()) {
    if (!next.has(start)) continue;
    const loop: Loop = [];
    let key: number | undefined = start;
    while (key !== undefined && next.has(key)) {
      place(key, loop);
      const following: number = present(next.get(key));
      next.delete(key);
      key = following;
    }
    if (loop.length >= 6) loops.push(loop);
  }
  return loops;
}

/**
 * Which crossed edge follows which, with the inside on the left. An edge's key is twice the number of the point at its
 * lower or left end, counted with a rim of one around the grid, and one more where it runs upward.
 */
function crossings(
  squares: readonly number[],
  width: number,
  at: (i: number, j: number) => number,
  level: number,
): Map<number, number> {
  const next = new Map<number, number>();
  for (const square of squares) {
    const i = (square % width) - 1;
    const j = Math.floor(square / width) - 1;
    const a = at(i, j);
    const b = at(i + 1, j);
    const c = at(i + 1, j + 1);
    const d = at(i, j + 1);
    const pattern = (a < level ? 1 : 0) | (b < level ? 2 : 0) | (c < level ? 4 : 0) | (d < level ? 8 : 0);
    if (pattern === 0 || pattern === 15) continue;
    const middle = (a + b + c + d) / 4 < level;
    const runs = SADDLES[pattern]?.[middle ? "inside" : "outside"] ?? RUNS[pattern]!;
    const edges = [2 * square, 2 * square + 3, 2 * (square + width), 2 * square + 1];
    for (const [from, to] of runs) next.set(edges[from]!, edges[to]!);
  }
  return next;
}

/** Twice the signed area, mm2; positive when the inside lies to the left (an outer rim), negative for a hole. */
export function turning(loop: Loop): number {
  let sum = 0;
  for (let i = 0; i < loop.length; i += 2) {
    const j = (i + 2) % loop.length;
    sum += loop[i]! * loop[j + 1]! - loop[j]! * loop[i + 1]!;
  }
  return sum;
}
