import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { filesBelow, TOP } from "./sources.ts";

const pages = ["README.md", "DEVELOPERS.md", ...filesBelow("docs", /\.md$/)].filter((page) =>
  existsSync(join(TOP, page)),
);
const read = (page: string): string => readFileSync(join(TOP, page), "utf8");

test("every link from one page of the docs to a file leads somewhere", () => {
  const dead = pages.flatMap((page) =>
    [...read(page).matchAll(/\]\((?!https?:|mailto:|#)([^)\s#]+)(?:#[^)]*)?\)/g)]
      .map(([, target]) => target!)
      .filter((target) => !existsSync(join(TOP, dirname(page), target)))
      .map((target) => `${page} -> ${target}`),
  );
  expect(dead).toEqual([]);
});

test("every npm script that the docs name exists", () => {
  const { scripts } = JSON.parse(read("package.json")) as { scripts: Record<string, string> };
  const unknown = pages.flatMap((page) =>
    [...read(page).matchAll(/npm run (?:-s )?([\w:-]+)/g)]
      .map(([, name]) => name!)
      .filter((name) => !(name in scripts))
      .map((name) => `${page}: ${name}`),
  );
  expect(unknown).toEqual([]);
});

test("the README carries the cautions", () => {
  const text = read("README.md").toLowerCase();
  for (const words of [
    "for learning",
    "simplified",
    "invented",
    "not for diagnosis",
    "own clinical team",
    "medicine",
    "emergency",
  ])
    expect(text, words).toContain(words);
});

describe("constants from memory", () => {
  const PAGE = "docs/constants-from-memory.md";
  /** The page itself, this test, and the label of a lesson's source that was not read again. */
  const ALLOWED = [PAGE, "tests/house/docs.test.ts", "src/i18n/en/lesson.json"];

  test("they are listed on one page and nowhere else", () => {
    const elsewhere = ["src", "tests", "docs"]
      .flatMap((folder) => filesBelow(folder, /\.(tsx?|md|json)$/))
      .filter((path) => !ALLOWED.includes(path) && /from memory/i.test(read(path)));
    expect(elsewhere).toEqual([]);
  });

  test("each file that the page names exists", () => {
    const missing = [...read(PAGE).matchAll(/`((?:src|tests|lessons)\/[\w./-]+)`/g)]
      .map(([, path]) => path!)
      .filter((path) => !existsSync(join(TOP, path)));
    expect(missing).toEqual([]);
  });
});
