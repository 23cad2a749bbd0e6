/** Where the lenses on the valves above and below the squeezed stretch stand: before the leg, over the foot, the upper one first. */
import type { Fit } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Sizes } from "../theme/type.ts";
import { BEFORE } from "./leg-names.ts";

/** A lens on a valve, and the words under it. */
export interface LensPlace {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly words: Box;
}

/** In sizes of type: names beside the leg, and air. */
const [NAMES, AIR] = [8.6, 1.2];
/** Heights of the words under a lens, where they have so little room across that they break into more lines, in sizes of type. */
const WORDS: readonly (readonly [across: number, high: number])[] = [
  [9, 6.6],
  [13, 5.4],
  [17, 4.4],
  [Number.POSITIVE_INFINITY, 3.4],
];
/** Plane units down to which there is room over the foot, and the least radius, CSS px. */
const FOOT = 826;
const LEAST = 26;

/** @param fit of the leg. @param room CSS px, of which the leg leaves its right. @returns none where there is no room */
export function lensPlaces(fit: Fit, room: Box, names: boolean, type: Sizes): readonly LensPlace[] {
  const left = fit.x + BEFORE * fit.scale + (names ? NAMES : AIR) * type.axis;
  const wide = room.x + room.width - AIR * type.axis - left;
  const high = fit.y + FOOT * fit.scale - room.y;
  const air = AIR * type.axis;
  const laid = [
    { across: wide, down: (high - air) / 2, next: [0, (high + air) / 2] },
    { across: (wide - air) / 2, down: high, next: [(wide + air) / 2, 0] },
  ].map(({ across, down, next: [right, under] }) => {
    const words = type.axis * (WORDS.find(([least]) => across < least * type.axis)?.[1] ?? 0);
    const radius = Math.min(across / 2, (down - words) / 2);
    return [0, 1].map((i): LensPlace => {
      const x = left + i * (right ?? 0);
      const y = room.y + i * (under ?? 0) + radius;
      const below = y + radius + 0.5 * type.axis;
      return { x: x + across / 2, y, radius, words: { x, y: below, width: across, height: words } };
    });
  });
  const [best] = laid.toSorted(([a], [b]) => (b?.radius ?? 0) - (a?.radius ?? 0));
  return best?.every(({ radius }) => radius > LEAST) ? best : [];
}
