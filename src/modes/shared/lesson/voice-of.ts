/** The voice of a lesson under way: its numbers from a situation, its links within the page. */

import type { Library } from "../../../lesson/library/library.ts";
import { evaluate } from "../../../lesson/model/expression.ts";
import { lookupIn, type Situation } from "../../../lesson/model/figure-paths.ts";
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
