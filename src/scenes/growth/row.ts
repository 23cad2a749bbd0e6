/** How the row of growing bodies shares its box. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Box } from "../scene.ts";

/** Linear size of a body against another: the root of the surfaces' ratio. */
export const bodyScale = (bsa: number, against: number): number => Math.sqrt(bsa / against);

/** A figure's width, arms included, in parts of its height. */
export const FIGURE = 0.34;
/** In sizes of type: what a body needs beside it with its chest and section, and without. */
const NEEDS = { pathway: 15.5, body: 4.4 } as const;
/** More bodies than this are too small to look into. */
const AT_ONCE = 4;

/** As many as there is room for, spread over the years, first and last among them. */
export function shownOf<T>(
  points: readonly T[],
  width: number,
  type: number,
  pathway: boolean,
): readonly T[] {
  const room = Math.max(2, Math.floor(width / (type * NEEDS[pathway ? "pathway" : "body"])));
  const count = Math.min(points.length, pathway ? AT_ONCE : points.length, room);
  return Array.from({ length: count }, (_, i) =>
    entryAt(points, Math.round((i * (points.length - 1)) / (count - 1))),
  );
}

/** Part of the room for a body and its pictures that the tallest body's width takes. */
export const BODY = { pathway: 0.37, body: 0.92 } as const;

/** In sizes of type: scale bars and words of the pictures beside a body, above one another. */
export const BESIDE = { bars: 3.9, words: 3.75 } as const;
/** Part of a body's room that air takes. */
export const AIR = 0.06;

/** CSS px that the row takes of the box: half of it or little more, less where its width already limits the bodies and their pictures. */
export function rowHeight<T>(box: Box, points: readonly T[], type: number, pathway: boolean): number {
  const step = box.width / shownOf(points, box.width, type, pathway).length;
  const part = BODY[pathway ? "pathway" : "body"];
  const body = (step * part) / FIGURE + 2.5 * type;
  if (!pathway) return Math.min(box.height * 0.5, body);
  const pictures = 2 * step * (1 - AIR - part) + (BESIDE.bars + BESIDE.words) * type;
  return Math.min(box.height * 0.56, Math.max(body, pictures));
}
