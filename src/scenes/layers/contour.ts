/** Outlines of a signed-distance grid at any level, by marching squares: lumen, wall and soft shading come from one field. */
import type { FieldGrid } from "../../sim/flow-field/flow-field.ts";

/** A closed line in mm, interleaved x, y; first point not repeated. */
export type Loop = number[];

/**
 * Lines on which `values` [ny*nx] equals `level`, with smaller values inside. Values beyond the grid count as outside,
 * so every line closes.
 */
export function contour(grid: FieldGrid, values: ArrayLike<number>, level: number): Loop[] {
  const { nx, ny, dx, originX, originY } = grid;
  const outside = level + dx;
  const at = (i: number, j: number): number =>
    i < 0 || j < 0 || i >= nx || j >= ny ? outside : values[j * nx + i]!;

  // Each crossed edge is a point with a key; each square joins two of them. `next` walks with the inside on the left.
  const width = nx + 2;
  const across = (i: number, j: number): number => 2 * ((j + 1) * width + i + 1);
  const upward = (i: number, j: number): number => across(i, j) + 1;
  const next = new Map<number, number>();
  for (let j = -1; j < ny; j++) {
    for (let i = -1; i < nx; i++) {
      const a = at(i, j) < level;
      const b = at(i + 1, j) < level;
      const c = at(i + 1, j + 1) < level;
      const d = at(i, j + 1) < level;
      const pattern = (a ? 1 : 0) | (b ? 2 : 0) | (c ? 4 : 0) | (d ? 8 : 0);
      if (pattern === 0 || pattern === 15) continue;
      const bottom = across(i, j);
      const top = across(i, j + 1);
      const left = upward(i, j);
      const right = upward(i + 1, j);
      const middle = (at(i, j) + at(i + 1, j) + at(i + 1, j + 1) + at(i, j + 1)) / 4 < level;
      switch (pattern) {
        case 1:
          next.set(bottom, left);
          break;
        case 2:
          next.set(right, bottom);
          break;
        case 3:
          next.set(right, left);
          break;
        case 4:
          next.set(top, right);
          break;
        case 5:
          next.set(bottom, middle ? right : left);
          next.set(top, middle ? left : right);
          break;
        case 6:
          next.set(top, bottom);
          break;
        case 7:
          next.set(top, left);
          break;
        case 8:
          next.set(left, top);
          break;
        case 9:
          next.set(bottom, top);
          break;
        case 10:
          next.set(right, middle ? top : bottom);
          next.set(left, middle ? bottom : top);
          break;
        case 11:
          next.set(right, top);
          break;
        case 12:
          next.set(left, right);
          break;
        case 13:
          next.set(bottom, right);
          break;
        case 14:
          next.set(left, bottom);
          break;
      }
    }
  }

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
      const following: number = next.get(key)!;
      next.delete(key);
      key = following;
    }
    if (loop.length >= 6) loops.push(loop);
  }
  return loops;
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
