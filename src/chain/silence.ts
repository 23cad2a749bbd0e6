/** Whether a worker has been silent for longer than it may be. */
export interface Silence {
  /** It has been heard from, or asked for something that takes its time. */
  broken(): void;
  /** Looks at the clock (s); true when no message came for longer than `limit`. */
  tooLong(now: number, limit: number): boolean;
}

/** @param maxGap s between two looks after which the page itself has slept: then counting restarts */
export function silence(maxGap: number): Silence {
  let since: number | undefined;
  let last: number | undefined;
  return {
    broken() {
      since = undefined;
    },
    tooLong(now, limit) {
      const slept = last !== undefined && now - last > maxGap;
      last = now;
      if (slept || since === undefined) since = now;
      return now - since > limit;
    },
  };
}
