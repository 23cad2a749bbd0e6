// Where the arrays of ../array-layout.ts lie, in its order: at fixed addresses, so that one pointer serves them all.

/** Bytes from one array to the next; not a multiple of a page, so that the same cell of two arrays never falls into the same cache line. */
export const STRIDE: usize = 2097344;
export const BASE: usize = 65536;

export const U: usize = BASE;
export const V: usize = BASE + STRIDE;
export const P: usize = BASE + 2 * STRIDE;
export const U_AHEAD: usize = BASE + 3 * STRIDE;
export const V_AHEAD: usize = BASE + 4 * STRIDE;
export const U_NEXT: usize = BASE + 5 * STRIDE;
export const V_NEXT: usize = BASE + 6 * STRIDE;
export const P_AHEAD: usize = BASE + 7 * STRIDE;
export const WEST: usize = BASE + 8 * STRIDE;
export const SOUTH: usize = BASE + 9 * STRIDE;
export const U_INVERSE: usize = BASE + 10 * STRIDE;
export const V_INVERSE: usize = BASE + 11 * STRIDE;
export const P_INVERSE: usize = BASE + 12 * STRIDE;
export const U_CELL: usize = BASE + 13 * STRIDE;
export const U_CORNER: usize = BASE + 14 * STRIDE;
export const V_CELL: usize = BASE + 15 * STRIDE;
export const V_CORNER: usize = BASE + 16 * STRIDE;
export const U_FRICTION: usize = BASE + 17 * STRIDE;
export const V_FRICTION: usize = BASE + 18 * STRIDE;
export const U_STEP: usize = BASE + 19 * STRIDE;
export const V_STEP: usize = BASE + 20 * STRIDE;
export const U_SMOOTH_CELL: usize = BASE + 21 * STRIDE;
export const U_SMOOTH_CORNER: usize = BASE + 22 * STRIDE;
export const V_SMOOTH_CELL: usize = BASE + 23 * STRIDE;
export const V_SMOOTH_CORNER: usize = BASE + 24 * STRIDE;
export const U_BEYOND: usize = BASE + 25 * STRIDE;
export const V_BEYOND: usize = BASE + 26 * STRIDE;
export const U_LOW: usize = BASE + 27 * STRIDE;
export const V_LOW: usize = BASE + 28 * STRIDE;
export const U_PUSH: usize = BASE + 29 * STRIDE;
export const V_PUSH: usize = BASE + 30 * STRIDE;
/** What passes the north side of the row done last: twice the flow, and the flux of momentum by shear and damping. */
export const U_FLOW: usize = BASE + 31 * STRIDE;
export const U_FLUX: usize = U_FLOW + STRIDE / 4;
export const V_FLOW: usize = U_FLUX + STRIDE / 4;
export const V_FLUX: usize = V_FLOW + STRIDE / 4;

/** For each row the number of its runs, then their first and last+1 cells: see across-row.ts. */
export const RUNS: usize = BASE + 32 * STRIDE;
