/** Blood time on the page: one clock for every pane, so that a race is fair. */
import { RESERVE } from "./grid-ladder.ts";

/** s of wall clock that one drawing may bridge; a longer gap (sleep, hidden page) is skipped, not caught up. */
const LONGEST_STEP = 0.1;
/** How fast the achieved rate follows what the fields can do, per second. */
const FOLLOW = 2;

export interface BloodClock {
  /** s of blood time */
  readonly time: number;
  /** blood seconds in one wall-clock second */
  readonly rate: number;
  /**
   * @param now      s, wall clock
   * @param wanted   blood seconds in one second asked for; 0 holds
   * @param capable  what each running field says it could do; empty when there is none
   * @returns s of blood time since the last call
   */
  advance(now: number, wanted: number, capable: readonly number[]): number;
}

export function bloodClock(): BloodClock {
  let time = 0;
  let rate = 0;
  let last: number | undefined;
  return {
    get time() {
      return time;
    },
    get rate() {
      return rate;
    },
    advance(now, wanted, capable) {
      const elapsed = last === undefined ? 0 : Math.min(LONGEST_STEP, Math.max(0, now - last));
      last = now;
      const possible = Math.min(wanted, RESERVE * Math.min(Number.POSITIVE_INFINITY, ...capable));
      if (wanted === 0) rate = 0;
      else rate += (possible - rate) * (rate === 0 ? 1 : Math.min(1, FOLLOW * elapsed));
      const step = rate * elapsed;
      time += step;
      return step;
    },
  };
}
