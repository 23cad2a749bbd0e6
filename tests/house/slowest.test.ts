import { join } from "node:path";
import { expect, test } from "vitest";
import { slowest } from "../../scripts/slowest.mjs";
import { TOP } from "./sources.ts";

test("the slowest files of a unit report come first, by their path within the repository", () => {
  const file = (name: string, startTime: number, endTime: number) => ({
    name: join(TOP, name),
    startTime,
    endTime,
  });
  const report = {
    testResults: [
      file("tests/a.test.ts", 0, 1200),
      file("tests/b.test.ts", 100, 5600),
      file("tests/c.test.ts", 0, 30),
    ],
  };
  expect(slowest(report, 2)).toEqual(["5.5 s tests/b.test.ts", "1.2 s tests/a.test.ts"]);
});

test("of pages every try of every test counts for its file", () => {
  const spec = (file: string, ...durations: number[]) => ({
    file,
    tests: [{ results: durations.map((duration) => ({ duration })) }],
  });
  const suites = [
    { specs: [spec("a.page.ts", 1000)], suites: [{ specs: [spec("a.page.ts", 500)] }] },
    { specs: [spec("b.page.ts", 900, 900)] },
  ];
  expect(slowest({ suites })).toEqual(["1.8 s b.page.ts", "1.5 s a.page.ts"]);
});
