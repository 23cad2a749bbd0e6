/** Records are plain and readonly; a class only owns memory; clock and random source come from outside. */
import { expect, test } from "vitest";
import { readSources, sourceOf } from "./sources.ts";

const sources = readSources("src");

/** Fields of interfaces that someone could write to. */
const writable = ({ text }: { readonly text: string }): string[] =>
  [...text.matchAll(/\binterface (\w+)[^{]*\{([^}]*)\}/g)].flatMap(([, name, body]) =>
    [...body!.matchAll(/^ {2}(\w+)\??: /gm)].map(([, field]) => `${name}.${field}`),
  );

test("outside the loops that reuse their memory every record's fields are readonly", () => {
  const inner = /^src\/(sim|chain|scenes)\//;
  const offenders = sources
    .filter(({ path }) => !inner.test(path))
    .flatMap((source) => writable(source).map((field) => `${source.path}: ${field}`));
  expect(offenders).toEqual([]);
  expect(
    writable(sourceOf("src/ui/x.ts", "interface A {\n  b: number;\n  readonly c: string;\n}\n")),
  ).toEqual(["A.b"]);
});

test("a class owns memory or bodies of the numerics, nothing else", () => {
  const classes = sources.filter(({ text }) => /^\s*(export )?(abstract )?class \w/m.test(text));
  expect(classes.map(({ path }) => path)).toEqual([
    "src/sim/clots/clot-world.ts",
    "src/sim/tracers/tracer-cloud.ts",
  ]);
});

test("below the modes chance comes in from one place, and what computes or draws knows no clock of its own", () => {
  const where = (pattern: RegExp, rooms: RegExp) =>
    sources.filter(({ path, text }) => rooms.test(path) && pattern.test(text)).map(({ path }) => path);
  const computing = /^src\/(sim|state|lesson|chain|scenes|i18n)\//;
  expect(where(/\bMath\.random\b/, /./)).toEqual(["src/chain/page-chain.ts"]);
  expect(where(/\bperformance\.now\(|\bDate\.now\(|\bnew Date\(\)/, computing)).toEqual([
    "src/chain/field-worker.ts",
    "src/chain/gpu-field-worker.ts",
    "src/chain/page-chain.ts",
  ]);
});
