import { readdirSync } from "node:fs";
import { expect } from "@playwright/test";
import { expectAccessible, watchPage } from "./page.ts";
import { test } from "./resting-field.ts";

test("U29 the start page carries six cautions of six, the doors, the lessons, and blood behind them", async ({
  page,
}) => {
  const sound = watchPage(page);
  await page.emulateMedia({ reducedMotion: "no-preference" });
  await page.goto("");
  await expect(page.locator("[data-caution]")).toHaveCount(6);
  await expect(page.locator(".door")).toHaveCount(4);
  await expect(page.locator("#stage canvas")).toBeVisible({ timeout: 30_000 });
  await page.locator("#lessons").scrollIntoViewIfNeeded();
  await expect(page.locator(".lesson-list li")).toHaveCount(
    readdirSync("lessons/en").filter((file) => /^\d\d-.*\.md$/.test(file)).length,
  );
  await expectAccessible(page);
  sound();
});

test("a mode opens without reloading the page, and the browser's back button returns", async ({ page }) => {
  await page.goto("");
  await page.evaluate(() => {
    (window as unknown as Record<string, unknown>).same = true;
  });
  await page.locator(".door", { hasText: "Bench" }).click();
  await expect(page.locator(".shell")).toBeVisible();
  await page.goBack();
  await expect(page.locator(".home")).toBeVisible();
  expect(await page.evaluate(() => (window as unknown as Record<string, unknown>).same)).toBe(true);
});

test("an address can put another scene beside the start page's words, in words", async ({ page }) => {
  await page.goto("?state=1~pcircuit");
  await expect(page.locator("#scene-reading")).toContainText("Whole circulation", { timeout: 30_000 });
  // A key without its message stands in brackets.
  await expect(page.locator("body")).not.toContainText("[");
});

test("U20 the lengthened and the right-to-left pseudo-language cut nothing, and the scene is not mirrored", async ({
  page,
}) => {
  for (const tag of ["en-XA", "ar-XB"]) {
    for (const setting of ["home", "bench"]) {
      await page.goto(`?mode=${setting}&language=${tag}`);
      await expect(page.locator("html")).toHaveAttribute("dir", tag === "ar-XB" ? "rtl" : "ltr");
      await expect(page.locator("button").first()).toBeVisible();
      await page.waitForTimeout(500);
      const cut = await page.evaluate(() =>
        [...document.querySelectorAll("button, a, h1, h2, dt, .choice-words span")]
          .filter(
            (element) =>
              element.scrollWidth > element.clientWidth + 2 &&
              getComputedStyle(element).display !== "inline" &&
              !element.classList.contains("unseen"),
          )
          .map((element) => element.textContent),
      );
      expect(cut, `${setting} ${tag}`).toEqual([]);
    }
  }
});
