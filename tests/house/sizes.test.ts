import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { filesBelow, readSources, TOP } from "./sources.ts";

const sources = readSources("src");
const generated = /\.wasm\.ts$/;
const written = sources.filter(({ path }) => !generated.test(path));

test("the median source file has at most 120 lines", () => {
  const lines = written.map(({ lines }) => lines).sort((a, b) => a - b);
  expect(lines[Math.floor(lines.length / 2)]).toBeLessThanOrEqual(120);
});

/** Lines, and the comment that a file begins with. */
const tooLong = (lines: number, text: string): boolean =>
  lines >= 500 || (lines > 300 && !/^(\/\*|\/\/).*\b[Ll]ong because\b/s.test(text.slice(0, 600)));

test("a file of code over 300 lines says why at its top, and none reaches 500", () => {
  const long = ["src", "tests", "scripts"]
    .flatMap((folder) => filesBelow(folder, /\.(tsx?|mjs|css|c)$/))
    .filter((path) => !generated.test(path))
    .map((path) => ({ path, text: readFileSync(join(TOP, path), "utf8") }))
    .filter(({ text }) => tooLong(text.split("\n").length - 1, text));
  expect(long.map(({ path }) => path)).toEqual([]);
  expect(tooLong(301, "/** A table. */")).toBe(true);
  expect(tooLong(301, "/** Long because it is one table. */")).toBe(false);
  expect(tooLong(500, "/** Long because it is one table. */")).toBe(true);
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

test("where a window is called small in lengths of type, a reader's own size of type counts: kiosk and stage alone have theirs in px", () => {
  const inPixels = filesBelow("src", /\.css$/)
    .filter(
      (path) =>
        !/modes\/kiosk\/|lecture\/(lecture|room\/room-question)\.css|^src\/docs|^src\/phone/.test(path),
    )
    .filter((path) => /@media [^{]*\dpx/.test(readFileSync(join(TOP, path), "utf8")));
  expect(inPixels).toEqual([]);
});
