/** Where the body and its plates go in a box: plates beside the body when it is wide, in the free corners over it when it is tall. */

import { entryAt, present } from "../../sim/checked/present.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import { FIGURE } from "./figure-shape.ts";
import type { Plate } from "./plates.ts";
import type { Extent, Proportions } from "./proportions.ts";

export interface Block {
  readonly plate: Plate;
  /** CSS px, all that belongs to it */
  readonly width: number;
  readonly height: number;
}

export interface Arranged {
  readonly fit: Fit;
  /** CSS px, top left corner of each block, in the order given; where a hand is in the way, x at which its line rises between hand and hip */
  readonly places: readonly Place[];
}

interface Place {
  readonly x: number;
  readonly y: number;
  readonly rises?: number;
}

/** Heart and lungs, from the neck to the diaphragm. */
export const CHEST: Extent = { left: 212, top: 150, right: 788, bottom: 560 };
/** What is enlarged beside the whole body: the trunk from the neck to the bowel. */
export const LOOK: Extent = { left: 205, top: 110, right: 795, bottom: 880 };
/** Plane units of the heart's height, and the fewest CSS px in which it is read. */
const HEART = { height: 240, least: 60 } as const;

/** What of a body is shown in a box: all of it, unless its heart would be too small to read. */
export const shownIn = (box: Box, { body, thighs }: Proportions): Extent =>
  HEART.height * fitInto(box, body).scale < HEART.least ? thighs : body;

interface Free {
  readonly corners: readonly { readonly from: number; readonly to: number }[];
  readonly part: number;
}

/** Where no vessel runs at the sides, plane units, and the height that parts the plates of the upper from those of the lower. */
function freeIn(extent: Extent): Free | undefined {
  if (extent === LOOK) return undefined;
  // Above the lungs.
  if (extent === CHEST) return { corners: [{ from: 60, to: 200 }], part: CHEST.bottom };
  // Above the shoulders, below the hands.
  const corners = [
    { from: extent.top, to: 150 },
    { from: 1010, to: extent.bottom },
  ];
  return { corners, part: 600 };
}

/** What is settled before. */
interface Settled {
  /** CSS px above the plates on the left that something else takes, beside a body in a wide box */
  readonly head?: number;
  /** and how far it reaches from the box's left: no hairline rises through it */
  readonly wide?: number;
  /** how the plane lies */
  readonly at?: Fit | undefined;
  /** the body's outline */
  readonly figure?: readonly Spot[];
}

export function arrange(
  blocks: readonly Block[],
  box: Box,
  gap: number,
  extent: Extent,
  { head = 0, wide = 0, at, figure = FIGURE }: Settled = {},
): Arranged {
  const widest = (some: readonly Block[]) => Math.max(0, ...some.map(({ width }) => width)) + gap;
  const margin = widest(blocks);
  const beside = fitInto(box, extent, margin);
  const over = fitInto(box, extent);
  const free = freeIn(extent);
  const crowded = free !== undefined && over.scale > 1.2 * beside.scale;
  const along = crowded && !at ? alongArms(blocks, { box, head, extent, figure }, gap, margin) : null;
  if (along && along.fit.scale > 1.1 * beside.scale && over.scale < 1.45 * along.fit.scale) return along;
  const isTall = free !== undefined && over.scale > 1.35 * beside.scale;
  const fit = at ?? (isTall ? over : beside);
  const roomAt = {
    left: sideOf(fit, extent.left) - box.x,
    right: box.x + box.width - sideOf(fit, extent.right),
  };
  const places = new Map<Block, { x: number; y: number }>();
  for (const side of ["left", "right"] as const) {
    const own = blocks.filter(({ plate }) => plate.side === side);
    const tall = free !== undefined && (at ? roomAt[side] < widest(own) : isTall);
    const highest = box.y + (side === "left" ? head : 0);
    const groups = tall
      ? free.corners
          .map(({ from, to }, i) => ({
            blocks: own.filter(({ plate }) => plate.at[1] < free.part === (i === 0)),
            top: Math.max(highest, fit.y + from * fit.scale),
            bottom: Math.min(box.y + box.height, fit.y + to * fit.scale),
          }))
          // Rather over a thigh than over what stands beneath the body.
          .map(({ blocks, top, bottom }) => {
            const need = blocks.reduce((sum, { height }) => sum + height + gap * 0.6, -gap * 0.6);
            return { blocks, top: Math.max(highest, Math.min(top, bottom - need)), bottom };
          })
      : [{ blocks: own, top: highest, bottom: box.y + box.height }];
    for (const { blocks: group, top, bottom } of groups) {
      const wanted = group.map(({ plate }) => fit.y + plate.at[1] * fit.scale);
      const tops = stack(
        wanted,
        group.map(({ height }) => height),
        gap * 0.6,
        top,
        bottom,
      );
      group.forEach((block, i) => {
        const inner =
          side === "left"
            ? Math.max(sideOf(fit, extent.left) - gap, box.x + wide) - block.width
            : sideOf(fit, extent.right) + gap;
        const outer = side === "left" ? box.x : box.x + box.width - block.width;
        places.set(block, { x: tall ? outer : inner, y: entryAt(tops, i) });
      });
    }
  }
  return { fit, places: blocks.map((block) => present(places.get(block))) };
}

const sideOf = ({ x, scale }: Fit, side: number): number => x + side * scale;

/** Plane units: half the body's width, arms included, at its widest from one height to another. */
function reach(figure: readonly Spot[], from: number, to: number): number {
  const steps = Array.from({ length: 9 }, (_, i) => from + ((to - from) * i) / 8);
  return Math.max(
    0,
    ...figure.flatMap(([ax, ay], i) => {
      const [bx, by] = entryAt(figure, (i + 1) % figure.length);
      return steps
        .filter((y) => y >= Math.min(ay, by) && y <= Math.max(ay, by))
        .map((y) => Math.abs(ax + ((y - ay) / (by - ay || 1)) * (bx - ax) - MIDDLE));
    }),
  );
}

/** Heights from which hands are in the way, and how far beneath them they no longer are; how far out they hang; the midline; and in how many steps the body gives way. */
const HANDS = { from: 640, under: 40, out: 380 } as const;
const MIDDLE = 500;
/** How far from it a line rises between hand and hip, and the next one further in. */
const RISES = { from: 332, apart: 15 } as const;
const STEPS = 16;

/**
 * At the box's sides, each block at the height of its part, beside a body just small enough that none lies on an arm; beneath the
 * hands those whose parts lie at their height. Null where there is no such body.
 */
function alongArms(
  blocks: readonly Block[],
  {
    box,
    head,
    extent,
    figure,
  }: {
    readonly box: Box;
    readonly head: number;
    readonly extent: Extent;
    readonly figure: readonly Spot[];
  },
  gap: number,
  margin: number,
): Arranged | null {
  const hands = Math.max(...figure.flatMap(([x, y]) => (Math.abs(x - MIDDLE) > HANDS.out ? [y] : [])));
  for (let step = 0; step <= STEPS; step++) {
    const fit = fitInto(box, extent, (margin * step) / STEPS);
    const places = new Map<Block, Place>();
    for (const side of ["left", "right"] as const) {
      const own = blocks.filter(({ plate }) => plate.side === side);
      const under = own.filter(({ plate }) => plate.at[1] > HANDS.from);
      const tops = stack(
        own.map(
          ({ plate }) => fit.y + fit.scale * (plate.at[1] > HANDS.from ? hands + HANDS.under : plate.at[1]),
        ),
        own.map(({ height }) => height),
        gap * 0.6,
        box.y + (side === "left" ? head : 0),
        box.y + box.height,
      );
      own.forEach((block, i) => {
        const x = side === "left" ? box.x : box.x + box.width - block.width;
        const inner = MIDDLE - RISES.from + RISES.apart * under.indexOf(block);
        const rises = fit.x + fit.scale * (side === "left" ? inner : 2 * MIDDLE - inner);
        places.set(block, { x, y: entryAt(tops, i), ...(under.includes(block) && { rises }) });
      });
    }
    const clear = blocks.every((block) => {
      // Under a hand there may be room for one: another then lies over fingers, not over vessels.
      if (block.plate.at[1] > HANDS.from) return true;
      const { x, y } = present(places.get(block));
      const from = (y - gap / 2 - fit.y) / fit.scale;
      const away = reach(figure, from, from + (block.height + gap) / fit.scale) * fit.scale;
      const middle = fit.x + MIDDLE * fit.scale;
      return x + block.width + gap / 2 < middle - away || x - gap / 2 > middle + away;
    });
    if (clear) return { fit, places: blocks.map((block) => present(places.get(block))) };
  }
  return null;
}

/**
 * Tops for blocks of the given heights that want to be centred on `wanted` (ascending): in order, `gap` apart, inside
 * `top`..`bottom`; blocks that cannot all fit run over the bottom.
 */
export function stack(
  wanted: readonly number[],
  heights: readonly number[],
  gap: number,
  top: number,
  bottom: number,
): number[] {
  const tops: number[] = [];
  let free = top;
  wanted.forEach((centre, i) => {
    tops.push(Math.max(free, centre - entryAt(heights, i) / 2));
    free = entryAt(tops, i) + entryAt(heights, i) + gap;
  });
  let limit = bottom;
  for (let i = tops.length - 1; i >= 0 && entryAt(tops, i) + entryAt(heights, i) > limit; i--) {
    tops[i] = limit - entryAt(heights, i);
    limit = entryAt(tops, i) - gap;
  }
  const over = top - (tops[0] ?? top);
  if (over <= 0) return tops;
  free = top;
  return tops.map((each, i) => {
    const y = Math.max(each, free);
    free = y + entryAt(heights, i) + gap;
    return y;
  });
}
