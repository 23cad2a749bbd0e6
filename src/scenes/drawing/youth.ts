/** How many heads larger a 5-year-old's is for the body. */
const YOUNG = 0.33;

/** How far a drawn outline is a child's: 1 at five years and before, 0 when grown. @param head times larger for the body than when grown */
export const youthOf = (head: number): number => Math.min(1, Math.max(0, (head - 1) / YOUNG));
