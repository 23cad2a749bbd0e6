/** Whether a worker has been silent for longer than it may be. */
export interface Silence {
  /** It has been heard from, or asked for something that takes its time. */
  broken(): void;
  /** Looks at the clock (s); true when nothing was heard for longer than `patience`. */
  tooLong(now: number, patience: number): boolean;
}

/** @param nap s between two looks after which the page itself has slept: then counting begins anew */
export function silence(nap: number): Silence {
  let since: number | undefined;
  let last: number | undefined;
  return {
    broken() {
      since = undefined;
    },
    tooLong(now, patience) {
      const slept = last !== undefined && now - last > nap;
      last = now;
      if (slept || since === undefined) since = now;
      return now - since > patience;
    },
  };
}
