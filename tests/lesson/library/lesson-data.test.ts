import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { lessons } from "../../../scripts/lesson-data.ts";

interface Loader {
  configResolved(config: { readonly command: string }): void;
  load: { handler(this: object, id: string): { readonly code: string } };
}

/** What the page would import, or the error that stops the build; and the files watched for changes. */
function load(command: string, file: string) {
  const watched: string[] = [];
  const plugin = lessons() as unknown as Loader;
  plugin.configResolved({ command });
  const host = {
    addWatchFile: (name: string) => watched.push(name),
    error(said: string): never {
      throw new Error(said);
    },
  };
  const { code } = plugin.load.handler.call(host, `${file}?data`);
  const [, json = ""] = /^export default JSON\.parse\((.*)\)$/s.exec(code) ?? [];
  return { data: JSON.parse(JSON.parse(json)), watched };
}

const ENGLISH = readFileSync("lessons/en/02-steps.md", "utf8");
const GERMAN = readFileSync("lessons/de/02-steps.md", "utf8");

/** A kit of one lesson in two languages. */
function kit(english: string, german: string): (language: string) => string {
  const top = join(mkdtempSync(join(tmpdir(), "kit-")), "lessons");
  const fileOf = (language: string) => join(top, language, "02-steps.md");
  for (const [language, text] of Object.entries({ en: english, de: german })) {
    mkdirSync(join(top, language), { recursive: true });
    writeFileSync(fileOf(language), text);
  }
  return fileOf;
}

test("a fault stops the build with file, line and what is allowed", () => {
  const line = ENGLISH.split("\n").findIndex((each) => each.startsWith("minutes:")) + 1;
  const file = kit(ENGLISH.replace(/^minutes:.*$/m, "minutes: 500"), GERMAN)("en");
  expect(() => load("build", file)).toThrow(
    new RegExp(`lessons/en/02-steps\\.md:${line}: found .*500.*; allowed: .*120`),
  );
});

test("so does one of a translation", () => {
  const file = kit(ENGLISH, GERMAN.replace(/^date:.*$/m, "date: yesterday"))("de");
  expect(() => load("build", file)).toThrow(/lessons\/de\/02-steps\.md:\d+: found .*; allowed: /);
});

test("in development the page gets the faults in place of the lesson", () => {
  const file = kit(ENGLISH.replace(/^minutes:.*$/m, "minutes: 500"), GERMAN)("en");
  const { data } = load("serve", file);
  expect(data.value).toBeNull();
  expect(data.faults).toHaveLength(1);
});

test("a translation carries no scene, and is read again when its source changes", () => {
  const { data, watched } = load("build", kit(ENGLISH, GERMAN)("de"));
  expect(watched).toEqual([expect.stringMatching(/lessons\/en\/02-steps\.md$/)]);
  expect(data.faults).toEqual([]);
  expect(JSON.stringify(data.value)).not.toContain('"patch"');
  expect(data.value.title).not.toBe("");
});
