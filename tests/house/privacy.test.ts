import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { readSources, TOP } from "./sources.ts";

const sources = readSources("src");
const deploy = readFileSync(join(TOP, "docs/deploy.md"), "utf8");

/** Files whose text matches, as paths. */
const where = (pattern: RegExp): string[] =>
  sources.filter(({ text }) => pattern.test(text)).map(({ path }) => path);

describe("data that is kept or sent", () => {
  test("the privacy page lists exactly the keys that the code writes", () => {
    const reported = [...deploy.matchAll(/`(lungward\.[\w.]+)`/g)].map(([, key]) => key!);
    const named = sources
      .filter(({ text }) => /\b(local|session)Storage\b|\bstorage\(\)|\b(windowKept|keptIn)\(/.test(text))
      .flatMap(({ text }) => [...text.matchAll(/"(lungward\.[\w.]+)"/g)].map(([, key]) => key!));
    const preferences = sources
      .filter(({ path }) => path === "src/modes/shared/preferences.ts")
      .flatMap(({ text }) =>
        [...text.matchAll(/= preference(?:<[^>]*>)?\("(\w+)"/g)].map(([, name]) => `lungward.${name}`),
      );
    expect(preferences.length).toBeGreaterThan(2);
    expect([...new Set(reported)].sort()).toEqual([...new Set([...named, ...preferences])].sort());
  });

  test("no cookie and no beacon is known to the code; a socket leads to the page's own server alone; a course's record, the docs' search, the folder of own lessons and a package of the kit's own files fetch; own lessons and the talk alone have a database", () => {
    expect(where(/document\.cookie|sendBeacon|XMLHttpRequest|EventSource/)).toEqual([]);
    expect(where(/new WebSocket\(/)).toEqual(["src/audience/line.ts"]);
    expect(where(/openLine</)).toEqual([
      "src/audience/line.ts",
      "src/modes/lecture/audience/stage-audience.ts",
      "src/phone/seat.ts",
    ]);
    const databases = ["src/modes/lecture/files/talk-store.ts", "src/modes/shared/own/text-store.ts"];
    // What erases everything opens them too, and makes none.
    expect(where(/indexedDB/)).toEqual(["src/modes/home/erase/erase-dialog.tsx", ...databases]);
    const asking = where(/(?:await|return|=>?|\() *fetch\(/);
    expect(asking.length).toBeGreaterThan(1);
    expect(asking.filter((path) => !/^src\/(lms|docs)\//.test(path))).toEqual([
      "src/modes/shared/own/own-lessons.ts",
      "src/modes/study/package/package-page.tsx",
    ]);
    expect(where(/from "idb-keyval"/)).toEqual(databases);
    expect(deploy).toContain("database `lungward-own`");
    expect(deploy).toContain("database `lungward-talk`");
  });

  test("packages are pinned to one version each", () => {
    const { dependencies, devDependencies } = JSON.parse(readFileSync(join(TOP, "package.json"), "utf8"));
    const loose = Object.entries({ ...dependencies, ...devDependencies }).filter(
      ([, version]) => !/^\d+\.\d+\.\d+$/.test(String(version)),
    );
    expect(loose).toEqual([]);
  });
});
