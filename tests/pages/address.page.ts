/** Addresses that do not fit: the page opens, and a note says what was asked for and what there is. */
import { expect, type Page } from "@playwright/test";
import { expectAccessible, watchPage } from "./page.ts";
import { test } from "./resting-field.ts";

const note = (page: Page) => page.locator(".page-notes .note");

for (const [query, asked, offered] of [
  ["?language=constructor", "constructor", "en, de, es, fr"],
  ["?language=__proto__", "__proto__", "en, de, es, fr"],
  ["?mode=study&page=__proto__", "__proto__", "glossary, sources"],
  ["?mode=toString", "toString", "home, bench, study"],
  ["?mode=study&lesson=99-nothing", "99-nothing", "03-pathways"],
  ["?mode=study&lesson=02-steps&step=constructor", "constructor", "Step"],
  ["?mode=lecture&lesson=__proto__", "__proto__", "03-pathways"],
] as const) {
  test(`${query} opens a page with text and says what was asked for and what exists`, async ({ page }) => {
    const sound = watchPage(page);
    await page.goto(query);
    await expect(page.locator("h1").first()).toBeVisible({ timeout: 60_000 });
    await expect(note(page)).toContainText(asked, { timeout: 60_000 });
    await expect(note(page)).toContainText(offered);
    await expectAccessible(page);
    await note(page).getByRole("button").click();
    await expect(note(page)).toHaveCount(0);
    sound();
  });
}

test("a state of 14 kB is reported in a note that fits the page and can be closed", async ({ page }) => {
  await page.goto(`?mode=bench&state=1~${"e9~".repeat(4700)}`);
  await expect(note(page)).toContainText("14102", { timeout: 60_000 });
  expect(await note(page).locator("p").count()).toBeLessThan(10);
  await expect(note(page)).toContainText(/and \d+ more/);
  await expect(note(page).getByRole("button")).toBeInViewport();
});

test("a body outside the model's range is brought into it, and both values are reported", async ({
  page,
}) => {
  await page.goto("?mode=bench&state=1~b1_0.25_14");
  await expect(note(page)).toContainText("0.25", { timeout: 60_000 });
  await expect(note(page)).toContainText("0.3 to 2.5");
  await expect(page.locator(".notes .note")).toHaveCount(0);
});
