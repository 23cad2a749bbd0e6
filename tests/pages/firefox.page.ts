/** A smoke test of both builds in Firefox, by the standard WebDriver BiDi; reported as skipped where there is no Firefox. */
import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "@playwright/test";
import puppeteer, { type Browser, type Page } from "puppeteer-core";

const FIREFOX =
  process.env.LUNGWARD_FIREFOX ??
  ["/usr/bin/firefox-esr", "/usr/bin/firefox"].find((program) => existsSync(program));
const SINGLE = resolve(process.env.LUNGWARD_DIST ?? "dist", "single/index.html");
/** ms; a machine without graphics hardware draws slowly */
const PATIENCE = 60_000;

test.setTimeout(240_000);
test.skip(!FIREFOX, "no Firefox here: install firefox-esr, or set LUNGWARD_FIREFOX to one");

let browser: Browser;
test.beforeAll(async () => {
  browser = await puppeteer.launch({
    browser: "firefox",
    ...(FIREFOX && { executablePath: FIREFOX }),
    headless: true,
  });
});
test.afterAll(() => browser?.close());

/** A page of its own that collects what it throws. */
async function open(address: string): Promise<{ readonly page: Page; readonly errors: string[] }> {
  const page = await browser.newPage();
  await page.setViewport({ width: 1000, height: 640 });
  page.setDefaultTimeout(PATIENCE);
  const errors: string[] = [];
  page.on("pageerror", (error) => errors.push(String(error)));
  await page.goto(address, { waitUntil: "domcontentloaded" });
  return { page, errors };
}

const textOf = (page: Page, selector: string) =>
  page.$eval(selector, (element) => element.textContent?.replace(/\s+/g, " ").trim() ?? "");
const says = (page: Page, selector: string, words: string) =>
  page.waitForFunction(
    (where, what) => document.querySelector(where)?.textContent?.includes(what),
    // A window behind another draws no frames: it is asked by the clock.
    { polling: 200 },
    selector,
    words,
  );

for (const [build, address] of [
  ["the served folder", (baseURL: string) => baseURL],
  ["the single file opened from disk", () => pathToFileURL(SINGLE).href],
] as const) {
  test(`Firefox, ${build}: the bench flows and answers, a lesson continues, the kiosk opens, both windows of a lecture stay in step`, async ({
    baseURL,
  }) => {
    const base = address(baseURL!);
    const bench = await open(`${base}?mode=bench`);
    const drop = ".side [data-figure='pressureDrop']";
    const known = async () => {
      await bench.page.waitForSelector(`${drop}:not([data-value=""])`);
      return Number(await bench.page.$eval(drop, (element) => element.getAttribute("data-value")));
    };
    const before = await known();
    expect(before).toBeGreaterThan(0);
    await bench.page.waitForSelector("#stage canvas");
    // Blood moves only once the worker and its kernel have answered with a flow.
    const picture = () =>
      bench.page.screenshot({ encoding: "base64", clip: { x: 300, y: 60, width: 400, height: 400 } });
    const first = await picture();
    await expect.poll(async () => (await picture()) !== first, { timeout: PATIENCE }).toBe(true);
    // No step down the ladder was needed.
    expect(await bench.page.$$(":is(.notes, .page-notes) .note")).toHaveLength(0);
    await bench.page.$$eval("input[type=radio]", (inputs) => {
      inputs.find((input) => (input as HTMLInputElement).value === "atriopulmonary")?.click();
    });
    await expect.poll(known, { timeout: PATIENCE }).not.toBe(before);
    expect(bench.errors).toEqual([]);
    await bench.page.close();

    const study = await open(`${base}?mode=study&lesson=02-steps`);
    await study.page.waitForSelector(".lesson-words h2");
    const title = await textOf(study.page, ".lesson-words h2");
    await study.page.keyboard.press("ArrowRight");
    await study.page.waitForFunction(
      (old) => document.querySelector(".lesson-words h2")?.textContent?.trim() !== old,
      {},
      title,
    );
    expect(study.errors).toEqual([]);
    await study.page.close();

    const kiosk = await open(`${base}?mode=kiosk`);
    await kiosk.page.waitForSelector(".kiosk-languages button");
    await kiosk.page.click(".kiosk-languages button");
    await kiosk.page.waitForSelector(".kiosk-topics main > ul button");
    expect(kiosk.errors).toEqual([]);
    await kiosk.page.close();

    const room = await open(`${base}?mode=lecture&lesson=04-energy-loss&step=1`);
    await says(room.page, ".room-place", "1");
    const id = await room.page.evaluate(
      () => JSON.parse(sessionStorage.getItem("lungward.lecture.room") ?? "null") as string | null,
    );
    const speaker = await open(`${base}?mode=lecture&window=speaker&room=${id}`);
    await says(speaker.page, ".speaker-head", "1");
    await speaker.page.waitForSelector(".speaker-form input");
    // Nothing of it is to be scrolled to: no bar takes a part of its width.
    expect(await speaker.page.evaluate(() => innerWidth - document.documentElement.clientWidth)).toBe(0);
    await speaker.page.keyboard.press("PageDown");
    await says(room.page, ".room-place", "2");
    await says(speaker.page, ".speaker-head", "2");
    expect([...room.errors, ...speaker.errors]).toEqual([]);
    await room.page.close();
    await speaker.page.close();
  });
}
