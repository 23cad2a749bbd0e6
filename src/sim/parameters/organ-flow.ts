/** How the model's one stream to the abdomen's organs is shared. */

/** Kidneys' part of the flow to gut, spleen, liver and kidneys (a fifth of output against a quarter; textbook). */
export const KIDNEY_SHARE = 0.45;
