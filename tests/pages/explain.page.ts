/** Explained by change: what was before, the scenes at a glance, handles that say what they are. */
import { expect, type Page, test } from "@playwright/test";
import { expectAccessible, figure, watchPage } from "./page.ts";

const open = async (page: Page, query = "?mode=bench") => {
  await page.goto(query);
  await figure(page, "pressureDrop");
};

test("a change leaves what each number was, until a press ends the comparison", async ({ page }) => {
  const sound = watchPage(page);
  await open(page);
  const changes = page.locator(".side [data-change]");
  await expect(changes).toHaveCount(0);
  const before = await figure(page, "pressureDrop");
  const grip = page.getByRole("slider", { name: "Conduit diameter" });
  await expect(grip).toBeVisible({ timeout: 30_000 });
  await grip.focus();
  await page.keyboard.press("PageDown");
  await expect(changes).toHaveCount(5, { timeout: 30_000 });
  const drop = page.locator(".readout", { hasText: "Pressure drop along" });
  await expect(drop.locator("[data-change]")).toContainText(`${before.toFixed(2)} →`);
  await expectAccessible(page);
  await page.getByRole("button", { name: "Hide" }).click();
  await expect(changes).toHaveCount(0);
  await grip.focus();
  await page.keyboard.press("ArrowUp");
  await expect(changes).toHaveCount(5, { timeout: 30_000 });
  // A press on the picture, away from any handle.
  await page.mouse.click(300, 600);
  await expect(changes).toHaveCount(0);
  sound();
});

test("scenes stand in a bar as pictures, chosen by arrows or a press", async ({ page }) => {
  const sound = watchPage(page);
  await open(page);
  const bar = page.getByRole("group", { name: "Scene" });
  await expect(bar.getByRole("radio")).toHaveCount(7);
  await expect(bar.locator("img")).toHaveCount(7, { timeout: 40_000 });
  // Each is a picture of its own.
  const sources = await bar
    .locator("img")
    .evaluateAll((all) => all.map((each) => (each as HTMLImageElement).src));
  expect(new Set(sources).size).toBe(7);
  await bar.getByRole("radio", { name: "Pathway" }).focus();
  await page.keyboard.press("ArrowDown");
  await expect(bar.getByRole("radio", { name: "Whole circulation" })).toBeChecked();
  await expect(page.locator("#scene-reading")).toContainText("Whole circulation", { timeout: 30_000 });
  await bar.getByText("Breathing").click();
  await expect(bar.getByRole("radio", { name: "Breathing" })).toBeChecked();
  sound();
});

test("a handle tells its name and value while it is pointed at or has the focus", async ({ page }) => {
  await open(page);
  const handle = page.locator(".handle", { hasText: "Conduit diameter" });
  const tag = handle.locator(".handle-tag");
  await expect(handle).toBeVisible({ timeout: 30_000 });
  await expect(tag).toHaveCSS("visibility", "hidden");
  await handle.getByRole("slider").hover();
  await expect(tag).toHaveCSS("visibility", "visible");
  await expect(tag).toContainText("18.0");
  await page.mouse.move(5, 5);
  await expect(tag).toHaveCSS("visibility", "hidden");
  await handle.getByRole("slider").focus();
  await expect(tag).toHaveCSS("visibility", "visible");
});

test("a link with a state of its own decides about handles", async ({ page }) => {
  await open(page, "?mode=bench&state=1");
  await expect(page.locator(".handle")).toHaveCount(0);
});
