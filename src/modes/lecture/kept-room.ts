/** A talk under way as a reload of its window finds it again: what the hall sees stays. */
import * as v from "valibot";
import type { Talk } from "./talk.ts";
import { talkSchema } from "./window-messages.ts";

const KEPT = "lungward.lecture.talk";

const keptSchema = v.object({ list: v.string(), talk: talkSchema });

/** Once in a page's life: a talk begun again later begins afresh. */
let taken = false;

const isReload = (): boolean =>
  performance
    .getEntriesByType("navigation")
    .some((entry) => (entry as PerformanceNavigationTiming).type === "reload");

/** `start` itself unless this window was showing more at that very stop of that talk when it was reloaded. */
export function asBeforeReload(list: string, start: Talk): Talk {
  if (taken || !isReload()) return start;
  taken = true;
  try {
    const found = v.safeParse(keptSchema, JSON.parse(sessionStorage.getItem(KEPT) ?? "null"));
    if (!found.success || found.output.list !== list) return start;
    const { talk } = found.output;
    return talk.at === start.at && talk.count === start.count ? talk : start;
  } catch {
    return start;
  }
}

export function keepForReload(list: string, talk: Talk): void {
  try {
    sessionStorage.setItem(KEPT, JSON.stringify({ list, talk }));
  } catch {
    // Without storage a reload shows the script's own scene.
  }
}
