/** Halton's points with each base's digits leaped over, so that ten dimensions stay even with few points (Kocis & Whiten 1997). */
const BASES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29];
const LEAP = 31;

function radicalInverse(index: number, base: number): number {
  let part = 0;
  for (let rest = index, scale = 1 / base; rest > 0; rest = Math.floor(rest / base), scale /= base)
    part += (rest % base) * scale;
  return part;
}

/** 0..1 in each of up to ten dimensions. */
export const spread = (index: number, dimensions: number): number[] =>
  BASES.slice(0, dimensions).map((base) => radicalInverse(index * LEAP, base));
