import { expect } from "vitest";

/** A value between two bounds, ends included. */
export function within(value: number, low: number, high: number, what: string): void {
  expect(value, what).toBeGreaterThanOrEqual(low);
  expect(value, what).toBeLessThanOrEqual(high);
}
