// Makes the pictures of README and docs from the built page: `npm run build && npm run pictures`.
import { mkdirSync } from "node:fs";
import { chromium } from "@playwright/test";
import { preview } from "vite";

/** ms */
const SETTLE = 12_000;
const SHOTS = [
  { name: "bench", query: "?mode=bench", width: 1600, height: 900 },
  {
    name: "three-pathways",
    query: "?mode=lecture&lesson=03-pathways&step=race",
    // While there is dye in all three.
    settle: 5_000,
    width: 1600,
    height: 900,
  },
  { name: "kiosk", query: "?mode=kiosk", width: 720, height: 1280 },
  { name: "study", query: "?mode=study&lesson=06-fenestration", width: 1280, height: 800 },
];

mkdirSync("docs/pictures", { recursive: true });
const server = await preview({
  build: { outDir: "dist/folder" },
  preview: { port: 5303, host: "127.0.0.1" },
});
const browser = await chromium.launch({
  executablePath: process.env.LUNGWARD_CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox"],
});
const asked = process.argv.slice(2);
for (const { name, query, width, height, settle = SETTLE } of SHOTS) {
  if (asked.length && !asked.includes(name)) continue;
  const page = await browser.newPage({ viewport: { width, height } });
  await page.goto(`http://127.0.0.1:5303/${query}`);
  await page.waitForTimeout(settle);
  await page.screenshot({ path: `docs/pictures/${name}.png` });
  await page.close();
  console.log(`docs/pictures/${name}.png`);
}
await browser.close();
await server.close();
