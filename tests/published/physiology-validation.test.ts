/** The validation page against what the model answers today. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { KEPT, type RandomSettings } from "../../src/cli/validation/random-section.ts";
import { TORNADO, validationPage } from "../../src/cli/validation/validation-page.ts";

const { text: page, tornado } = validationPage();
const [quantities, sensitivity] = page.split("## What moves what");
const rows = quantities!.split("\n").filter((line) => /^\| (?!quantity)/.test(line));

test("docs/validation-physiology.md is current (else run: npx tsx src/cli/validation.ts)", () => {
  expect(readFileSync("docs/validation-physiology.md", "utf8")).toBe(page);
});

test("its figure is current, and has a panel of bars for each of the ten numbers", () => {
  expect(readFileSync(`docs/${TORNADO}`, "utf8")).toBe(tornado);
  expect(tornado.match(/<g /g)).toHaveLength(10);
  for (const panel of tornado.split("<g ").slice(1)) expect(panel).toMatch(/<rect [^>]*width="[1-9]/);
});

test("it holds at least 40 quantities, each with a source, and a reason wherever one is outside", () => {
  expect(rows.length).toBeGreaterThanOrEqual(40);
  for (const line of rows) {
    const [, , , , source, verdict] = line.split("|").map((cell) => cell.trim());
    expect(source!.length, line).toBeGreaterThan(3);
    expect(verdict, line).toMatch(/^pass$|^outside: .{10}/);
  }
});

test("nine in ten are inside", () => {
  expect(rows.filter((line) => line.endsWith("| pass |")).length / rows.length).toBeGreaterThan(0.9);
});

test("a table tells which settings move which numbers: contractility and stiffness the output, lung resistance the pathway", () => {
  const moved = (setting: string) => {
    const line = sensitivity!.split("\n").find((each) => each.startsWith(`| ${setting} `));
    return line!.split("|").slice(2, -1).map(Number);
  };
  const [INDEX, PATHWAY] = [0, 1];
  expect(moved("contractility")[INDEX]).toBeGreaterThan(3);
  expect(moved("stiffness")[INDEX]).toBeLessThan(-2);
  expect(moved("pulmonaryResistanceIndex")[PATHWAY]).toBeGreaterThan(3);
});

test("the kept run holds ten thousand random settings or more; none of their answers breaks a law", () => {
  const { sets, answers, outcomes, broken, open } = JSON.parse(readFileSync(KEPT, "utf8")) as RandomSettings;
  expect(sets).toBeGreaterThanOrEqual(10_000);
  expect(Object.values(outcomes).reduce((sum, times) => sum + times, 0)).toBe(sets);
  expect(outcomes["an answer"]).toBe(answers);
  expect(broken).toEqual({});
  expect(open.energy).toBeLessThan(1);
  expect(open.oxygen).toBeLessThan(0.5);
});
