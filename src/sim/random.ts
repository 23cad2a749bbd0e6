/** Randomness is always passed in: a source gives dimensionless numbers in [0, 1). */
export type RandomSource = () => number;

/**
 * A repeatable source (mulberry32, public domain): good enough for pictures and tests, not for secrets.
 * @param seed dimensionless; only its lower 32 bits count
 */
export function seededRandom(seed: number): RandomSource {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
