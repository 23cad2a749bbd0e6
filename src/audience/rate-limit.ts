/** How often something may be done from one address or by one connection. */

export interface Limit {
  /** Whether anything is left, without taking it. */
  left(who: string): boolean;
  /** Takes one of what is left; false when nothing is. */
  take(who: string): boolean;
}

/** Beyond so many names the one not heard of for longest is forgotten. */
export const MAX_NAMES = 10_000;

/** `many` at once, refilled evenly over `seconds`. @param now ms */
export function limit(many: number, seconds: number, now: () => number): Limit {
  const known = new Map<string, { amount: number; at: number }>();
  const amountOf = (who: string, at: number): number => {
    const last = known.get(who);
    return last ? Math.min(many, last.amount + ((at - last.at) * many) / (seconds * 1000)) : many;
  };
  return {
    left: (who) => amountOf(who, now()) >= 1,
    take(who) {
      const at = now();
      const amount = amountOf(who, at);
      known.delete(who);
      known.set(who, { amount: amount >= 1 ? amount - 1 : amount, at });
      const [oldest] = known.keys();
      if (known.size > MAX_NAMES && oldest !== undefined) known.delete(oldest);
      return amount >= 1;
    },
  };
}
