import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { mentioned, UNCALLED, without } from "../../scripts/left-out-members.ts";
import { TOP } from "./sources.ts";

const libraryModule = (name: string): string =>
  readFileSync(join(TOP, "node_modules/pixi.js/lib", `${name}.mjs`), "utf8");

test.each(Object.entries(UNCALLED))(
  "the library's %s still has the members that are left out of it",
  (name, list) => {
    const whole = libraryModule(name);
    const rest = without(whole, list.split(" "));
    expect(rest.length).toBeLessThan(whole.length);
  },
);

test("a member goes with its getter and setter, and what looks like it stays", () => {
  const code = `
class Box {
  constructor() { this.size = { old: 1 }; deprecation("8", "old"); }
  get old() { return this.size; }
  set old(value) { this.size = value; }
  static old() {}
  fresh() { return { old: this.old }; }
}
const boxMixin = { old() {}, fresh() {} };`;
  const rest = without(code, ["old"]);
  expect(rest).not.toContain("old()");
  expect(rest).not.toContain("old(value)");
  expect(rest).not.toContain("deprecation");
  expect(rest).toContain("{ old: 1 }");
  expect(rest).toContain("{ old: this.old }");
  expect(rest).toContain("const boxMixin = {  fresh() {} };");
});

test("a member that the library no longer has stops the build", () => {
  expect(() => without("class Box { fresh() {} }", ["fresh", "old"])).toThrow("no member old");
});

test("code that calls a member after all is found, the canvas's own methods are not", () => {
  expect(mentioned("a.strokeContains(b)")).toBe("strokeContains");
  expect(mentioned("ink.arc(0,0,1,0,7)")).toBeUndefined();
});
