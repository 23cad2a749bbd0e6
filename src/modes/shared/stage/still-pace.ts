/** How often a picture that stands still, or waits for its blood, is looked at and drawn. */
import type { Frame } from "../../../chain/frame.ts";
import { isSame } from "./same-frame.ts";

/** ms between two looks at a picture, which is drawn when something in it is new. */
const LOOKED_AT_EVERY = 250;
/** ms between two screen frames that are asked for while nothing eases. */
const ASKED_EVERY = 100;
/** ms after which it is drawn all the same: parts of a drawing may have been fetched meanwhile. */
const DRAWN_EVERY = 1000;
/** ms for which it is drawn at each screen frame after something was asked of it: what eases arrives. */
const LIVELY_FOR = 1500;
/** ms for which a first picture that has yet to get its blood is drawn only when something else in it is new: the answer needs the time. */
const AWAITED_FOR = 1500;
/** ms from a drawing to the next screen frame, above which the device is slow at it. */
const SLOW = 40;
/** ms from a drawing to the next screen frame that count at most: a hidden page waits for hours. */
const SLOWEST = 250;
/** How many times as long as a slow drawing took the rest of the page has after it. */
const REST = 2;

/** @param clock ms */
export function stillPace(clock: () => number) {
  let looked = Number.NEGATIVE_INFINITY;
  let drawn = Number.NEGATIVE_INFINITY;
  let livelyUntil = Number.NEGATIVE_INFINITY;
  let restsUntil = Number.NEGATIVE_INFINITY;
  /** ms that the last drawing took; null until the next screen frame */
  let timed: number | null = 0;
  let shown: Frame | null = null;
  let asked = false;
  let begun = Number.POSITIVE_INFINITY;
  const goOn = () => {
    livelyUntil = clock() + LIVELY_FOR;
  };
  /** Nothing has been asked of it since it was drawn, and it moves by nothing yet. */
  const waits = (frame: Frame, last: Frame): boolean =>
    !asked && looked < begun + AWAITED_FOR && awaitsBlood(frame) && hasSameWalls(frame, last);
  return {
    /** It moves on by itself. */
    goOn,
    wakeUp() {
      asked = true;
      goOn();
    },
    /** ms until the next screen frame is of use: a page that stands still leaves the device alone. */
    rest: (): number => (clock() > livelyUntil ? ASKED_EVERY : 0),
    /** Whether the picture is to be looked at in this screen frame; it then counts as looked at. */
    isDue(): boolean {
      const now = clock();
      if (timed === null) {
        // Up to this screen frame: a graphics chip's work is no part of the drawing's own time.
        timed = now - drawn;
        restsUntil = shown?.still && timed > SLOW ? drawn + (1 + REST) * Math.min(SLOWEST, timed) : now;
      }
      if (now < restsUntil || (now > livelyUntil && now < looked + LOOKED_AT_EVERY)) return false;
      looked = now;
      return true;
    },
    /** Whether what was looked at is to be drawn; it then counts as drawn. */
    isStale(frame: Frame): boolean {
      if (looked > livelyUntil && looked < drawn + DRAWN_EVERY && isSame(frame, shown)) return false;
      if (shown && waits(frame, shown)) return false;
      begun = Math.min(begun, looked);
      asked = false;
      drawn = looked;
      timed = null;
      shown = frame;
      return true;
    },
  };
}

/** Walls stand there, and the field between them is still to come. */
const awaitsBlood = ({ still, panes }: Frame): boolean =>
  !still && panes.every(({ geometry, field }) => geometry && !field);

/** Of an answer nothing is drawn before blood has come. */
const hasSameWalls = ({ state, panes }: Frame, last: Frame): boolean =>
  state === last.state &&
  panes.length === last.panes.length &&
  panes.every(
    ({ geometry, before }, i) => geometry === last.panes[i]?.geometry && before === last.panes[i]?.before,
  );
