/** The organiser's code: whole tries only, and after five wrong ones a minute of rest, which loading the page again does not shorten. */
import * as v from "valibot";
import { keptIn } from "../../ui/kept-in.ts";

/** Ten hours of trying reach less than a third of the codes of four digits. */
const MAX_TRIES = 5;
/** ms */
const REST = 60_000;
const KEY = "lungward.organiser.tries";

const triesSchema = v.object({
  wrong: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(MAX_TRIES - 1)),
  until: v.pipe(v.number(), v.minValue(0)),
});

export interface CodeLock {
  /** ms until the next try counts; 0 = now */
  rests(): number;
  /** @returns whether it is the code; a try while it rests never is */
  opens(typed: string, code: string): boolean;
}

export interface CodeLockOptions {
  /** ms on a clock that nobody at the screen can set */
  readonly now: () => number;
  /** ms since 1970: the only clock that goes on while the page is loaded again */
  readonly date: () => number;
  /** May be denied: then a page loaded again starts anew. */
  readonly storage: () => Storage;
}

export function codeLock({ now, date, storage }: CodeLockOptions): CodeLock {
  const kept = keptIn(storage, KEY, (found) => v.parse(triesSchema, found));
  const before = kept.read() ?? { wrong: 0, until: 0 };
  let wrong = before.wrong;
  // Whatever stands there, nobody waits longer than a minute.
  let until = now() + Math.min(REST, before.until - date());
  return {
    rests: () => Math.max(0, until - now()),
    opens(typed, code) {
      if (now() < until) return false;
      if (typed === code) {
        wrong = 0;
        kept.write(null);
        return true;
      }
      wrong = (wrong + 1) % MAX_TRIES;
      if (wrong === 0) until = now() + REST;
      kept.write({ wrong, until: wrong === 0 ? date() + REST : 0 });
      return false;
    },
  };
}
