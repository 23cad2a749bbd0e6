/** How often a picture that stands still is looked at and drawn. */
import type { Frame } from "../../chain/frame.ts";
import { isSame } from "./same-frame.ts";

/** ms: it is looked at this often, and drawn when something in it is new; */
const LOOKED_AT_EVERY = 250;
/** so often all the same, since parts of a drawing may have been fetched meanwhile; */
const DRAWN_EVERY = 1000;
/** and for so long as often as it can after something was asked of it: what eases arrives. */
const LIVELY_FOR = 1500;
/** Times what a drawing took, left to the rest of the page after it. */
const REST = 2;

/** @param clock ms */
export function stillPace(clock: () => number) {
  let looked = Number.NEGATIVE_INFINITY;
  let drawn = Number.NEGATIVE_INFINITY;
  let livelyUntil = Number.NEGATIVE_INFINITY;
  let restsUntil = Number.NEGATIVE_INFINITY;
  let shown: Frame | null = null;
  return {
    wakeUp() {
      livelyUntil = clock() + LIVELY_FOR;
    },
    /** Whether the picture is to be looked at in this screen frame; it then counts as looked at. */
    isDue(): boolean {
      const now = clock();
      if (now < restsUntil || (now > livelyUntil && now < looked + LOOKED_AT_EVERY)) return false;
      looked = now;
      return true;
    },
    /** After a drawing; one that moves is not kept waiting. */
    rest({ still }: Frame) {
      const now = clock();
      restsUntil = still ? now + REST * (now - looked) : now;
    },
    /** Whether what was looked at is to be drawn; it then counts as drawn. */
    isStale(frame: Frame): boolean {
      if (looked > livelyUntil && looked < drawn + DRAWN_EVERY && isSame(frame, shown)) return false;
      drawn = looked;
      shown = frame;
      return true;
    },
  };
}
