import { expect, test } from "@playwright/test";
import { DARK } from "../../src/scenes/theme/colour.ts";
import { present } from "../../src/sim/checked/present.ts";
import { writeAddress } from "../../src/state/address.ts";
import { type SceneState, START } from "../../src/state/scene-state.ts";
import { countColours } from "./pixels.ts";

test.use({ reducedMotion: "no-preference" });

test.setTimeout(180_000);
const opened = (view: Partial<SceneState["view"]> = {}) =>
  `?mode=bench&state=${writeAddress({ ...START, view: { ...START.view, ...view } })}`;
const [upper, liver, legs] = DARK.origin;

for (const way of ["webgl", "canvas"]) {
  test(`blood of all three origins moves inside drawn walls: ${way}`, async ({ page }) => {
    await page.setViewportSize({ width: 800, height: 600 });
    await page.goto(`${opened({ labels: false })}&draw=${way}`);
    await expect
      .poll(async () => Math.min(...(await countColours(page, [liver, legs]))), { timeout: 120_000 })
      .toBeGreaterThan(60);
    const [wall, white] = await countColours(page, [DARK.wall, upper]);
    expect(wall).toBeGreaterThan(400);
    expect(white).toBeGreaterThan(200);
  });
}

/** The dark picture's arteries and muscle. */
const REDDISH = "#9a4238";

test("a chest that has been seen does not vanish while another pathway is chosen", async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.goto(opened({ labels: false }));
  const reddish = async () => present((await countColours(page, [REDDISH], 40))[0]);
  await expect.poll(reddish, { timeout: 60_000 }).toBeGreaterThan(20_000);
  await page.locator("input[type=radio][value=atriopulmonary]").first().check({ force: true });
  const counts: number[] = [];
  for (const end = Date.now() + 4_000; Date.now() < end; ) counts.push(await reddish());
  expect(page.url()).toContain("atriopulmonary");
  expect(Math.min(...counts)).toBeGreaterThan(12_000);
});

test("a lost graphics context comes back by itself with the same picture", async ({ page }) => {
  await page.setViewportSize({ width: 640, height: 480 });
  await page.goto(`${opened({ labels: false })}&draw=webgl`);
  await expect
    .poll(async () => (await countColours(page, [DARK.wall]))[0], { timeout: 120_000 })
    .toBeGreaterThan(300);
  await page.locator("canvas").first().waitFor();
  await page.evaluate(() => {
    const canvas = document.querySelector("canvas")!;
    canvas.dataset.lost = "yes";
    canvas.getContext("webgl2")!.getExtension("WEBGL_lose_context")!.loseContext();
  });
  await expect(page.locator("canvas:not([data-lost])")).toHaveCount(1, { timeout: 20_000 });
  await expect(page.locator("canvas[data-lost]")).toHaveCount(0);
  await expect
    .poll(async () => (await countColours(page, [DARK.wall]))[0], { timeout: 60_000 })
    .toBeGreaterThan(300);
});

test.describe("under reduced motion", () => {
  test.use({ reducedMotion: "reduce" });

  test("U3 the picture does not move, and its streamlines and tracers still show the flow", async ({
    page,
  }) => {
    await page.setViewportSize({ width: 640, height: 480 });
    await page.goto(opened({ labels: false }));
    await expect
      .poll(async () => (await countColours(page, [liver]))[0], { timeout: 150_000 })
      .toBeGreaterThan(20);
    // The field is checked again until it has settled, at most a few times.
    await expect
      .poll(
        async () => {
          const before = await page.locator("canvas").first().screenshot({ timeout: 60_000 });
          await page.waitForTimeout(1500);
          return before.equals(await page.locator("canvas").first().screenshot({ timeout: 60_000 }));
        },
        { timeout: 150_000 },
      )
      .toBe(true);
  });
});
