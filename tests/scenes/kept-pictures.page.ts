import { expect, type Page, test } from "@playwright/test";
import { DARK } from "../../src/scenes/theme/colour.ts";
import { SCENES, type SceneName } from "../../src/state/scene-state.ts";
import { expectAccessible, watchPage } from "../pages/page.ts";
import { countColours } from "./pixels.ts";

/** Projector, kiosk, phone; kept at a part of their size: compared is where things are and what colour they have, not how a glyph is smoothed. */
const SIZES = [
  { name: "projector", width: 1920, height: 1080, part: 4 },
  { name: "kiosk", width: 1280, height: 800, part: 4 },
  { name: "phone", width: 390, height: 844, part: 3 },
] as const;
/** What each scene's text says once it is computed. */
const REPORTED: Readonly<Record<SceneName, RegExp>> = {
  pathway: /area turns in eddies/,
  circuit: /Pressures in millimetres of mercury/,
  breathing: /the pressure around the lungs runs from/,
  calf: /leg veins/,
  exchange: /leave the capillaries/,
  growth: /does not grow/,
  exercise: /Effort from 1 to 8 times rest/,
};

/** Part of the pixels that may differ: tracers part ways where the held moment differs by a hundredth of a second. */
const UNLIKE: Readonly<Partial<Record<SceneName, number>>> = { pathway: 0.02 };

test.setTimeout(150_000);
// Without motion the same tracers are led by the same strides through one held moment: a frozen step.
/** A small PNG of the page, made by the page itself. */
async function small(page: Page, part: number): Promise<Buffer> {
  const shot = await page.screenshot({ timeout: 60_000 });
  const address = await page.evaluate(
    async ({ png, by }) => {
      const picture = await createImageBitmap(await (await fetch(`data:image/png;base64,${png}`)).blob());
      const canvas = document.createElement("canvas");
      canvas.width = Math.round(picture.width / by);
      canvas.height = Math.round(picture.height / by);
      const ink = canvas.getContext("2d")!;
      ink.imageSmoothingQuality = "high";
      ink.drawImage(picture, 0, 0, canvas.width, canvas.height);
      return canvas.toDataURL("image/png");
    },
    { png: shot.toString("base64"), by: part },
  );
  return Buffer.from(address.slice(address.indexOf(",") + 1), "base64");
}

/** The small picture once nothing on it has changed for a while. */
async function resting(page: Page, part: number): Promise<Buffer> {
  let before = await small(page, part);
  await expect
    .poll(
      async () => {
        await page.waitForTimeout(600);
        const now = await small(page, part);
        const same = now.equals(before);
        before = now;
        return same;
      },
      { timeout: 60_000 },
    )
    .toBe(true);
  return before;
}

/** Every scene as the processor draws it; by a graphics chip's way those in which most differs. */
const DRAWN = [
  ...SCENES.map((scene) => ({ scene, way: "canvas" })),
  { scene: "pathway", way: "webgl" },
  { scene: "circuit", way: "webgl" },
] as const;

for (const { scene, way } of DRAWN) {
  test(`U10 U28 ${scene} by ${way}: looks at three sizes like its stored pictures, is described in words, and is accessible`, async ({
    page,
  }) => {
    const sound = watchPage(page);
    await page.addInitScript(() => {
      let state = 7;
      Math.random = () => {
        state = (state * 48271) % 2147483647;
        return state / 2147483647;
      };
    });
    // The pathway's flow settles sooner at the speed of life.
    await page.goto(`?mode=bench&state=1~p${scene}~r1&draw=${way}`);
    await expect(page.locator("#scene-reading")).toHaveText(REPORTED[scene], { timeout: 90_000 });
    // Tracers are shown once they have been led through the settled moment; the key alone has some 140 pixels near the colour.
    if (scene === "pathway") {
      await page.setViewportSize({ width: 640, height: 480 });
      await page.waitForTimeout(1000);
      await expect
        .poll(async () => (await countColours(page, [DARK.origin[1]], 72))[0], { timeout: 60_000 })
        .toBeGreaterThan(300);
    }
    // Its small pictures have a test of their own (`scene-strips.page.ts`).
    const bar = page.locator(".scene-bar");
    await bar.evaluate((element: HTMLElement) => element.style.setProperty("visibility", "hidden"));
    for (const { name, width, height, part } of SIZES) {
      await page.setViewportSize({ width, height });
      expect(await resting(page, part)).toMatchSnapshot(`${scene}-${name}.png`, {
        threshold: 0.25,
        maxDiffPixelRatio: UNLIKE[scene] ?? 0.004,
      });
    }
    await bar.evaluate((element: HTMLElement) => element.style.removeProperty("visibility"));
    await expectAccessible(page);
    sound();
  });
}
