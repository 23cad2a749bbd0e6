import { expect, type Page, test } from "@playwright/test";
import { SCENES, type SceneName } from "../../src/state/scene-state.ts";
import { expectAccessible, watchPage } from "./page.ts";

test.use({ reducedMotion: "no-preference" });

const open = async (page: Page, scene: SceneName, reported: RegExp, more = "") => {
  await page.goto(`?mode=bench&state=1~p${scene}${more}`);
  await expect(page.locator("#scene-reading")).toHaveText(reported, { timeout: 45_000 });
};
/** The small pictures over the stage come one by one; later they stay as they are. */
const barFilled = (page: Page) =>
  expect(page.locator(".scene-bar img")).toHaveCount(SCENES.length, { timeout: 45_000 });
const CIRCUIT = /Pressures in millimetres of mercury/;

test("U3 under reduced motion a scene does not move until asked", async ({ page }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await open(page, "circuit", CIRCUIT);
  await barFilled(page);
  await page.waitForTimeout(600);
  const canvas = page.locator("#stage canvas");
  const first = await canvas.screenshot();
  await page.waitForTimeout(700);
  expect((await canvas.screenshot()).equals(first)).toBe(true);
});

test("U1 blood moves, and pause stops it where it is", async ({ page }) => {
  await open(page, "circuit", CIRCUIT);
  await barFilled(page);
  const canvas = page.locator("#stage canvas");
  const first = await canvas.screenshot();
  await page.waitForTimeout(700);
  expect((await canvas.screenshot()).equals(first)).toBe(false);
  await page.locator("[data-item=pause]").click();
  await page.waitForTimeout(600);
  const held = await canvas.screenshot();
  await page.waitForTimeout(700);
  expect((await canvas.screenshot()).equals(held)).toBe(true);
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
