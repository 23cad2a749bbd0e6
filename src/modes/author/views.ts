/** What the author's page shows beside its bars: on a narrow screen one thing at a time, else form or text with the picture beside it. */
import { type ReadonlySignal, signal } from "@preact/signals";

/** As in author-narrow.css. */
const NARROW = "(max-width: 860px), (max-height: 500px) and (orientation: landscape)";

export type AuthorView = "form" | "text" | "picture";

const query = matchMedia(NARROW);
const narrow = signal(query.matches);
query.addEventListener("change", ({ matches }) => {
  narrow.value = matches;
});
export const isNarrow: ReadonlySignal<boolean> = narrow;

export const viewsOf = (onNarrow: boolean): readonly AuthorView[] =>
  onNarrow ? ["form", "text", "picture"] : ["form", "text"];

/** The one that an address asks for, where there is such a one. */
export const viewIn = (asked: string | undefined, onNarrow: boolean): AuthorView =>
  viewsOf(onNarrow).find((view) => view === asked) ?? "form";
