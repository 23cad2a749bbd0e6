import { expect, type Page, test } from "@playwright/test";
import { expectAccessible, watchPage } from "./page.ts";

const SCENES = ["circuit", "breathing", "calf", "exchange", "growth", "exercise"] as const;
const SIZES = [
  { width: 1920, height: 1080 },
  { width: 1080, height: 1920 },
  { width: 390, height: 844 },
] as const;
/** What each scene's text says once it is computed. */
const TOLD: Readonly<Record<(typeof SCENES)[number], RegExp>> = {
  circuit: /Pressures in millimetres of mercury/,
  breathing: /the pressure around the lungs runs from/,
  calf: /leg veins/,
  exchange: /leave the capillaries/,
  growth: /does not grow/,
  exercise: /Effort from 1 to 8 times rest/,
};

const open = async (page: Page, scene: (typeof SCENES)[number], more = "") => {
  await page.goto(`?setting=bench&state=1~p${scene}${more}`);
  await expect(page.locator("#scene-reading")).toHaveText(TOLD[scene], { timeout: 45_000 });
};

/** Distinct colours of the stage's picture, in steps of 16 a channel: a blank one has a handful. */
const colours = async (page: Page): Promise<number> => {
  const shot = (await page.locator("#stage canvas").screenshot()).toString("base64");
  return page.evaluate(async (data) => {
    const picture = await createImageBitmap(await (await fetch(`data:image/png;base64,${data}`)).blob());
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    const ink = canvas.getContext("2d")!;
    ink.drawImage(picture, 0, 0);
    const { data: pixels } = ink.getImageData(0, 0, picture.width, picture.height);
    const seen = new Set<number>();
    for (let i = 0; i < pixels.length; i += 4)
      seen.add(((pixels[i]! >> 4) << 8) | ((pixels[i + 1]! >> 4) << 4) | (pixels[i + 2]! >> 4));
    return seen.size;
  }, shot);
};

for (const scene of SCENES)
  test(`U10 U28 ${scene}: is drawn at hall, kiosk and phone size, told in words, and accessible`, async ({
    page,
  }) => {
    const sound = watchPage(page);
    await page.setViewportSize(SIZES[0]);
    await open(page, scene);
    for (const size of SIZES) {
      await page.setViewportSize(size);
      await page.waitForTimeout(400);
      expect(await colours(page), JSON.stringify(size)).toBeGreaterThan(25);
    }
    await expectAccessible(page);
    sound();
  });

test("U3 under reduced motion a scene stands still until asked", async ({ page }) => {
  await page.emulateMedia({ reducedMotion: "reduce" });
  await open(page, "circuit");
  await page.waitForTimeout(600);
  const canvas = page.locator("#stage canvas");
  const first = await canvas.screenshot();
  await page.waitForTimeout(700);
  expect((await canvas.screenshot()).equals(first)).toBe(true);
});

test("U1 blood moves, and pause stops it where it is", async ({ page }) => {
  await open(page, "circuit");
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
  await open(page, "circuit");
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
