/** Where plates come to lie when none may cover another. */

import { entryAt } from "../../sim/checked/present.ts";
import type { Box } from "../scene.ts";
import { type Block, clamp } from "./keep-off.ts";

/** Rounds of giving way; a dozen plates need a few. */
const MAX_ROUNDS = 120;

/** Moves plates apart, least first, and keeps them in the box. Plates that have to give way keep their order from top to bottom. */
export function settle<T extends Block>(labels: readonly T[], box: Box, taken: readonly Box[] = []): T[] {
  const gap = 6;
  const moved = labels.map(({ x, y, width, height }) => ({ x, y, width, height }));
  const keepIn = (label: { x: number; y: number; width: number; height: number }) => {
    label.x = clamp(label.x, box.x + label.width / 2, box.x + box.width - label.width / 2);
    label.y = clamp(label.y, box.y + label.height / 2, box.y + box.height - label.height / 2);
  };
  const fits = ({ width, height }: Block, x: number, y: number) =>
    x - width / 2 >= box.x &&
    x + width / 2 <= box.x + box.width &&
    y - height / 2 >= box.y &&
    y + height / 2 <= box.y + box.height;
  for (const label of moved) keepIn(label);
  for (let round = 0; round < MAX_ROUNDS; round++) {
    let clear = true;
    for (let i = 0; i < moved.length; i++) {
      const a = entryAt(moved, i);
      for (const { x, y, width, height } of taken) {
        const over = overlap(a, { x: x + width / 2, y: y + height / 2, width, height }, gap);
        if (!over) continue;
        clear = false;
        const besides: [number, number][] = [
          [x - gap - a.width / 2, a.y],
          [x + width + gap + a.width / 2, a.y],
          [a.x, y - gap - a.height / 2],
          [a.x, y + height + gap + a.height / 2],
        ];
        const way = ([px, py]: readonly [number, number]) => Math.abs(px - a.x) + Math.abs(py - a.y);
        const nearest = besides.filter(([px, py]) => fits(a, px, py)).sort((p, q) => way(p) - way(q))[0];
        if (nearest) [a.x, a.y] = nearest;
      }
      for (let j = i + 1; j < moved.length; j++) {
        const b = entryAt(moved, j);
        const over = overlap(a, b, gap);
        if (!over) continue;
        clear = false;
        if (over.x < over.y) {
          a.x += (over.signX * over.x) / 2;
          b.x -= (over.signX * over.x) / 2;
        } else {
          a.y += (over.signY * over.y) / 2;
          b.y -= (over.signY * over.y) / 2;
        }
      }
      keepIn(a);
    }
    if (clear) break;
  }
  return labels.map((label, i) => ({ ...label, x: entryAt(moved, i).x, y: entryAt(moved, i).y }));
}

/** How deep two centred blocks lie in each other, or null; `sign` points from b to a. */
function overlap(a: Block, b: Block, gap: number) {
  const x = (a.width + b.width) / 2 + gap - Math.abs(a.x - b.x);
  const y = (a.height + b.height) / 2 + gap - Math.abs(a.y - b.y);
  if (x <= 0 || y <= 0) return null;
  return { x, y, signX: a.x >= b.x ? 1 : -1, signY: a.y >= b.y ? 1 : -1 };
}
