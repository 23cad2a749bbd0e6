import { describe, expect, test } from "vitest";
import { readSources, type Source, sourceOf } from "./sources.ts";

const sources = readSources("src");
const room = (path: string): string => path.split("/")[1]!;

/** Rows import columns (docs: DEVELOPERS.md). A room may always import itself; `types` means type-only. */
const TABLE: Record<string, Record<string, "yes" | "types" | RegExp>> = {
  sim: {},
  i18n: {},
  docs: {},
  audience: {},
  phone: {
    audience: /^src\/audience\/(line|ended|line-messages|bar-of|room-code)\.ts$/,
    i18n: /^src\/i18n\/(message-format|parse-number)\.ts$/,
  },
  state: { sim: "yes" },
  lesson: { sim: "yes", state: "yes" },
  chain: { sim: "yes", state: "yes" },
  scenes: {
    sim: /^src\/sim\/(flow-field|geometry|tracers|exchange|units\.ts|parameters\/)/,
    state: /^src\/state\/scene-state\.ts$/,
    chain: "types",
    i18n: "yes",
  },
  ui: {
    sim: /^src\/sim\/(parameters\/|units|faults)/,
    state: "yes",
    lesson: "yes",
    chain: "types",
    scenes: /^src\/scenes\/(theme|stage)/,
    i18n: "yes",
    lms: "types",
  },
  lms: { state: "types", lesson: "types" },
  modes: {
    sim: /^src\/sim\/(parameters\/|units|faults)/,
    state: "yes",
    lesson: "yes",
    chain: "yes",
    scenes: "yes",
    ui: "yes",
    i18n: "yes",
    lms: "yes",
    audience: /^src\/audience\/(line|line-messages|bar-of|room-code)\.ts$/,
  },
  cli: { audience: "yes", sim: "yes", state: "yes", lesson: "yes", i18n: "yes", lms: "yes" },
};

/** Helpers for every room. */
const CHECKED_ACCESS = /^src\/sim\/checked\//;

const PACKAGES: Record<string, RegExp> = {
  "pixi.js": /^src\/scenes\//,
  "matter-js": /^src\/sim\/clots\//,
  ws: /^src\/audience\/server\.ts$/,
  redis: /^src\/audience\/redis-rooms\.ts$/,
  preact: /^src\/(ui|modes|phone)\/|^src\/main\.tsx?$/,
};

/** What a page knows and numerics must not. */
const banned =
  /\b(document\.|window\.|navigator\.|localStorage|performance\.now|Date\.now|new Date|Math\.random)/;
const knowsThePage = ({ path, text }: Source): boolean =>
  room(path) === "sim" &&
  banned.test(text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "").replace(/"[^"\n]*"/g, '""'));

const refused = (source: Source): string[] =>
  source.imports
    .filter(({ own, target, typeOnly }) => {
      if (!own) return PACKAGES[target] && !PACKAGES[target]!.test(source.path) && !typeOnly;
      const [from, to] = [room(source.path), room(target)];
      if (from === to || /^main\.tsx?$/.test(from) || !target.startsWith("src/") || !/\.tsx?$/.test(target))
        return false;
      const rule = TABLE[from]?.[to];
      if (CHECKED_ACCESS.test(target)) return false;
      if (rule === undefined) return true;
      if (rule === "yes" || typeOnly) return false;
      return rule === "types" || !rule.test(target);
    })
    .map(({ target }) => `${source.path} -> ${target}`);

function circlesIn(files: readonly Source[]): string[] {
  const graph = new Map(
    files.map(({ path, imports }) => [path, imports.filter(({ own }) => own).map(({ target }) => target)]),
  );
  const done = new Set<string>();
  const circles: string[] = [];
  const walk = (path: string, trail: string[]): void => {
    if (trail.includes(path)) {
      circles.push([...trail.slice(trail.indexOf(path)), path].join(" -> "));
      return;
    }
    if (done.has(path)) return;
    for (const next of graph.get(path) ?? []) walk(next, [...trail, path]);
    done.add(path);
  };
  for (const path of graph.keys()) walk(path, []);
  return circles;
}

describe("the rule of imports", () => {
  test("each room imports only what the table allows", () => {
    expect(sources.flatMap(refused)).toEqual([]);
  });

  test("src/sim uses no page, no clock and no random numbers of its own", () => {
    expect(sources.filter(knowsThePage).map(({ path }) => path)).toEqual([]);
  });

  test("no file imports itself in a circle, be it for a type alone", () => {
    expect(circlesIn(sources)).toEqual([]);
  });

  test("every own import names a file that exists", () => {
    const known = new Set(sources.map(({ path }) => path));
    const dangling = sources.flatMap(({ path, imports }) =>
      imports
        .filter(
          ({ own, target }) =>
            own && /\.tsx?$/.test(target) && target.startsWith("src/") && !known.has(target),
        )
        .map(({ target }) => `${path} -> ${target}`),
    );
    expect(dangling).toEqual([]);
  });
});

describe("a planted violation is found", () => {
  const planted: readonly (readonly [path: string, line: string])[] = [
    ["src/sim/geometry/planted.ts", 'import { t } from "../../words/index.ts";'],
    ["src/sim/oxygen/planted.ts", 'import { Graphics } from "pixi.js";'],
    ["src/sim/geometry/planted.ts", 'import { Body } from "matter-js";'],
    ["src/sim/geometry/planted.ts", 'import Matter, { type Body } from "matter-js";'],
    ["src/i18n/planted.ts", 'import { solve } from "../sim/circulation/solve.ts";'],
    ["src/state/planted.ts", 'import type { Lesson } from "../lesson/lesson.ts";'],
    ["src/lesson/planted.ts", 'import { startChain } from "../chain/page-chain.ts";'],
    ["src/chain/planted.ts", 'export { makeCircuit } from "../scenes/scene.ts";'],
    ["src/scenes/planted.ts", 'import { solve } from "../sim/circulation/solve.ts";'],
    ["src/scenes/planted.ts", 'const later = import("../settings/bench/index.tsx");'],
    ["src/ui/planted.tsx", 'import { startChain } from "../chain/page-chain.ts";'],
    ["src/lms/planted.ts", 'import { render } from "preact";'],
    ["src/docs/planted.ts", 'import { t } from "../words/index.ts";'],
  ];
  test.each(planted)("%s with %s", (path, line) => {
    expect(refused(sourceOf(path, `${line}\n`))).toHaveLength(1);
  });

  test("importing only a type where types are allowed is not a violation", () => {
    const line = 'import type { Frame } from "../chain/frame.ts";\n';
    expect(refused(sourceOf("src/scenes/planted.ts", line))).toEqual([]);
  });

  test("a circle of three files, one of them for a type alone; a clock in the numerics", () => {
    const circle = ["a", "b", "c"].map((name, index) =>
      sourceOf(
        `src/sim/${name}.ts`,
        `import ${index === 1 ? "type " : ""}{ x } from "./${"bca"[index]}.ts";\n`,
      ),
    );
    expect(circlesIn(circle)).toEqual(["src/sim/a.ts -> src/sim/b.ts -> src/sim/c.ts -> src/sim/a.ts"]);
    expect(knowsThePage(sourceOf("src/sim/x.ts", "const now = Date.now();\n"))).toBe(true);
    expect(knowsThePage(sourceOf("src/sim/x.ts", "// Date.now() is not asked\n"))).toBe(false);
  });
});
