import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { drawSoaks, readSoaks, WAYS } from "../../scripts/docs/soak.ts";
import { TOP } from "./sources.ts";

const read = (path: string): string => readFileSync(join(TOP, path), "utf8");
/** Cells of every table row of a page. */
const rowsOf = (page: string): string[][] =>
  read(page)
    .split("\n")
    .filter((line) => /^\|(?! ?-|\|)/.test(line) && !/^\|[\s|:-]+\|$/.test(line))
    .map((line) =>
      line
        .split("|")
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
const RESULTS = [
  "met",
  "met where tested",
  "met for page text",
  "partly met",
  "partly checked",
  "intended, not tested",
  "not applicable",
];
const located = (name: string): string => (name.includes("/") ? name : `tests/pages/${name}`);

describe("what the docs claim", () => {
  test("each fault of the table names a test, and each named test is in the file that is named", () => {
    const faults = rowsOf("docs/reliability.md").filter(([, , tests = ""]) => tests.includes(".page.ts"));
    expect(faults.length).toBeGreaterThan(18);
    const missing = faults.flatMap(([fault, , tests = ""]) => {
      const named = [...tests.matchAll(/`([\w./-]+)`: "([^"]+)"/g)];
      if (named.length === 0) return [`${fault}: names no test`];
      return named
        .filter(([, file, title]) => {
          const path = located(file!);
          return !existsSync(join(TOP, path)) || !read(path).includes(title!);
        })
        .map(([, file, title]) => `${fault}: ${file} has no "${title}"`);
    });
    expect(missing).toEqual([]);
  });

  test("each fault that the kit must survive is in the table", () => {
    const reported = rowsOf("docs/reliability.md")
      .map(([fault = ""]) => fault)
      .join("\n");
    for (const fault of [
      "context lost",
      "worker dies",
      "falls silent",
      "no memory",
      "denied, full or corrupt",
      "newer version",
      "clock of the machine",
      "asleep",
      "window 1 px",
      "display scale",
      "fonts missing",
      "update breaks off",
      "no WebGL",
      "no vector instructions",
      "100 MB or binary",
      "nested beyond reason",
    ])
      expect(reported).toContain(fault);
  });

  test("the walk of WCAG 2.2 has 55 criteria at levels A and AA, each once, each with a result and how it was checked", () => {
    const rows = rowsOf("docs/accessibility.md").filter(([criterion = ""]) => /^\d\.\d\.\d/.test(criterion));
    const numbers = rows.map(([criterion]) => criterion!.split(" ")[0]!);
    expect(new Set(numbers).size).toBe(55);
    expect(rows).toHaveLength(55);
    for (const [criterion, level, result, how] of rows) {
      expect(level, criterion).toMatch(/^AA?$/);
      expect(RESULTS, criterion).toContain(result);
      if (result === "not applicable") expect(how, criterion).toMatch(/\b(no|not|nothing|never)\b/);
      if (result === "met where tested") expect(how, criterion).toMatch(/`[\w./-]+`|\baxe\b/);
    }
  });

  test("each page test that the walk names exists", () => {
    const named = [...read("docs/accessibility.md").matchAll(/`([\w./-]+\.(?:page|test)\.tsx?)`/g)].map(
      ([, name]) => located(name!),
    );
    expect(named.filter((path) => !existsSync(join(TOP, path)))).toEqual([]);
  });

  test("each claim of the README is in the list of claims with a command that exists, and none is left over", () => {
    const readme = read("README.md").replace(/\s+/g, " ");
    const claims = rowsOf("docs/claims.md").slice(1);
    expect(claims.length).toBeGreaterThan(15);
    const { scripts } = JSON.parse(read("package.json")) as { scripts: Record<string, string> };
    for (const [words, shown] of claims) {
      expect(readme, "a claim that README does not make").toContain(words!);
      const commands = [...shown!.matchAll(/`([^`]+)`/g)].map(([, command]) => command!);
      expect(commands.length, words).toBeGreaterThan(0);
      for (const command of commands) {
        const script = /^npm (?:run (?:-s )?)?([\w:-]+)/.exec(command)?.[1];
        if (script) expect(Object.keys(scripts), command).toContain(script);
        for (const [path] of command.matchAll(/tests\/[\w./-]+/g))
          expect(existsSync(join(TOP, path)), path).toBe(true);
      }
    }
    // Every row of README's own tables is a claim.
    for (const [what, reported] of rowsOf("README.md").filter(([what = ""]) => what !== ""))
      expect(
        claims.some(([words]) => reported!.includes(words!) || words!.includes(reported!)),
        what,
      ).toBe(true);
  });

  test("each decision has its date and says what would change it", () => {
    const decisions = read("docs/decisions.md")
      .split(/\n(?=\*\*)/)
      .slice(1);
    expect(decisions.length).toBeGreaterThan(5);
    for (const decision of decisions) {
      expect(decision).toMatch(/^\*\*\d{4}-\d{2}-\d{2} · [^*]+\*\*/);
      const last = decision
        .replace(/\s+/g, " ")
        .trim()
        .split(/(?<=\.) (?=[A-Z])/)
        .at(-1)!;
      expect(last, "what would change it").toMatch(
        /^(We|A|An|The|Node) .*\bwould (change our mind|do without|[a-z]+ .*\b(if|once|when|with)\b)/,
      );
    }
  });
});

const REPORTED = { canvas: "processor", webgl: "chip" } as const;

test("the soaks' figure and tables are those of the runs that are kept", () => {
  const reports = readSoaks();
  expect(read("docs/pictures/soak.svg")).toBe(drawSoaks(reports));
  const rows = {
    heap: "heap after collection, MB",
    nodes: "nodes",
    listeners: "listeners",
    workers: "workers",
    contexts: "graphics contexts",
    graphics: "graphics objects",
  };
  for (const way of WAYS) {
    for (const [name, words] of Object.entries(rows) as [keyof typeof rows, string][]) {
      // The processor asks nothing of a graphics context.
      if (way === "canvas" && (name === "contexts" || name === "graphics")) continue;
      const values = reports[way].course.map((level) => level[name]);
      const reported = rowsOf("docs/reliability.md").find(([what]) => what === `${words}, ${REPORTED[way]}`);
      const figures = [values[0]!, Math.min(...values), Math.max(...values), values.at(-1)!];
      expect(reported?.slice(1), `${words}, ${way}`).toEqual(
        figures.map((value) => value.toFixed(name === "heap" ? 1 : 0)),
      );
    }
  }
});
