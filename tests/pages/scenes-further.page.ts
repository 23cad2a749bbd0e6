import { expect, type Page, test } from "@playwright/test";
import type { SceneName } from "../../src/state/scene-state.ts";
import { expectAccessible, watchPage } from "./page.ts";

const open = async (page: Page, scene: SceneName, reported: RegExp, more = "") => {
  await page.goto(`?mode=bench&state=1~p${scene}${more}`);
  await expect(page.locator("#scene-reading")).toHaveText(reported, { timeout: 45_000 });
};
/** What the processor has drawn, apart from what lies over it. */
const drawn = (page: Page) =>
  page.locator("#stage canvas").evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL());
const CIRCUIT = /Pressures in millimetres of mercury/;

test("U3 under reduced motion a scene does not move until asked", async ({ page }) => {
  await open(page, "circuit", CIRCUIT);
  await page.waitForTimeout(2000);
  const first = await drawn(page);
  // Drawn again at least once.
  await page.waitForTimeout(1200);
  expect((await drawn(page)) === first).toBe(true);
});

test("U1 blood moves, and pause stops it where it is", async ({ page }) => {
  await page.emulateMedia({ reducedMotion: "no-preference" });
  await open(page, "circuit", CIRCUIT);
  await page.locator("[data-item=pause]").waitFor();
  await page.waitForTimeout(1000);
  const first = await drawn(page);
  await page.waitForTimeout(700);
  expect((await drawn(page)) === first).toBe(false);
  await page.locator("[data-item=pause]").click();
  await page.waitForTimeout(2000);
  const held = await drawn(page);
  await page.waitForTimeout(1200);
  expect((await drawn(page)) === held).toBe(true);
});

test("the curves of the numbers open with their tables", async ({ page }) => {
  const sound = watchPage(page);
  await open(page, "circuit", CIRCUIT);
  await page.locator(".toolbar [data-item=numbers]").click();
  await page.getByText("Curves against time").click();
  await expect(page.locator(".chart-plot canvas")).toHaveCount(4);
  await page.locator(".chart-table summary").first().click();
  const mean = page
    .locator(".chart-table")
    .first()
    .getByRole("row", { name: /Pathway/ })
    .getByRole("cell")
    .first();
  await expect(mean).toHaveText(/^\d+\.\d\smmHg$/);
  await expectAccessible(page);
  sound();
});
