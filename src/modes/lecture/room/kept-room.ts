/** A talk under way as a reload of its window finds it again: what the hall sees stays. */
import * as v from "valibot";
import type { Talk } from "../talk/talk.ts";
import { windowKept } from "../windows/window-kept.ts";
import { talkSchema } from "../windows/window-messages.ts";

const KEPT = windowKept("lungward.lecture.talk", v.object({ list: v.string(), talk: talkSchema }));

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
  const kept = KEPT.read();
  if (kept?.list !== list) return start;
  const { talk } = kept;
  return talk.at === start.at && talk.count === start.count ? talk : start;
}

export const keepForReload = (list: string, talk: Talk): void => KEPT.write({ list, talk });
