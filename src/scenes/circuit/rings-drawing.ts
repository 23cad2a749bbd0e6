/** The rings of a conduit across the vessel that it is, thin enough for its blood to be seen, and the seams at its ends. */

import { entryAt } from "../../sim/checked/present.ts";
import { CLOTH, threadOf } from "../anatomy/tones.ts";
import type { Brush } from "../drawing/brush.ts";
import { curve, placeOn, type Spot, traceCurve } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import type { Laid } from "./dots.ts";

/** Plane units from one ring to the next, and how far each bows, of the width. */
const PITCH = 11;
const BOW = 0.16;
const SEEN = 0.5;

/** Stitches of a seam that are seen, and half of one's length in plane units. */
const STITCHES = 9;
const STITCH = 3.4;

/** @param sewn which part of its way the conduit is */
export function drawRings(
  ink: Brush,
  { vessel, line }: Laid,
  [from, to]: readonly [number, number],
  theme: Theme,
): void {
  const place = new Float64Array(4);
  const half = vessel.width / 2;
  /** `across` -1..1 on the bow of a ring at `along` of the way */
  const onBow = (along: number, across: number): Spot => {
    placeOn(line, along, place);
    const [x, y, dx, dy] = [entryAt(place, 0), entryAt(place, 1), entryAt(place, 2), entryAt(place, 3)];
    const back = 2 * BOW * half * (1 - across * across);
    return [x - dy * half * across - dx * back, y + dx * half * across - dy * back];
  };
  const count = Math.round(((to - from) * line.length) / PITCH);
  const across = Array.from({ length: STITCHES }, (_, i) => (2 * i) / (STITCHES - 1) - 1);
  for (let k = 1; k < count; k++)
    traceCurve(ink, curve(across.map((each) => onBow(from + ((to - from) * k) / count, each))));
  ink.stroke({ color: CLOTH[theme.name].body, width: 2.2, alpha: SEEN });
  for (const end of [from, to])
    for (const each of across) {
      const [x, y] = onBow(end, each);
      const [dx, dy] = [entryAt(place, 2), entryAt(place, 3)];
      ink
        .moveTo(x - STITCH * (dx + 0.5 * dy), y - STITCH * (dy - 0.5 * dx))
        .lineTo(x + STITCH * (dx + 0.5 * dy), y + STITCH * (dy - 0.5 * dx));
    }
  ink.stroke({ color: threadOf(theme), width: 1.6, cap: "round" });
}
