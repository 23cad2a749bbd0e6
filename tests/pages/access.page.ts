/** What the other page tests do not walk for WCAG 2.2: a lesson by keys, larger text, reflow, forced colours, light theme, other languages. */
import { expect, type Page } from "@playwright/test";
import { expectAccessible, openScreen, SCREENS } from "./page.ts";
import { test } from "./resting-field.ts";

test.setTimeout(240_000);

const open = (page: Page, name: string, more = "") => openScreen(page, SCREENS[name]!, more);
const sideways = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

test("2.1.1 2.1.2 2.4.7 a lesson from the list through its steps by keys alone, with a focus ring", async ({
  page,
}) => {
  await page.goto("?mode=study");
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible({ timeout: 60_000 });
  const tabTo = async (selector: string) => {
    for (let presses = 0; presses < 80; presses++) {
      await page.keyboard.press("Tab");
      if (await page.evaluate((wanted) => document.activeElement?.matches(wanted), selector)) return;
    }
    throw new Error(`80 presses of Tab do not reach ${selector}`);
  };
  await tabTo("a[href*='lesson=02-steps']");
  await page.keyboard.press("Enter");
  await expect(page.locator(".lesson-words h2")).toBeVisible({ timeout: 60_000 });
  const titles = new Set<string>();
  for (let step = 0; step < 40; step++) {
    const on = page.locator(".lesson-way-on").locator("button, a").last();
    if ((await on.count()) === 0) break;
    titles.add((await page.locator(".lesson-words h2").first().textContent()) ?? "");
    if ((await on.getAttribute("aria-disabled")) === "true") {
      await tabTo(".answer input, .order button, .goal button");
      await page.keyboard.press("Space");
      await tabTo(".question button.main, .lesson-words button.main, .lesson-words form button");
      await page.keyboard.press("Enter");
      await expect(on).not.toHaveAttribute("aria-disabled", "true");
    }
    const place = async () => page.url() + (await page.locator(".lesson-words").textContent());
    const before = await place();
    await page.keyboard.press("ArrowRight");
    const moved = await expect
      .poll(place, { timeout: 400 })
      .not.toBe(before)
      .then(
        () => true,
        () => false,
      );
    if (!moved) {
      await tabTo(".lesson-way-on button, .lesson-way-on a");
      const seen = await page.evaluate(() => {
        const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(document.activeElement!);
        return (outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2) || boxShadow !== "none";
      });
      expect(seen).toBe(true);
      await page.keyboard.press("Enter");
    }
  }
  expect(titles.size).toBeGreaterThan(4);
});

/** Texts that wider spacing of lines, letters and words would cut. */
const cutBySpacing = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>("button, a, h1, h2, p, label")]
      .filter(
        (element) =>
          element.offsetParent &&
          !element.closest(".unseen") &&
          getComputedStyle(element).overflow !== "visible" &&
          element.scrollWidth > element.clientWidth + 2,
      )
      .map((element) => element.textContent),
  );

test("1.4.4 1.4.10 1.4.12 text of twice the size, wider spacing and a 320 px window cut and hide nothing, and scroll nothing sideways", async ({
  page,
}) => {
  for (const name of Object.keys(SCREENS)) {
    await page.setViewportSize({ width: 320, height: 640 });
    await open(page, name);
    expect(await sideways(page), `${name} at 320 px`).toBeLessThanOrEqual(0);
    await page.setViewportSize({ width: 1280, height: 900 });
    const larger = await page.addStyleTag({ content: "html { font-size: 200% !important; }" });
    await page.waitForTimeout(300);
    expect(await sideways(page), `${name} at 200 % text`).toBeLessThanOrEqual(0);
    if (!["home", "bench", "study"].includes(name)) continue;
    await larger.evaluate((style) => (style as HTMLElement).remove());
    await page.setViewportSize({ width: 1280, height: 720 });
    await page.addStyleTag({
      content:
        "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; } p { margin-bottom: 2em !important; }",
    });
    await page.waitForTimeout(300);
    expect(await cutBySpacing(page), `${name} spaced`).toEqual([]);
  }
});

test("U10 each setting in forced colours, in the light theme, and from right to left is without violations", async ({
  page,
}) => {
  for (const name of Object.keys(SCREENS)) {
    await page.emulateMedia({ forcedColors: "active", reducedMotion: "reduce" });
    await open(page, name);
    // Contrast is the reader's own there: the browser lays a plate behind each word, of which axe knows nothing.
    await expectAccessible(page, ["color-contrast"]);
    await page.emulateMedia({ forcedColors: "none", reducedMotion: "reduce" });
    await page.evaluate(() => localStorage.setItem("lungward.theme", '"light"'));
    await open(page, name, "&language=ar-XB");
    await expect(page.locator("html")).toHaveAttribute("dir", "rtl");
    await expect(page.locator("html")).toHaveAttribute("data-theme", "light");
    await expectAccessible(page);
    await page.evaluate(() => localStorage.clear());
  }
});
