/** A lesson by another id: what names it in a lesson's text, its own or another, follows. */

import { recordAt } from "./lenient-scenes.ts";
import { setFront } from "./lesson-edit.ts";
import { outlineOf } from "./text-outline.ts";

/** The text unchanged where it does not name the lesson; where its settings cannot be read or set, its links alone follow. */
export function followLesson(text: string, old: string, id: string): string {
  // Two hundred texts are asked at once.
  if (!text.includes(`${old}#`)) return text;
  const outline = outlineOf(text);
  const { recall } = recordAt(outline, outline.front);
  let next: string | null = text;
  for (const [place, named] of (Array.isArray(recall) ? recall : []).entries()) {
    if (next !== null && typeof named === "string" && named.startsWith(`${old}#`))
      next = setFront(next, ["recall", place], `${id}${named.slice(old.length)}`);
  }
  return (next ?? text).replaceAll(`](${old}#`, `](${id}#`);
}
