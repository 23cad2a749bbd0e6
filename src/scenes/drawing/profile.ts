/** Outlines of a person seen from the side, going to the right: head and shirt, grown and at five years (drawing values). */
import { spots } from "./curve-drawing.ts";

/** In profile, in half heights of the head: crown, brow, nose, lips, chin, jaw, nape. */
export const HEAD = spots(
  "-0.1 1, 0.36 0.93, 0.66 0.66, 0.74 0.34, 0.72 0.12, 0.9 -0.16, 0.78 -0.26, 0.8 -0.42, 0.74 -0.54, 0.74 -0.76, 0.54 -0.96, 0.2 -0.8, -0.16 -0.62, -0.5 -0.6, -0.78 -0.2, -0.86 0.26, -0.64 0.74",
);
/** Of a 5-year-old: forehead and cheek stand out, nose and chin less. */
export const YOUNG_HEAD = spots(
  "-0.1 1, 0.4 0.94, 0.74 0.66, 0.8 0.34, 0.73 0.04, 0.83 -0.2, 0.75 -0.3, 0.78 -0.46, 0.72 -0.56, 0.69 -0.76, 0.5 -0.94, 0.2 -0.84, -0.16 -0.64, -0.5 -0.6, -0.8 -0.2, -0.9 0.26, -0.68 0.74",
);
/** Eye and mouth; in a child's face the eye is larger and lower. */
export const EYE = spots("0.54 0.1, 0.6 0.18, 0.66 0.1, 0.61 0.01");
export const YOUNG_EYE = spots("0.5 -0.02, 0.57 0.11, 0.64 -0.02, 0.57 -0.14");
export const LIP = spots("0.79 -0.52, 0.68 -0.55, 0.56 -0.52, 0.68 -0.57");
export const EAR = spots("-0.1 0.16, 0.06 0.12, 0.04 -0.12, -0.06 -0.24, -0.14 -0.06");
/** From the brow over the crown to the nape, and back behind the ear to the temple. */
export const HAIR = spots(
  "0.68 0.56, 0.58 0.86, 0.26 1.06, -0.16 1.1, -0.62 0.88, -0.92 0.42, -0.92 0, -0.72 -0.42, -0.48 -0.54, -0.3 -0.3, -0.2 0.02, -0.12 0.24, 0.08 0.24, 0.2 0.08, 0.28 0.34, 0.44 0.5",
);
/** From the hip up along the trunk, and behind its line: hem, belly, chest, collar, back. */
export const SHIRT = spots(
  "-0.03 -0.057, 0.05 -0.053, 0.12 -0.056, 0.19 -0.067, 0.24 -0.06, 0.276 -0.034, 0.29 -0.006, 0.296 0.024, 0.272 0.048, 0.23 0.066, 0.17 0.064, 0.1 0.047, 0.04 0.05, -0.03 0.064",
);
/** The same of a 5-year-old: a belly, and no breast. */
export const YOUNG_SHIRT = spots(
  "-0.03 -0.062, 0.05 -0.07, 0.12 -0.068, 0.19 -0.058, 0.24 -0.05, 0.276 -0.032, 0.29 -0.006, 0.296 0.024, 0.272 0.046, 0.23 0.058, 0.17 0.056, 0.1 0.05, 0.04 0.056, -0.03 0.064",
);
