/** A kiosk takes a newer version at a quiet moment, and asks for one itself. */
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { takeNewer } from "../../../src/modes/kiosk/take-newer.ts";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

test("over three days it asks each hour, and takes a newer version only once nobody is there", () => {
  let quiet = false;
  let ready = false;
  const look = vi.fn(async () => {});
  const taken = vi.fn(async () => true);
  const stop = takeNewer({ isQuiet: () => quiet, look, take: () => (ready ? taken : null) });
  vi.advanceTimersByTime(3 * 24 * 3_600_000);
  expect(look).toHaveBeenCalledTimes(72);
  quiet = true;
  vi.advanceTimersByTime(60_000);
  expect(taken).not.toHaveBeenCalled();
  quiet = false;
  ready = true;
  vi.advanceTimersByTime(600_000);
  expect(taken).not.toHaveBeenCalled();
  quiet = true;
  vi.advanceTimersByTime(10_000);
  expect(taken).toHaveBeenCalledOnce();
  stop();
  vi.advanceTimersByTime(24 * 3_600_000);
  expect(taken).toHaveBeenCalledOnce();
  expect(look).toHaveBeenCalledTimes(72);
});
