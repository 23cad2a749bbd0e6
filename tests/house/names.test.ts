import { expect, test } from "vitest";
import { filesBelow, readSources } from "./sources.ts";

test("no name says Manager, Helper, Util, Service, Base or Impl", () => {
  const banned =
    /\b(class|interface|type|function|const)\s+\w*(Manager|Helper|Utils?|Service|Impl)\b|\bclass\s+Base/;
  const offenders = readSources("src").filter(
    ({ text, path }) => banned.test(text) || /util|helper|manager/i.test(path),
  );
  expect(offenders.map(({ path }) => path)).toEqual([]);
});

test("source files are named in kebab case", () => {
  const offenders = filesBelow("src", /\.tsx?$/).filter(
    (path) =>
      !/^[a-z0-9]+(-[a-z0-9]+)*(\.(test|page|bench|worker|wasm))?\.tsx?$/.test(path.split("/").pop()!),
  );
  expect(offenders).toEqual([]);
});

test("no source holds a leftover: TODO, FIXME, a debugger or a console call outside commands", () => {
  const offenders = readSources("src").filter(
    ({ path, text }) =>
      /\b(TODO|FIXME|XXX)\b|\bdebugger\b/.test(text) ||
      (!path.startsWith("src/cli/") && /\bconsole\.(log|debug)\b/.test(text)),
  );
  expect(offenders.map(({ path }) => path)).toEqual([]);
});
