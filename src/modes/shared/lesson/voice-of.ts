/** The voice of a lesson under way: its numbers from a situation, its links within the page. */

import { evaluate } from "../../../lesson/expression.ts";
import { lookupIn, type Situation } from "../../../lesson/figure-paths.ts";
import type { Library } from "../../../lesson/library.ts";
import { numberIn, type TextVersion, type Voice } from "../../../ui/lesson/voice.ts";

export const voiceOf = (
  library: Pick<Library, "glossary" | "sources">,
  situation: Situation,
  version: TextVersion,
  follow: Voice["follow"],
): Voice => ({
  version,
  glossary: library.glossary,
  sources: library.sources,
  number: (figure) => numberIn(situation, figure),
  amount: (of) => evaluate(of, lookupIn(situation)),
  follow,
});
