/** The scene bar's pictures, kept as one strip for each pathway and theme: `npx playwright test scene-strips --update-snapshots` takes them again. */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { expect, type Page, test } from "@playwright/test";
import { STAGES } from "../../src/sim/parameters/request.ts";
import { SCENES, type SceneName } from "../../src/state/scene-state.ts";

const FOLDER = "src/modes/bench/scene-strips";
/** px on screen, and of one picture in the strip */
const [WIDTH, HEIGHT] = [960, 540];
const SMALL = { width: 192, height: 108 };
/** Of the brightest step, on average over a picture: drawn anew it differs by its marks alone, by 0.011 in the pathway and 0.006 elsewhere; from another stage's by 0.026 there, mostly by 0.009 and more elsewhere. */
const unlikeIn = (scene: SceneName): number => (scene === "pathway" ? 0.02 : 0.008);

/** The scene fills the window, without words of its own or of the page. */
const ALONE = `
  body * { visibility: hidden; }
  #stage, #stage canvas { visibility: visible; }
  [data-clear] { position: fixed !important; inset: 0 !important; }`;

test.use({ bypassCSP: true, reuseContext: false, viewport: { width: WIDTH, height: HEIGHT } });
test.setTimeout(240_000);
test.describe.configure({ mode: "parallel" });

for (const theme of ["dark", "light"])
  for (const stage of STAGES) {
    test(`the scene bar's ${theme} pictures of ${stage} are those that the scenes draw`, async ({
      page,
    }, info) => {
      const updating = /all|changed/.test(info.config.updateSnapshots);
      // The themes differ in colour alone.
      test.skip(theme === "light" && stage !== "extracardiac" && !updating && !process.env.LUNGWARD_LONG);
      await page.addInitScript((kept) => localStorage.setItem("lungward.theme", JSON.stringify(kept)), theme);
      const drawn: string[] = [];
      await page.goto(`?mode=bench&draw=canvas&state=1~t${stage}~r1~flhg`);
      await page.addStyleTag({ content: ALONE });
      for (const scene of SCENES) drawn.push(await picture(page, scene, drawn.at(-1)));
      const strip = `${FOLDER}/${stage}-${theme}.webp`;
      const now = await joined(page, drawn);
      if (updating) {
        mkdirSync(FOLDER, { recursive: true });
        writeFileSync(strip, Buffer.from(now, "base64"));
      }
      // As kept: what packing the strip loses is lost on both sides.
      const unlike = await differences(page, now, readFileSync(strip).toString("base64"));
      for (const [i, scene] of SCENES.entries()) expect(unlike[i], scene).toBeLessThan(unlikeIn(scene));
    });
  }

/** PNG of a settled scene, base64. @param earlier that of the scene before it */
async function picture(page: Page, scene: SceneName, earlier = ""): Promise<string> {
  if (scene !== SCENES[0])
    await page.locator(`.scene-bar [value=${scene}]`).evaluate((choice: HTMLElement) => choice.click());
  await expect(page.locator("#scene-reading")).toHaveText(/.{40}/, { timeout: 60_000 });
  let [before, now] = ["", "-"];
  await expect
    .poll(
      async () => {
        await page.waitForTimeout(600);
        [before, now] = [now, (await page.screenshot({ timeout: 60_000 })).toString("base64")];
        return before === now && now !== earlier;
      },
      { timeout: 60_000 },
    )
    .toBe(true);
  return now;
}

/** WebP of PNG pictures one below the other, made smaller, base64. */
const joined = (page: Page, pictures: readonly string[]): Promise<string> =>
  page.evaluate(
    async ({ pngs, width, height }) => {
      const canvas = document.createElement("canvas");
      Object.assign(canvas, { width, height: height * pngs.length });
      const ink = canvas.getContext("2d")!;
      ink.imageSmoothingQuality = "high";
      for (const [row, png] of pngs.entries()) {
        const whole = await createImageBitmap(await (await fetch(`data:image/png;base64,${png}`)).blob());
        ink.drawImage(whole, 0, row * height, width, height);
      }
      return canvas.toDataURL("image/webp", 0.7).split(",")[1]!;
    },
    { pngs: pictures, ...SMALL },
  );

/** How far each row of a strip is from another's, 0..1 on average over pixels and channels. */
const differences = (page: Page, one: string, other: string): Promise<number[]> =>
  page.evaluate(
    async ({ strips, scenes, width, height }) => {
      const [now, then] = await Promise.all(
        strips.map(async (strip) => {
          const found = await fetch(`data:image/webp;base64,${strip}`);
          const ink = new OffscreenCanvas(width, height * scenes).getContext("2d")!;
          ink.drawImage(await createImageBitmap(await found.blob()), 0, 0);
          return ink;
        }),
      );
      return Array.from({ length: scenes }, (_, row) => {
        const [a, b] = [now!, then!].map((ink) => ink.getImageData(0, row * height, width, height).data);
        return a!.reduce((sum, value, i) => sum + Math.abs(value - b![i]!), 0) / a!.length / 255;
      });
    },
    { strips: [one, other], scenes: SCENES.length, ...SMALL },
  );
