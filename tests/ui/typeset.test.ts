// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { LIMITS } from "../../src/lesson/format/limits.ts";
import { typeset } from "../../src/ui/lesson/typeset.ts";

test("an equation becomes markup", () => {
  expect(typeset("\\Delta p = \\tfrac12\\rho v^2", false)).toContain("katex");
});

test.each([
  ["deep braces", `${"{".repeat(5000)}x${"}".repeat(5000)}`],
  ["a matrix of 7,900 cells", `\\begin{matrix}${"&".repeat(7900)}\\end{matrix}`],
  ["definitions that double", "\\def\\a{xxxxxxxxx}\\def\\b{\\a\\a\\a\\a}\\b\\b"],
])("%s is left as its TeX", (_, tex) => {
  expect(typeset(tex, true)).toBeNull();
});

test("the worst that the limits let through stays a small piece of the page", () => {
  const worst = [
    `${"\\sqrt".repeat(LIMITS.formula.characters / 5 - 1)}x`,
    `\\begin{matrix}${"\\sqrt{x}&".repeat(LIMITS.formula.cells)}x\\end{matrix}`,
    "\\overbrace{x}".repeat(70),
    "\\text{\\Huge x}".repeat(60),
  ];
  for (const tex of worst) {
    expect(tex.length).toBeLessThanOrEqual(LIMITS.formula.characters);
    expect((typeset(tex, true) ?? "").length, tex.slice(0, 20)).toBeLessThan(400_000);
  }
});
