/** How the row of growing bodies shares its box. */

import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { hasPathway } from "../../sim/parameters/request.ts";
import type { Box } from "../scene.ts";
import { STUB } from "./cross-section.ts";

/** Linear size of a body against another: the root of the surfaces' ratio. */
export const bodyScale = (bsa: number, against: number): number => Math.sqrt(bsa / against);

/** A figure's width, arms included, in parts of its height. */
export const FIGURE = 0.34;
/** More bodies than this are too small to look into. */
const AT_ONCE = 4;

/** As many as there is room for, spread over the years, first and last among them. @param need CSS px of each */
export function shownOf<T extends Shown>(points: readonly T[], width: number, need: number): readonly T[] {
  const room = Math.max(2, Math.floor(width / need));
  const pathway = points.some(({ request }) => hasPathway(request.stage));
  const count = Math.min(points.length, pathway ? AT_ONCE : points.length, room);
  return Array.from({ length: count }, (_, i) =>
    entryAt(points, Math.round((i * (points.length - 1)) / (count - 1))),
  );
}

type Shown = Pick<SweepPoint, "request">;

/** Part of the room for a body and its pictures that the tallest body's width takes. */
export const BODY = { pathway: 0.37, body: 0.92 } as const;

/** In sizes of type: scale bars of the pictures beside a body, and the words under all. */
export const BESIDE = { bars: 3.4, words: 5.4 } as const;
/** Part of a body's room that air takes. */
export const AIR = 0.06;

/** CSS px that the row takes of the box: half of it or little more, less where its width already limits the bodies and their pictures. @param need CSS px of each body */
export function rowHeight<T extends Shown>(
  box: Box,
  points: readonly T[],
  type: number,
  need: number,
): number {
  const shown = shownOf(points, box.width, need);
  const step = box.width / shown.length;
  const pathway = shown.some(({ request }) => hasPathway(request.stage));
  const part = BODY[pathway ? "pathway" : "body"];
  const body = (step * part) / FIGURE + 2.5 * type;
  if (!pathway) return Math.min(box.height * 0.5, body);
  const pictures = (2 + STUB) * step * (1 - AIR - part) + BESIDE.bars * type;
  return Math.min(box.height * 0.6, Math.max(body, pictures) + BESIDE.words * type);
}
