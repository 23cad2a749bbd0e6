import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { notice } from "../../scripts/notices.ts";
import { TOP } from "./sources.ts";

test.each([
  ["pixi.js", "Mathew Groves"],
  ["@pixi/colord", "Vlad Shilov"],
])("the notice of %s has its licence's text, with its owner", (name, owner) => {
  const text = notice(join(TOP, "node_modules", name));
  expect(text).toContain(`${name} `);
  expect(text).toContain(owner);
  expect(text).toMatch(/Permission is hereby granted/);
});

test("a package without a text stops the build", () => {
  const folder = mkdtempSync(join(tmpdir(), "package-"));
  writeFileSync(
    join(folder, "package.json"),
    JSON.stringify({ name: "a-package", version: "1.0.0", license: "MIT" }),
  );
  expect(() => notice(folder)).toThrow(/a-package 1\.0\.0: no licence text/);
});
