import { expect, test } from "vitest";
import { evaluate, holds, namesIn, parseExpression } from "../../../src/lesson/model/expression.ts";

const values: Record<string, number> = {
  "pressures.pathway": 12,
  "pressures.atrium": 6,
  "before.flows.svc": 0,
};
const lookup = (path: string) => values[path] ?? null;
const result = (text: string) => {
  const parsed = parseExpression(text);
  return parsed.ok ? evaluate(parsed.value, lookup) : `refused: ${parsed.found}`;
};

test.each([
  ["1 + 2 * 3", 7],
  ["(1 + 2) * 3", 9],
  ["8 / 4 / 2", 1],
  ["-2 * -3", 6],
  ["10 - 4 - 3", 3],
  ["pressures.pathway - pressures.atrium", 6],
  ["abs(pressures.atrium - pressures.pathway)", 6],
  ["min(3, max(1, 2))", 2],
  ["pressures.pathway > 10 and pressures.atrium < 10", 1],
  ["not pressures.pathway > 10", 0],
  ["1 > 2 or 2 >= 2", 1],
])("%s is %d", (text, value) => {
  expect(result(text)).toBe(value);
});

test("what is not known yet, or not finite, has no value", () => {
  expect(result("pressures.svc + 1")).toBeNull();
  expect(result("pressures.pathway / before.flows.svc")).toBeNull();
});

test.each([
  "1 +",
  "(1",
  "eval(1)",
  "a b",
  "constructor.constructor('x')",
  "a[0]",
  "x = 2",
  "min(1)",
  "1 ? 2 : 3",
  "`a`",
  "1 < 2 < 3",
  "2 constructor 3",
  "toString(1)",
  "",
])("%s is refused", (text) => {
  expect(result(text)).toMatch(/^refused/);
});

test("brackets nested beyond sense are refused, not followed", () => {
  expect(result("(".repeat(100_000))).toMatch(/^refused/);
  expect(result(`${"-".repeat(100_000)}1`)).toMatch(/^refused/);
});

test("names are listed, and a condition reads as true or false", () => {
  const parsed = parseExpression("abs(a.b - 2) < c.d");
  if (!parsed.ok) throw new Error(parsed.found);
  expect(namesIn(parsed.value)).toEqual(["a.b", "c.d"]);
  expect(holds(parsed.value, (path) => (path === "a.b" ? 3 : 2))).toBe(true);
});
