import type { FlowGeometry, Opening, Point, Shape } from "../../../src/sim/geometry/geometry.ts";

/** Seeded, so that a failing plane can be made again (mulberry32). */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Two to five tubes from a common middle, now and then a chamber, an obstacle, a side hole; speeds to 0.6 m/s, pressures to 6 mmHg. */
export function randomPlane(seed: number): FlowGeometry {
  const random = randomFrom(seed);
  const between = (a: number, b: number) => a + (b - a) * random();
  const count = 2 + Math.floor(4 * random());
  const open: Shape[] = [];
  const openings: Opening[] = [];
  for (let n = 0; n < count; n++) {
    const angle = ((n + between(-0.25, 0.25)) / count) * 2 * Math.PI;
    const out: Point = [Math.cos(angle), Math.sin(angle)];
    const length = between(25, 50);
    const width = between(6, 18);
    const start: Point = [between(-4, 4), between(-4, 4)];
    const end: Point = [start[0] + length * out[0], start[1] + length * out[1]];
    open.push({
      tube: { points: [start, end], width: random() < 0.3 ? [width * between(0.6, 1.6), width] : width },
    });
    openings.push({
      name: `${n}`,
      centre: end,
      normal: out,
      width,
      ...(n > 0 && random() < 0.6
        ? { velocity: between(-0.3, 0.6) }
        : { pressure: n === 0 ? 0 : between(-3, 3) }),
    });
  }
  if (random() < 0.4) open.push({ disc: { centre: [0, 0], radius: between(8, 20) } });
  if (random() < 0.2)
    open.push({
      ellipse: { centre: [0, 0], radii: [between(8, 20), between(6, 12)], angle: between(0, 180) },
    });
  const solid: Shape[] =
    random() < 0.3 ? [{ disc: { centre: [between(-8, 8), between(-8, 8)], radius: between(1, 4) } }] : [];
  return { open, solid, openings };
}
