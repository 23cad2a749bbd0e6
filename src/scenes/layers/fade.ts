/** How a vessel is drawn at its edges: its wall, and its end beyond the cut where it goes on into the body. */

/** mm, drawn thickness of a vessel wall */
export const WALL = 2;

/** Of a pulmonary artery's width: how far before its opening its front is closed again, and by how much more in the middle. */
export const CLOSED = 0.8;
export const LIP = 0.2;

/** mm beyond its opening over which a vessel fades out */
export const fadeReach = (width: number): number => Math.min(16, 3 + 0.7 * width);

/** Part of that reach over which it can still be seen. */
export const FADE = 0.6;
