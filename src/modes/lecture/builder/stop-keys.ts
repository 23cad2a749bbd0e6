/** What tells a stop from the others while it moves and changes: the plan's stops are plain and have no name of their own. */
import type { Stop } from "../talk/own-stops.ts";

const keys = new WeakMap<Stop, number>();
let last = 0;

export function keyOf(stop: Stop): number {
  const known = keys.get(stop);
  if (known !== undefined) return known;
  last += 1;
  keys.set(stop, last);
  return last;
}

/** The stop after a change is still the same stop. */
export function changed(stop: Stop, change: Partial<Stop>): Stop {
  const next = { ...stop, ...change } as Stop;
  keys.set(next, keyOf(stop));
  return next;
}
