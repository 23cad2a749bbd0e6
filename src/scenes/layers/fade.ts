/** How a vessel is drawn at its edges: its wall, and its end beyond the cut where it goes on into the body. */

/** mm, drawn thickness of a vessel wall */
export const WALL = 2;

/** How far the end of the window in a pulmonary artery's front wall bows outwards, of the width. */
export const LIP = 0.22;

/** mm beyond its opening over which a vessel fades out */
export const fadeReach = (width: number): number => Math.min(16, 3 + 0.7 * width);

/** Part of that reach over which it can still be seen. */
export const FADE = 0.6;
