/** A draft that was left on the device, whatever it is, does not keep the author's page from opening. */
import { readFileSync } from "node:fs";
import { expect, type Page } from "@playwright/test";
import { paste, watchPage } from "./page.ts";
import { test } from "./resting-field.ts";

const example = () => /````markdown\n([\s\S]*?)````/.exec(readFileSync("docs/authoring.md", "utf8"))![1]!;
const faults = (page: Page) => page.locator(".author-faults");

const PLANTED: readonly (readonly [string, () => string, RegExp])[] = [
  ["two million empty lines", () => "\n".repeat(2_000_000), /kept draft of 2000000 characters.*200000/],
  ["50,000 backticks", () => `${example()}\n${"`".repeat(50_000)} x y\n`, /at most 8000 in one part/],
  ["a heading of blanks", () => `${example()}\n## a${" ".repeat(20_000)}{#}b\n`, /at most 200/],
  [
    "a matrix of 7,900 cells and deep TeX",
    () => `${example()}\n### technical\n$$\\begin{matrix}${"&".repeat(7900)}\\end{matrix}$$\n`,
    /equation of \d+ characters/,
  ],
];

for (const [name, text, fault] of PLANTED) {
  test(`a planted draft of ${name} is reported, and writing can continue`, async ({ page }) => {
    const sound = watchPage(page);
    await page.addInitScript((draft) => {
      if (!sessionStorage.getItem("planted")) localStorage.setItem("lungward.draft", draft);
      sessionStorage.setItem("planted", "yes");
    }, text());
    await page.goto("?mode=author&view=text");
    await expect(faults(page)).toContainText(fault, { timeout: 60_000 });
    await paste(page.locator("textarea"), example());
    await expect(faults(page)).toContainText("No faults", { timeout: 60_000 });
    await expect(page.locator(".author-preview h2")).toHaveText("A wide tube");
    sound();
  });
}
