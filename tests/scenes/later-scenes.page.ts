/** Scenes whose drawing is fetched when it is first shown. */
import { expect, type Page, test } from "@playwright/test";
import { watchPage } from "../pages/page.ts";

test.use({ reducedMotion: "no-preference" });

const surface = (page: Page) => page.locator(".stage-surface");

test("a scene whose drawing does not come is reported in words, and shown once it has come", async ({
  page,
}) => {
  await page.route("**/assets/calf-scene-*", (route) => route.abort());
  await page.goto("?mode=bench&state=1~pcalf");
  await expect(page.locator(".stage-without-picture")).toBeVisible({ timeout: 30_000 });
  await expect(page.locator("#scene-reading")).not.toBeEmpty();
  await page.unroute("**/assets/calf-scene-*");
  await expect(surface(page)).toBeVisible({ timeout: 30_000 });
});

test("the picture stays while another scene's drawing is on its way", async ({ page }) => {
  const sound = watchPage(page);
  let letCome = () => {};
  const waiting = new Promise<void>((done) => {
    letCome = done;
  });
  await page.route("**/assets/growth-scene-*", async (route) => {
    await waiting;
    await route.continue();
  });
  // By the link or, on a quick machine, already by the scene's small picture.
  const asked = page.waitForRequest("**/assets/growth-scene-*");
  await page.goto("?mode=bench&state=1~ppathway~r1");
  await expect(page.locator("#scene-reading")).toContainText("mmHg", { timeout: 60_000 });
  await page.evaluate(() => {
    const link = Object.assign(document.createElement("a"), { href: "?mode=bench&state=1~pgrowth" });
    document.body.append(link);
    link.click();
    link.remove();
  });
  await asked;
  const ink = () =>
    page.evaluate(() => document.querySelector<HTMLCanvasElement>("#stage canvas")!.toDataURL());
  const before = await ink();
  await page.waitForTimeout(600);
  expect(await ink()).toBe(before);
  await expect(surface(page)).toBeVisible();
  letCome();
  await expect.poll(ink, { timeout: 30_000 }).not.toBe(before);
  sound();
});
