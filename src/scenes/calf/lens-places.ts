/** Where the lenses on the valves above and below the squeezed stretch stand: before the leg, the upper one first. */
import type { Fit } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Sizes } from "../theme/type.ts";
import { BEFORE } from "./leg-names.ts";
import { LEG } from "./leg-tissues.ts";

/** A lens on a valve, and the words under it. */
export interface LensPlace {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly words: Box;
}

/** In sizes of type: names beside the leg, and air. */
const [NAMES, AIR] = [8.6, 1.2];
/** Heights of the words under a lens, where they have so little room across that they break into more lines, in sizes of type; under a narrow one stands but its title. */
const WORDS: readonly (readonly [across: number, high: number])[] = [
  [10, 3.2],
  [13, 5.4],
  [17, 4.4],
  [Number.POSITIVE_INFINITY, 3.4],
];
export const saysWhy = ({ words }: LensPlace, type: Sizes): boolean => words.height > 3.3 * type.axis;
/** Plane units: from where before the leg there is room, and down to where. */
const ROOMS = [
  { before: BEFORE, bottom: 826 },
  { before: LEG.right, bottom: LEG.bottom },
] as const;
/** Least radius, CSS px. */
const MIN_RADIUS = 26;

/** @param fit of the leg. @param room CSS px, of which the leg leaves its right. @returns none where there is no room */
export function lensPlaces(fit: Fit, room: Box, names: boolean, type: Sizes): readonly LensPlace[] {
  const air = AIR * type.axis;
  const laid = ROOMS.flatMap(({ before, bottom }) => {
    const left = fit.x + before * fit.scale + (names ? NAMES : AIR) * type.axis;
    const wide = room.x + room.width - air - left;
    const high = Math.min(room.y + room.height, fit.y + bottom * fit.scale) - room.y;
    return [
      { left, across: wide, down: (high - air) / 2, right: 0, under: (high + air) / 2 },
      { left, across: (wide - air) / 2, down: high, right: (wide + air) / 2, under: 0 },
    ];
  }).map(({ left, across, down, right, under }) => {
    const high = type.axis * (WORDS.find(([least]) => across < least * type.axis)?.[1] ?? 0);
    const radius = Math.min(across / 2, (down - high) / 2);
    return [0, 1].map((i): LensPlace => {
      const [x, y] = [left + i * right, room.y + i * under + radius];
      const words = { x, y: y + radius + 0.5 * type.axis, width: across, height: high };
      return { x: x + across / 2, y, radius, words };
    });
  });
  const [best] = laid.toSorted(([a], [b]) => (b?.radius ?? 0) - (a?.radius ?? 0));
  return best?.every(({ radius }) => radius > MIN_RADIUS) ? best : [];
}
