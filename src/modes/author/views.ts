/** What the author's page shows beside its bars: on a narrow screen one thing at a time, else form or text with the picture beside it. */
import { mediaQuery } from "../shared/media-query.ts";

/** As in author-narrow.css. */
const NARROW = "(max-width: 53.75em), (max-height: 31.25em) and (orientation: landscape)";

export type AuthorView = "form" | "text" | "picture";

export const isNarrow = mediaQuery(NARROW);

export const viewsOf = (onNarrow: boolean): readonly AuthorView[] =>
  onNarrow ? ["form", "text", "picture"] : ["form", "text"];

/** The one that an address asks for, where there is such a one. */
export const viewIn = (asked: string | undefined, onNarrow: boolean): AuthorView =>
  viewsOf(onNarrow).find((view) => view === asked) ?? "form";
