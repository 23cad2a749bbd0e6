/** The page's languages: one is fetched when it is asked for, and no text of another one is shown before. */
import { expect, type Page } from "@playwright/test";
import { test } from "./resting-field.ts";

/** Names of the message files that the page has asked for. */
function messagesAsked(page: Page): readonly string[] {
  const asked: string[] = [];
  page.on("request", (request) => {
    const [, tag] = /\/words-(\w+)-/.exec(request.url()) ?? [];
    if (tag) asked.push(tag);
  });
  return asked;
}

const heading = (page: Page) => page.locator("h1").first();
const link = (page: Page, tag: string) => page.locator(`.languages [hreflang="${tag}"]`);

test("English needs no further file, another language its own alone", async ({ page }) => {
  const asked = messagesAsked(page);
  await page.goto("?language=en");
  const english = await heading(page).textContent();
  expect(asked).toEqual([]);
  await link(page, "de").click();
  await expect(heading(page)).not.toHaveText(english!);
  await expect(page.locator("html")).toHaveAttribute("lang", "de");
  await link(page, "en").click();
  await expect(heading(page)).toHaveText(english!);
  expect(asked).toEqual(["de"]);
});

test("a page opened in French shows no word before its French has come", async ({ page }) => {
  let letCome = () => {};
  const waiting = new Promise<void>((done) => {
    letCome = done;
  });
  await page.route("**/words-fr-*", async (route) => {
    await waiting;
    await route.continue();
  });
  const mode = page.waitForResponse(/\/first-/);
  await page.goto("?language=fr");
  await (await mode).finished();
  await page.waitForTimeout(500);
  await expect(page.locator("body")).toHaveText("", { useInnerText: true });
  // The picture's words are drawn: none of them before there is a picture.
  await expect(page.locator("#stage canvas")).toHaveCount(0);
  expect(await page.title()).toBe("Lungward");
  letCome();
  await expect(page.locator("html")).toHaveAttribute("lang", "fr");
  await expect(heading(page)).toBeVisible();
  await expect(page.locator("[aria-current=true][hreflang=fr]")).toBeVisible();
});

test("a language that cannot be fetched leaves the page in English and says so", async ({ page }) => {
  await page.route("**/words-es-*", (route) => route.abort());
  await page.goto("?language=es");
  await expect(page.locator("html")).toHaveAttribute("lang", "en");
  await expect(heading(page)).toBeVisible();
  await expect(page.locator(".page-notes")).toContainText(/Español.*English/);
  await link(page, "de").click();
  await expect(page.locator("html")).toHaveAttribute("lang", "de");
  await expect(page.locator(".page-notes")).toHaveText("");
});

test("the kiosk greets in every language at once", async ({ page }) => {
  const asked = messagesAsked(page);
  await page.goto("?mode=kiosk");
  const words = page.locator(".kiosk-languages button span");
  await expect(words).toHaveCount(4);
  expect(new Set(await words.allTextContents()).size).toBe(4);
  expect([...asked].sort()).toEqual(["de", "es", "fr"]);
});

test("on a phone the kit's name keeps its room beside the longest words for play and dye", async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  for (const tag of ["de", "es", "fr"]) {
    await page.goto(`?mode=bench&language=${tag}`);
    const word = page.locator(".top .wordmark");
    await expect(page.locator('[data-item="dye"]')).toBeVisible({ timeout: 60_000 });
    const right = await word.evaluate((element) => {
      const range = document.createRange();
      range.selectNodeContents(element);
      return range.getBoundingClientRect().right;
    });
    expect((await page.locator(".transport button").first().boundingBox())!.x, tag).toBeGreaterThanOrEqual(
      right,
    );
  }
});
