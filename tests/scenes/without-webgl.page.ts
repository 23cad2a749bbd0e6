import { expect, test } from "@playwright/test";
import { DARK } from "../../src/scenes/theme/colour.ts";
import { countColours } from "./pixels.ts";

test.use({
  launchOptions: {
    executablePath: process.env.LUNGWARD_CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-quic", "--no-first-run", "--disable-3d-apis"],
  },
});

test("without WebGL the canvas renderer draws walls and blood", async ({ page }) => {
  test.setTimeout(180_000);
  await page.setViewportSize({ width: 640, height: 480 });
  await page.goto("?mode=bench");
  await expect
    .poll(async () => Math.min(...(await countColours(page, [DARK.wall, DARK.origin[1]]))), {
      timeout: 150_000,
    })
    .toBeGreaterThan(20);
});
