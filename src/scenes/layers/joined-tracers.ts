/** The field's tracers and the marks beyond its openings as one set, so that both are painted in one go. Trails keep the two points that are drawn. */
import type { Tracers } from "../../sim/tracers/tracers.ts";

type Joined = Tracers & { count: number };

export interface TracerJoiner {
  /** @param taken of the first set that are drawn */
  join(first: Tracers, taken: number, second: Tracers | null): Tracers;
}

/** Room for marks whose trails have two points. */
export const shortTrails = (room: number): Joined => ({
  count: room,
  position: new Float32Array(2 * room),
  trail: new Float32Array(4 * room),
  trailLength: 2,
  origin: new Uint8Array(room),
  age: new Float32Array(room),
  speed: new Float32Array(room),
  dyed: new Uint8Array(room),
});

export function tracerJoiner(): TracerJoiner {
  let joined = shortTrails(0);
  return {
    join(first, taken, second) {
      const count = taken + (second?.count ?? 0);
      if (count > joined.origin.length) joined = shortTrails(Math.ceil(count * 1.25));
      joined.count = count;
      put(first, taken, joined, 0);
      if (second) put(second, second.count, joined, taken);
      return joined;
    },
  };
}

function put(from: Tracers, count: number, to: Joined, at: number): void {
  to.position.set(from.position.subarray(0, 2 * count), 2 * at);
  to.origin.set(from.origin.subarray(0, count), at);
  to.age.set(from.age.subarray(0, count), at);
  to.speed.set(from.speed.subarray(0, count), at);
  to.dyed.set(from.dyed.subarray(0, count), at);
  const length = from.trailLength;
  const [middle, end] = [(length >> 1) - 1, length - 1];
  for (let i = 0; i < count; i++) {
    const trail = 2 * length * i;
    const out = 4 * (at + i);
    to.trail[out] = from.trail[trail + 2 * middle]!;
    to.trail[out + 1] = from.trail[trail + 2 * middle + 1]!;
    to.trail[out + 2] = from.trail[trail + 2 * end]!;
    to.trail[out + 3] = from.trail[trail + 2 * end + 1]!;
  }
}
