import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { expect, test } from "vitest";
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

test("each rule that DEVELOPERS.md says is kept by a test or a tool names it, and it is there", () => {
  const [, rules = ""] =
    /Kept by a test or a tool[^\n]*\n([\s\S]*?)\n\nKept by whoever/.exec(read("DEVELOPERS.md")) ?? [];
  const each = rules
    .trim()
    .split(/\n(?=- )/)
    .map((rule) => rule.replace(/\s+/g, " "));
  expect(each.length).toBeGreaterThan(8);
  const keeper = /`(tests\/[\w./-]+\.tsx?|biome\.json|knip\.json|tsconfig\.json)`/g;
  const unkept = each.filter((rule) => {
    const named = [...rule.matchAll(keeper)].map(([, path]) => path!);
    return named.length === 0 || named.some((path) => !existsSync(join(TOP, path)));
  });
  expect(unkept).toEqual([]);
});
