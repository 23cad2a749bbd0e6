/** How old a body is. */
import type { Theme } from "../theme/theme.ts";

/** "5 years"; below one year "6 months". */
export const ageWords = (say: Theme["say"], years: number): string =>
  say("further.growth.age", {
    age: Math.round(years),
    months: years < 1 ? Math.min(11, Math.max(1, Math.round(12 * years))) : 0,
  });
