import { describe, expect, test } from "vitest";
import { readSources, type Source } from "./sources.ts";

const sources = readSources("src");
const room = (path: string): string => path.split("/")[1]!;

/** Rows import columns (docs: DEVELOPERS.md). A room may always import itself; `types` means type-only. */
const TABLE: Record<string, Record<string, "yes" | "types" | RegExp>> = {
  sim: {},
  words: {},
  state: { sim: "yes" },
  lesson: { sim: "yes", state: "yes" },
  chain: { sim: "yes", state: "yes" },
  scenes: {
    sim: /^src\/sim\/(field|geometry|tracers|exchange|units\.ts|request\.ts|parameters\.ts)/,
    state: /^src\/state\/scene-state\.ts$/,
    chain: "types",
    words: "yes",
  },
  interface: {
    sim: /^src\/sim\/(parameters|units|faults|request|outputs|circulation\/outputs)/,
    state: "yes",
    lesson: "yes",
    chain: "types",
    scenes: /^src\/scenes\/(theme|stage)/,
    words: "yes",
    record: "types",
  },
  record: { state: "types", lesson: "types" },
  settings: {
    sim: /^src\/sim\/(parameters|units|faults|request|outputs|circulation\/outputs)/,
    state: "yes",
    lesson: "yes",
    chain: "yes",
    scenes: "yes",
    interface: "yes",
    words: "yes",
    record: "yes",
  },
  command: { sim: "yes", state: "yes", lesson: "yes", words: "yes", record: "yes" },
};

const PACKAGES: Record<string, RegExp> = {
  "pixi.js": /^src\/scenes\//,
  "matter-js": /^src\/sim\/bodies\//,
  tweakpane: /^src\/settings\/bench\//,
  preact: /^src\/(interface|settings)\/|^src\/main\.tsx?$/,
};

const refused = (source: Source): string[] =>
  source.imports
    .filter(({ own, target, typeOnly }) => {
      if (!own) return PACKAGES[target] && !PACKAGES[target]!.test(source.path) && !typeOnly;
      const [from, to] = [room(source.path), room(target)];
      if (from === to || /^main\.tsx?$/.test(from) || !target.startsWith("src/") || !/\.tsx?$/.test(target))
        return false;
      const rule = TABLE[from]?.[to];
      if (rule === undefined) return true;
      if (rule === "yes" || typeOnly) return false;
      return rule === "types" || !rule.test(target);
    })
    .map(({ target }) => `${source.path} -> ${target}`);

describe("the rule of imports", () => {
  test("each room imports only what the table allows", () => {
    expect(sources.flatMap(refused)).toEqual([]);
  });

  test("src/sim knows no page, no clock and no randomness of its own", () => {
    const banned =
      /\b(document\.|window\.|navigator\.|localStorage|performance\.now|Date\.now|new Date|Math\.random)/;
    const strip = (text: string) =>
      text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "").replace(/"[^"\n]*"/g, '""');
    const offenders = sources
      .filter(({ path }) => room(path) === "sim")
      .filter(({ text }) => banned.test(strip(text)));
    expect(offenders.map(({ path }) => path)).toEqual([]);
  });

  test("no file imports itself in a circle", () => {
    const graph = new Map(
      sources.map(({ path, imports }) => [
        path,
        imports.filter(({ own, typeOnly }) => own && !typeOnly).map(({ target }) => target),
      ]),
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
    expect(circles).toEqual([]);
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
