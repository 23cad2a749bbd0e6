import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { TOP } from "../house/sources.ts";

const read = (path: string) => readFileSync(join(TOP, path), "utf8");
const namesIn = (text: string, list: RegExp) => list.exec(text)![1]!.split(/[,|]/);

// The bundler takes globs only as they stand, so that the list is written three times.
test("English that comes later is left out at the start, fetched later and bundled in one file by one list", () => {
  const files = read("src/i18n/files.ts");
  const later = namesIn(files, /\n\s*"\.\/en\/\{([^}]*)\}\.json"/);
  expect(namesIn(files, /"!\.\/en\/\{phone,([^}]*)\}\.json"/)).toEqual(later);
  expect(namesIn(read("vite.config.ts"), /src\\\/i18n\\\/en\\\/\(([^)]*)\)\\\.json/)).toEqual(later);
});
