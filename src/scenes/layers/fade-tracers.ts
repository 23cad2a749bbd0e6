/** Tracers come out of the dark of the lumen where blood enters the computed plane, and go back into it where it leaves. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Opening } from "../../sim/geometry/geometry.ts";
import type { Tracers } from "../../sim/tracers/tracers.ts";
import { mix, rgb } from "../theme/colour.ts";
import { packed } from "../theme/maps.ts";
import type { Theme } from "../theme/theme.ts";

/** mm over which a tracer fades; where the vessels beyond are drawn with their blood a short way will do */
const OVER = 4;

/**
 * @param taken of the tracers are the field's, the rest lie beyond its openings
 * @param shown of the rest, 0..1 each
 */
export function fadeAtOpenings(
  { position, count }: Tracers,
  taken: number,
  shown: Float32Array | null,
  openings: readonly Opening[],
  { colour }: Theme,
  colours: Uint32Array,
): void {
  const lumen = packed(rgb(colour.lumen));
  const beyond = packed(rgb(mix(colour.lumen, colour.poorGround, 0.6)));
  const ends = openings.filter(({ name }) => name !== "fenestration");
  for (let i = 0; i < taken; i++) {
    const [x, y] = [entryAt(position, 2 * i), entryAt(position, 2 * i + 1)];
    for (const { centre, normal, width } of ends) {
      const [dx, dy] = [x - centre[0], y - centre[1]];
      const within = -(dx * normal[0] + dy * normal[1]);
      if (within > OVER || Math.abs(dy * normal[0] - dx * normal[1]) > width) continue;
      colours[i] = towards(lumen, entryAt(colours, i), Math.max(0, within / OVER));
    }
  }
  if (shown)
    for (let i = taken; i < count; i++) {
      const part = entryAt(shown, i - taken);
      if (part < 1) colours[i] = towards(beyond, entryAt(colours, i), part);
    }
}

/** Packed colours: `part` of `own`, the rest of `ground`. */
function towards(ground: number, own: number, part: number): number {
  let mixed = 0xff000000;
  for (const shift of [0, 8, 16]) {
    const from = (ground >>> shift) & 255;
    mixed |= Math.round(from + (((own >>> shift) & 255) - from) * part) << shift;
  }
  return mixed >>> 0;
}
