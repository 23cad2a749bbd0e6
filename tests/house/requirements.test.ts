import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { TOP } from "./sources.ts";

const rows = readFileSync(join(TOP, "docs/requirements.md"), "utf8")
  .split("\n")
  .filter((line) => /^\| U\d+ /.test(line))
  .map((line) => line.split("|").map((cell) => cell.trim()));

/** Whether the title of a test in the file carries the requirement's number. */
const holds = (path: string, id: string): boolean =>
  existsSync(join(TOP, path)) &&
  new RegExp(`["\`][^"\`\\n]*\\b${id}\\b[^"\`\\n]*["\`],`).test(readFileSync(join(TOP, path), "utf8"));

test("the thirty requirements are in order, each with a bar", () => {
  expect(rows.map(([, id]) => id)).toEqual(Array.from({ length: 30 }, (_, i) => `U${i + 1}`));
  // A bar says when it is met: by a figure, a key or a page named, or by what never, always, each or none does.
  for (const [, id, bar] of rows)
    expect(bar, id).toMatch(/\d|`|\b(no|none|nothing|never|every|each|any|alone|empty|once|until|order)\b/);
  expect(new Set(rows.map(([, , bar]) => bar)).size).toBe(rows.length);
});

test("each requirement names its tests, and each of them carries the requirement's number in a title", () => {
  const missing = rows.flatMap(([, id = "", , , , named = ""]) => {
    const paths = [...named.matchAll(/`([^`]+)`/g)].map(([, path]) => path!);
    if (paths.length === 0) return [`${id}: names no test`];
    return paths.filter((path) => !holds(path, id)).map((path) => `${id}: ${path}`);
  });
  expect(missing).toEqual([]);
});
