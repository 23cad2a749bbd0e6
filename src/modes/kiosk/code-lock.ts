/** The organiser's code: whole tries only, and after five wrong ones a minute of rest. */

/** Ten hours of trying reach less than a third of the codes of four digits. */
const MAX_TRIES = 5;
/** ms */
const REST = 60_000;

export interface CodeLock {
  /** ms until the next try counts; 0 = now */
  rests(): number;
  /** @returns whether it is the code; a try while it rests never is */
  opens(typed: string, code: string): boolean;
}

/** `now`: ms on a clock that nobody at the screen can set */
export function codeLock(now: () => number): CodeLock {
  let wrong = 0;
  let until = 0;
  return {
    rests: () => Math.max(0, until - now()),
    opens(typed, code) {
      if (now() < until) return false;
      if (typed === code) {
        wrong = 0;
        return true;
      }
      wrong++;
      if (wrong % MAX_TRIES === 0) until = now() + REST;
      return false;
    },
  };
}
