/** The voice of a lesson under way: its numbers from a situation, its links within the page. */
import { numberIn, type Telling, type Voice } from "../../interface/lesson/voice.ts";
import type { Situation } from "../../lesson/outputs.ts";
import type { Shelf } from "../../lesson/shelf.ts";

export const voiceOf = (
  shelf: Pick<Shelf, "glossary" | "sources">,
  situation: Situation,
  telling: Telling,
  follow: Voice["follow"],
): Voice => ({
  telling,
  glossary: shelf.glossary,
  sources: shelf.sources,
  number: (figure) => numberIn(situation, figure),
  follow,
});
