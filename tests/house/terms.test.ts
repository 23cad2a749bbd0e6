/** The field's own terms, one for each thing (docs/terms.md): words that once stood for them are refused. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { TOP } from "./sources.ts";

/** What is refused, and the word in its place. */
const REFUSED: readonly (readonly [old: RegExp, term: string])[] = [
  [/lattice(?! Boltzmann)/i, "flow solver, mesh"],
  [/\braster|Raster|rasterise/, "cut-cell mesh"],
  [/hold-?pressure\b(?!")/i, "pressure outlet"],
  [/carry-?over/i, "remap"],
  [/(step|viscosity)OverCell|cellMetres/, "dtOverDx, viscosityOverDx, dxMetres"],
  [/\b(apply|Field)Drive\b|\bdriveOf\b/, "boundary conditions, forcing"],
  [/leastSound|soundOverSpeed/, "minSoundSpeed, soundSpeedRatio"],
  [
    /lung(Artery|Arteries|Vein)|LUNG_(ARTERY|VEIN)|\blung (artery|arteries|veins?)\b/,
    "pulmonary artery, vein",
  ],
  [/(inlet|outlet)Valve|\b(inlet|outlet) valve/i, "atrioventricular, semilunar valve"],
  [/lungDistension|\bdistension\b/, "distensibility"],
  [/strainPressure|STRAIN_SECONDS|"strain"|breathing: strain/, "Valsalva manoeuvre"],
  [/before-completion|beforeCompletion|stage before completion/, "Glenn"],
  [/test[- ]?closure/i, "test occlusion"],
  [/kept-state|kept state/i, "warm start"],
  [/energy ?book\b/i, "energy budget"],
  [/LIVER_VEIN|liverShare/, "hepatic vein"],
  [/\bSettingName\b|[?&]setting=|\bSETTING_NAMES\b/, "mode"],
  [/\bshelf|Shelf/, "library"],
  [/\bcrew|Crew/, "worker pool"],
  [/\btroubles?\b|noteTrouble/i, "error log"],
  [/stillness/i, "reduced motion"],
  [/mended.library/i, "pixi patches"],
  [/\btoldBy\b|\btoldLast\b/, "cache key"],
  [/\breckon(ed|s|ing)?\b|\babreast\b|\blest\b/i, "worked out, side by side, so that not"],
  [/\baskers?\b|\b(last)?[Kk]nock(ed|s)?\b|\bkeptTelling\b|\bmayGoOn\b/, "caller, ping, version, canAdvance"],
  [/\b(MOST|LEAST)(_[A-Z]|\b)/, "MAX_, MIN_"],
  [/\bsrc\/(settings|words|interface|record|command|styles)\b/, "modes, i18n, ui, lms, cli"],
  [/\bsim\/(lattice|field|bodies)\b/, "flow-solver, flow-field, clots"],
];

/** The table of earlier ids with its test; what lists the words themselves; what tells of earlier versions. */
const ALLOWED: readonly string[] = [
  "src/sim/parameters/aliases.ts",
  "tests/sim/parameters/aliases.test.ts",
  "src/modes/shared/address/place.ts",
  "tests/house/terms.test.ts",
  "docs/terms.md",
  "docs/changes.md",
  "docs/decisions.md",
];
/** As a family says it: not where engineers and clinicians are spoken to. */
const PLAIN: readonly (readonly [old: RegExp, term: string])[] = [
  [/\blung (artery|arteries|veins?)\b/, "pulmonary artery, vein"],
  [/\bliver[- ]veins?\b/i, "hepatic vein"],
];
const SPEAKS_PLAINLY = /^docs\/(authoring|translating)\.md$|^tests\/lessons?\//;
const TEXT = /\.(tsx?|mjs|css|md|c)$|^src\/i18n\/.*\.json$/;

const files = ["src", "tests", "scripts", "docs"].flatMap((folder) =>
  readdirSync(join(TOP, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(TOP.length))
    .filter((path) => TEXT.test(path) && !path.endsWith(".wasm.ts")),
);

/** Of messages the keys alone: their words speak to everyone. */
const read = (path: string): string => {
  const text = readFileSync(join(TOP, path), "utf8");
  return path.endsWith(".json") ? [...text.matchAll(/"([^"]+)":/g)].map(([key]) => key).join("\n") : text;
};

const found = (path: string, text: string): string[] =>
  [...REFUSED, ...(SPEAKS_PLAINLY.test(path) ? [] : PLAIN)].flatMap(([old, term]) => {
    const hit = old.exec(text);
    return hit ? [`${path}: ${hit[0]} -> ${term}`] : [];
  });

describe("the field's terms", () => {
  test("no earlier word is left in code, comments or docs", () => {
    const offenders = files
      .filter((path) => !ALLOWED.includes(path))
      .flatMap((path) => found(path, read(path)));
    expect(offenders).toEqual([]);
  });

  test("no file is named by one", () => {
    const named = files.filter((path) => !ALLOWED.includes(path)).flatMap((path) => found("", path));
    expect(named).toEqual([]);
  });

  test("an earlier word that is planted is found", () => {
    expect(found("src/x.ts", "const lattice = 1;")).toHaveLength(1);
    expect(found("src/x.ts", "const MOST_STEPS = 1;")).toHaveLength(1);
    expect(found("src/x.ts", "// reckoned by hand")).toHaveLength(1);
    expect(found("docs/x.md", "lattice Boltzmann was weighed")).toEqual([]);
  });

  test("each term of the page says where it is defined, by a link or a source", () => {
    const rows = readFileSync(join(TOP, "docs/terms.md"), "utf8")
      .split("\n")
      .filter((line) => /^\|(?! ?-)/.test(line) && !line.startsWith("| earlier word"));
    expect(rows.length).toBeGreaterThan(30);
    const short = rows.filter((row) =>
      row
        .split("|")
        .slice(1, -1)
        .some((cell) => cell.trim().length < 2),
    );
    expect(short).toEqual([]);
  });

  test("two files share a name only where the folder makes the difference plain", () => {
    const plain = /^(index\.tsx?|.*\.json|.*\.md|.*\.css)$/;
    const names = new Map<string, string[]>();
    for (const path of files.filter((each) => each.startsWith("src/"))) {
      const name = path.split("/").pop()!;
      if (!plain.test(name)) names.set(name, [...(names.get(name) ?? []), path]);
    }
    expect([...names.values()].filter((paths) => paths.length > 1)).toEqual([]);
  });
});
