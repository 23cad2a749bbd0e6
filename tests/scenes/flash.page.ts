import { expect, test } from "@playwright/test";
import { writeAddress } from "../../src/state/address.ts";
import { PLAY_SPEEDS, START } from "../../src/state/scene-state.ts";
import { flashCount } from "./flash-count.ts";

test.use({ reducedMotion: "no-preference" });

/** Beats a minute at rest that can be set at most; shown at double speed they are 360, far over the 200 asked. */
const FASTEST = 180;
/** CSS px2 in one block */
const ALLOWED = 21_824;
const SIZE = { width: 1024, height: 768 };
/** The stage is read at half its size: a point counts for four. */
const HALF = { width: 512, height: 384 };
/** ms between two pictures, and pictures in a second: four for each beat shown */
const APART = 40;
const PICTURES = 25;

/** What the page keeps of the stage's last frame: RGBA as base64. */
type Watched = Window & { lastFrame: () => string };

/** The chamber has the largest stretch of blood that lies together. */
const SHOWN = [
  ["circuit", "extracardiac"],
  ["pathway", "extracardiac"],
  ["pathway", "atriopulmonary"],
] as const;

for (const [scene, stage] of SHOWN)
  test(`U2 in the ${scene} scene of the ${stage} stage at ${FASTEST} beats a minute shown twice as fast no large area flashes`, async ({
    page,
  }) => {
    const state = writeAddress({
      ...START,
      scene,
      request: { ...START.request, stage, set: { heartRate: FASTEST } },
      view: { ...START.view, playSpeed: PLAY_SPEEDS.max },
    });
    await page.setViewportSize(SIZE);
    await page.clock.install();
    await page.goto(`?mode=bench&state=${state}`);
    await expect(page.locator("#scene-reading")).toHaveText(/mmHg|mercury/, { timeout: 45_000 });
    await page.evaluate(({ width, height }) => {
      const kept = document.createElement("canvas");
      Object.assign(kept, { width, height });
      const ink = kept.getContext("2d", { willReadFrequently: true })!;
      const later = window.requestAnimationFrame.bind(window);
      // A drawn frame can be read until its own turn of the page ends.
      window.requestAnimationFrame = (turn) =>
        later((time) => {
          turn(time);
          const stage = document.querySelector<HTMLCanvasElement>("#stage canvas");
          if (stage) ink.drawImage(stage, 0, 0, width, height);
        });
      (window as unknown as Watched).lastFrame = () => {
        const { data } = ink.getImageData(0, 0, width, height);
        const parts: string[] = [];
        for (let k = 0; k < data.length; k += 32_768)
          parts.push(String.fromCharCode(...data.subarray(k, k + 32_768)));
        return btoa(parts.join(""));
      };
    }, HALF);
    // From here on time goes by only as the test lets it.
    await page.clock.pauseAt(await page.evaluate(() => Date.now() + 2_000));
    const count = flashCount(HALF.width, HALF.height);
    let distinct = 0;
    let before = "";
    for (let n = 0; n < PICTURES; n++) {
      await page.clock.fastForward(APART);
      const frame = await page.evaluate(() => (window as unknown as Watched).lastFrame());
      if (frame !== before) distinct++;
      before = frame;
      count.add(new Uint8Array(Buffer.from(frame, "base64")));
    }
    // The heart beats and the blood moves, or the count says nothing.
    expect(distinct).toBeGreaterThan(PICTURES / 2);
    const { light, red, most, atOnce } = count.result();
    console.log(
      `flashing ${4 * light} px2 by light, ${4 * red} px2 by red, ${most} pulses at most, ${4 * atOnce} px2 at once`,
    );
    expect(4 * atOnce).toBeLessThan(ALLOWED);
    expect(4 * red).toBeLessThan(ALLOWED);
    // In the pathway scene dots pass most points of vessels and lungs more often than that, each at its own time.
    if (scene !== "pathway") expect(4 * light).toBeLessThan(ALLOWED);
  });
