import { expect, it } from "vitest";
import { heldTime } from "../../src/chain/held-time.ts";
import type { Circulation } from "../../src/sim/circulation/answer/answer.ts";

const circulation = { traces: { period: 3 } } as unknown as Circulation;

it("a held moment lies in the cycle that runs, and nothing held is the time itself", () => {
  expect(heldTime(7.4, undefined, circulation)).toBe(7.4);
  expect(heldTime(7.4, 0.5, null)).toBe(7.4);
  expect(heldTime(7.4, 0.5, circulation)).toBe(6.5);
  expect(heldTime(7.4, 9, circulation)).toBe(9);
});
