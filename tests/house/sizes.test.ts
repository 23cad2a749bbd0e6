import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { readSources, TOP } from "./sources.ts";

const sources = readSources("src");
const generated = /\.wasm\.ts$/;
const written = sources.filter(({ path }) => !generated.test(path));

test("the median source file has at most 120 lines", () => {
  const lines = written.map(({ lines }) => lines).sort((a, b) => a - b);
  expect(lines[Math.floor(lines.length / 2)]).toBeLessThanOrEqual(120);
});

test("a source file over 300 lines says why at its top, and none reaches 500", () => {
  const long = written.filter(
    ({ lines, text }) =>
      lines >= 500 || (lines > 300 && !/^(\/\*\*?|\/\/).*\b[Ll]ong because\b/s.test(text.slice(0, 600))),
  );
  expect(long.map(({ path, lines }) => `${path}: ${lines}`)).toEqual([]);
});

test("the top level has only the planned entries and those that tools demand there", () => {
  const allowed = [
    ".ci",
    ".git",
    ".gitignore",
    ".npmrc",
    "README.md",
    "DEVELOPERS.md",
    "LICENSE",
    "package.json",
    "package-lock.json",
    "tsconfig.json",
    "index.html",
    "src",
    "tests",
    "lessons",
    "docs",
    "scripts",
    "public",
    "biome.json",
    "knip.json",
    "vite.config.ts",
    "vitest.config.ts",
    "playwright.config.ts",
    "stryker.config.json",
    "node_modules",
    "dist",
    ".cache",
    "test-results",
  ];
  expect(readdirSync(TOP).filter((name) => !allowed.includes(name))).toEqual([]);
});
