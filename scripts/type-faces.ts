/**
 * Makes the kit's type in two files a weight: one with the characters that the kit itself writes, in all its languages, and
 * one with what else the Latin scripts need, which a page fetches for a name or a lesson of its reader's that has them.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { extname, join } from "node:path";
import subsetFont from "subset-font";
import type { Plugin } from "vite";

const TOP = join(import.meta.dirname, "..");
const PACKAGE = join(TOP, "node_modules/@fontsource/atkinson-hyperlegible");
const MADE = join(TOP, ".cache/type-faces");
/** The style sheet that it stands in for. */
const SHEET = join(TOP, "src/ui/styles/type-faces.css");
const WEIGHTS = [400, 700];
const ASCII = String.fromCharCode(...Array.from({ length: 95 }, (_, i) => i + 32));
/** What people type; spaces and minus sign of number formats; what the code puts in; by what pixi measures a face's height. */
const BESIDES = `${ASCII}\u00a0\u202f\u2212•³ÉÅ`;

const codePoints = (text: string): number[] => Array.from(text, (letter) => letter.codePointAt(0)!);

/** Code points of all that the kit writes. */
function written(): ReadonlySet<number> {
  const found = new Set(codePoints(BESIDES));
  for (const folder of ["src/i18n", "lessons"])
    for (const entry of readdirSync(join(TOP, folder), { recursive: true, withFileTypes: true })) {
      if (![".json", ".md"].includes(extname(entry.name))) continue;
      for (const point of codePoints(readFileSync(join(entry.parentPath, entry.name), "utf8")))
        found.add(point);
    }
  return found;
}

/** Code points of a script's file by the package, as `unicode-range` says them. */
function offered(script: string): readonly number[] {
  const ranges: Record<string, string> = JSON.parse(readFileSync(join(PACKAGE, "unicode.json"), "utf8"));
  return ranges[script]!.split(",").flatMap((range) => {
    const [first, last = first] = range
      .slice(2)
      .split("-")
      .map((hex) => Number.parseInt(hex, 16));
    return Array.from({ length: last! - first! + 1 }, (_, i) => first! + i);
  });
}

/** @param points ascending */
export function unicodeRange(points: readonly number[]): string {
  const runs: [first: number, last: number][] = [];
  for (const point of points) {
    const run = runs.at(-1);
    if (run?.[1] === point - 1) run[1] = point;
    else runs.push([point, point]);
  }
  const hex = (point: number) => point.toString(16).toUpperCase();
  return runs.map(([a, b]) => (a === b ? `U+${hex(a)}` : `U+${hex(a)}-${hex(b)}`)).join(",");
}

const face = (weight: number, file: string, range: string): string => `@font-face {
  font-family: "Atkinson Hyperlegible";
  font-display: swap;
  font-weight: ${weight};
  src: url("${file}") format("woff2");
  unicode-range: ${range};
}`;

const fileOf = (script: string, weight: number): string =>
  join(PACKAGE, `files/atkinson-hyperlegible-${script}-${weight}-normal.woff2`);

/** The Latin code points of the two files. */
export function parts(): Readonly<Record<"written" | "other", readonly number[]>> {
  const own = written();
  const latin = offered("latin");
  return {
    written: latin.filter((point) => own.has(point)),
    other: latin.filter((point) => !own.has(point)),
  };
}

/** The Latin face of a weight with these code points alone. */
export const latinFace = (weight: number, points: readonly number[], targetFormat: "woff2" | "sfnt") =>
  subsetFont(readFileSync(fileOf("latin", weight)), String.fromCodePoint(...points), { targetFormat });

async function sheet(): Promise<string> {
  mkdirSync(MADE, { recursive: true });
  const faces: string[] = [];
  for (const weight of WEIGHTS) {
    faces.push(face(weight, fileOf("latin-ext", weight), unicodeRange(offered("latin-ext"))));
    for (const [name, points] of Object.entries(parts())) {
      const file = join(MADE, `atkinson-hyperlegible-${name}-${weight}.woff2`);
      writeFileSync(file, await latinFace(weight, points, "woff2"));
      faces.push(face(weight, file, unicodeRange(points)));
    }
  }
  return faces.join("\n");
}

export const typeFaces = (): Plugin => ({
  name: "type-faces",
  apply: "build",
  enforce: "pre",
  load: (id) => (id === SHEET ? sheet() : null),
});
