import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { LEFT_OUT, leftOut } from "../../scripts/left-out.ts";
import { TOP } from "./sources.ts";

/** Names that a module's text exports. */
const exported = (text: string): string[] =>
  [
    ...[...text.matchAll(/\bexport (?:const|class|function) (\w+)/g)].map(([, name]) => name!),
    ...[...text.matchAll(/\bexport ?\{([^}]*)\}/g)].flatMap(([, list]) =>
      list!.split(",").map((each) => each.trim().split(" as ").at(-1)!),
    ),
    ...(/\bexport default\b/.test(text) ? ["default"] : []),
  ].filter((name) => name !== "");

test.each(Object.entries(LEFT_OUT))(
  "what takes the place of %s has no name that the library has not",
  (name, text) => {
    const replaced = readFileSync(join(TOP, "node_modules", name), "utf8");
    expect(exported(replaced)).toEqual(expect.arrayContaining(exported(text)));
  },
);

test("a module that the library no longer has stops the build", () => {
  const plugin = leftOut() as {
    load(id: string): string | null;
    buildEnd(this: { error(said: string): never }): void;
  };
  const refuse = {
    error(said: string): never {
      throw new Error(said);
    },
  };
  const [renamed, ...others] = Object.keys(LEFT_OUT);
  for (const name of others) expect(plugin.load(join(TOP, "node_modules", name))).toBe(LEFT_OUT[name]);
  expect(() => plugin.buildEnd.call(refuse)).toThrow(`has no ${renamed}`);
  plugin.load(join(TOP, "node_modules", renamed!));
  plugin.buildEnd.call(refuse);
});
