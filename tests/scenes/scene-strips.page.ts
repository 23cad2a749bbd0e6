/** The scene bar's pictures, kept as one strip for each pathway and theme: `npx playwright test scene-strips --update-snapshots` takes them again. */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { expect, type Page, test } from "@playwright/test";
import { STAGES } from "../../src/sim/parameters/request.ts";
import { SCENES, type SceneName } from "../../src/state/scene-state.ts";

const FOLDER = "src/modes/bench/scene-strips";
/** px on screen, and of one picture in the strip */
const [WIDTH, HEIGHT] = [960, 540];
const SMALL = { width: 192, height: 108 };
/** Of the brightest step, on average over a picture: one that is drawn anew differs by its tracers alone. */
const UNLIKE = 0.02;

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
      if (updating) {
        mkdirSync(FOLDER, { recursive: true });
        writeFileSync(strip, Buffer.from(await joined(page, drawn), "base64"));
      }
      const unlike = await differences(page, drawn, readFileSync(strip).toString("base64"));
      console.log(stage, theme, unlike.map((each) => each.toFixed(4)).join(" "));
      for (const [i, scene] of SCENES.entries()) expect(unlike[i], scene).toBeLessThan(UNLIKE);
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

/** How far each picture is from its row of the strip, 0..1 on average over pixels and channels. */
const differences = (page: Page, pictures: readonly string[], strip: string): Promise<number[]> =>
  page.evaluate(
    async ({ pngs, kept, width, height }) => {
      const bitmap = async (url: string) => createImageBitmap(await (await fetch(url)).blob());
      const pixels = (from: ImageBitmap, top: number, tall: number) => {
        const ink = new OffscreenCanvas(width, height).getContext("2d")!;
        ink.imageSmoothingQuality = "high";
        ink.drawImage(from, 0, top, from.width, tall, 0, 0, width, height);
        return ink.getImageData(0, 0, width, height).data;
      };
      const rows = await bitmap(`data:image/webp;base64,${kept}`);
      const found: number[] = [];
      for (const [row, png] of pngs.entries()) {
        const whole = await bitmap(`data:image/png;base64,${png}`);
        const now = pixels(whole, 0, whole.height);
        const then = pixels(rows, row * height, height);
        found.push(now.reduce((sum, value, i) => sum + Math.abs(value - then[i]!), 0) / now.length / 255);
      }
      return found;
    },
    { pngs: pictures, kept: strip, ...SMALL },
  );
