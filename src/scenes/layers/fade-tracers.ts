/** Tracers grow out of nothing where blood enters the computed plane, and shrink away where it leaves or passes behind something. */
import type { Opening } from "../../sim/geometry/geometry.ts";
import type { Tracers } from "../../sim/tracers/tracers.ts";

/** mm over which a tracer fades; where the vessels beyond are drawn with their blood a short way will do */
const OVER = 3;

/** Part of the mark with this number that is seen; x and y in mm. */
export type Seen = (x: number, y: number, mark: number) => number;

interface Fading {
  /** of the tracers are the field's, the rest lie beyond its openings */
  readonly taken: number;
  /** of the rest, 0..1 each */
  readonly shown: Float32Array | null;
  readonly openings: readonly Opening[];
  /** of the field's marks: something lies before them, or fewer show */
  readonly seen?: Seen | null;
}

/** Writes what is left of each tracer's size into the highest byte of its packed colour. */
export function fadeAtOpenings(
  { position, count }: Tracers,
  { taken, shown, openings, seen }: Fading,
  colours: Uint32Array,
): void {
  const ends = openings.filter(({ name }) => name !== "fenestration");
  for (let i = 0; i < taken; i++) {
    const [x, y] = [position[2 * i]!, position[2 * i + 1]!];
    const part = seen ? seen(x, y, i) : 1;
    if (part < 1) colours[i] = sized(colours[i]!, part);
    for (const { centre, normal, width } of ends) {
      const [dx, dy] = [x - centre[0], y - centre[1]];
      const within = -(dx * normal[0] + dy * normal[1]);
      if (within > OVER || Math.abs(dy * normal[0] - dx * normal[1]) > width) continue;
      colours[i] = sized(colours[i]!, within / OVER);
    }
  }
  if (shown) for (let i = taken; i < count; i++) colours[i] = sized(colours[i]!, shown[i - taken]!);
}

const sized = (colour: number, part: number): number =>
  ((colour & 0xffffff) | (Math.round(255 * Math.min(1, Math.max(0, part))) << 24)) >>> 0;
