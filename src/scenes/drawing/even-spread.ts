/** Places that fill an interval evenly in two directions, however many there are. */

/** Steps whose multiples are taken modulo 1 (roots of x^3 = x + 1). */
export const STEPS = [0.7548776662466927, 0.5698402909980532] as const;

/** The same along one line: the golden ratio less 1. */
export const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** A number modulo 1. */
export const part = (value: number): number => value - Math.floor(value);

/** What is left of a mark's size where this part of all is seen, 1 or more for all of it: by its rank (taken modulo 1) the same ones stay wherever fewer do. */
export const leftOf = (seen: number, rank: number): number => (1.2 * seen - part(rank)) * 5;
