/** Tracers grow out of nothing where blood enters the computed plane, and shrink away where it leaves or passes behind something. */
import type { Distance } from "../../sim/geometry/distance.ts";
import type { Opening } from "../../sim/geometry/geometry.ts";
import type { Tracers } from "../../sim/tracers/tracers.ts";

/** mm over which a tracer fades; where the vessels beyond are drawn with their blood a short way will do */
const OVER = 3;

interface Fading {
  /** of the tracers are the field's, the rest lie beyond its openings */
  readonly taken: number;
  /** of the rest, 0..1 each */
  readonly shown: Float32Array | null;
  readonly openings: readonly Opening[];
  /** part of a mark of the field that is seen at a place (mm): something lies before it there */
  readonly seen?: Distance | null;
  /** part of the marks that show at a place: the same ones, wherever fewer do */
  readonly among?: Distance | null | undefined;
}

/** Writes what is left of each tracer's size into the highest byte of its packed colour. */
export function fadeAtOpenings(
  { position, count }: Tracers,
  { taken, shown, openings, seen, among }: Fading,
  colours: Uint32Array,
): void {
  const ends = openings.filter(({ name }) => name !== "fenestration");
  for (let i = 0; i < taken; i++) {
    const [x, y] = [position[2 * i]!, position[2 * i + 1]!];
    const rank = among ? (1.2 * among(x, y) - ((i * 0.618) % 1)) * 5 : 1;
    const part = Math.min(rank, seen ? seen(x, y) : 1);
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
