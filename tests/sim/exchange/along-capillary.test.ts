import { expect, test } from "vitest";
import { filtrationAlong } from "../../../src/sim/exchange/index.ts";
import { START } from "../../../src/state/scene-state.ts";

const along = (total: number) => filtrationAlong(total, { request: START.request }, 4);

test("what leaves along a capillary adds up to all that leaves, most where its pressure is highest", () => {
  for (const total of [5, 60, 350, 900]) {
    const each = along(total);
    expect(each.reduce((a, b) => a + b)).toBeCloseTo(total, 6);
    for (let i = 1; i < 4; i++) expect(each[i]).toBeLessThan(each[i - 1]!);
    expect(each[3]).toBeGreaterThan(0);
  }
});

test("more filtration spreads towards the venous end", () => {
  const share = (total: number) => along(total)[3]! / total;
  expect(share(900)).toBeGreaterThan(2 * share(60));
});

test("with the total it turns round, and stops", () => {
  expect(along(-350)).toEqual(along(350).map((each) => -each));
  for (const each of along(0)) expect(Math.abs(each)).toBeLessThan(1e-9);
});
