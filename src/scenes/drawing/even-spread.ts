/** Places that fill an interval evenly in two directions, however many there are. */

/** Steps whose multiples are taken modulo 1 (roots of x^3 = x + 1). */
export const STEPS = [0.7548776662466927, 0.5698402909980532] as const;

/** A number modulo 1. */
export const part = (value: number): number => value - Math.floor(value);
