import { expect, type Page, test } from "@playwright/test";
import { expectAccessible } from "./page.ts";

const begin = async (page: Page) => {
  await page.goto("?setting=kiosk");
  await page.locator(".kiosk-languages button").first().click();
  await page.locator(".kiosk-topics main > ul button").first().click();
  await expect(page.locator(".kiosk-lesson")).toBeVisible();
};

const kept = (page: Page) =>
  page.evaluate(async () => ({
    local: { ...localStorage },
    session: { ...sessionStorage },
    cookies: document.cookie,
    databases: (await indexedDB.databases()).length,
  }));

test("U16 U17 warns for 20 s, any touch keeps the place, and the start keeps nothing of the visit", async ({
  page,
}) => {
  await page.clock.install();
  await begin(page);
  await page.clock.fastForward(61_000);
  const warning = page.getByRole("alertdialog");
  await expect(warning).toContainText(/Back to the start in (1\d|20) seconds/);
  await page.mouse.click(5, 500);
  await expect(warning).toHaveCount(0);
  await expect(page.locator(".kiosk-lesson")).toBeVisible();
  await page.getByRole("button", { name: "Larger words" }).click();
  await page.clock.fastForward(85_000);
  await expect(page.locator(".kiosk-welcome")).toBeVisible();
  await page.locator(".kiosk-languages button").first().click();
  await expect(page.getByRole("button", { name: "Larger words" })).toBeVisible();
  expect(await kept(page)).toEqual({ local: {}, session: {}, cookies: "", databases: 0 });
});

test("U5 U10 every target is at least 60 px, every word 24 px, without violations", async ({ page }) => {
  test.setTimeout(120_000);
  await page.setViewportSize({ width: 1080, height: 1920 });
  const measure = () =>
    page.evaluate(() => ({
      small: [...document.querySelectorAll<HTMLElement>(".kiosk button")]
        .filter((button) => button.offsetParent)
        .map((button) => ({ text: button.textContent, box: button.getBoundingClientRect() }))
        .filter(({ box }) => box.width < 60 || box.height < 60)
        .map(({ text }) => text),
      tiny: [...document.querySelectorAll<HTMLElement>(".kiosk *")]
        .filter(
          (element) => element.offsetParent && element.children.length === 0 && element.textContent?.trim(),
        )
        .filter((element) => Number.parseFloat(getComputedStyle(element).fontSize) < 24)
        .map((element) => element.textContent),
    }));
  await page.goto("?setting=kiosk");
  await expect(page.locator(".kiosk-languages button").first()).toBeVisible();
  expect(await measure()).toEqual({ small: [], tiny: [] });
  await expectAccessible(page);
  await page.locator(".kiosk-languages button").first().click();
  expect(await measure()).toEqual({ small: [], tiny: [] });
  await expectAccessible(page);
  await page.locator(".kiosk-topics main > ul button").first().click();
  await expect(page.locator(".kiosk-lesson")).toBeVisible();
  expect(await measure()).toEqual({ small: [], tiny: [] });
  await expectAccessible(page);
  await page.getByRole("button", { name: "Try it" }).click();
  expect(await measure()).toEqual({ small: [], tiny: [] });
});

test("twenty gestures and keys do not leave the kiosk", async ({ page, context }) => {
  await begin(page);
  const url = () => new URL(page.url()).searchParams.get("setting");
  for (const key of [
    "F1",
    "F3",
    "F5",
    "F6",
    "F11",
    "F12",
    "Alt+ArrowLeft",
    "Alt+ArrowRight",
    "Control+p",
    "Control+s",
    "Control+o",
    "Control+f",
    "Control+r",
    "Control+u",
    "Control+Equal",
    "BrowserBack",
    "Escape",
    "Backspace",
  ])
    await page.keyboard.press(key).catch(() => {});
  await page.mouse.click(300, 300, { button: "right" });
  await page.mouse.dblclick(300, 500);
  await page.evaluate(() => history.back());
  await page.waitForTimeout(500);
  expect(url()).toBe("kiosk");
  expect(context.pages()).toHaveLength(1);
  expect(await page.evaluate(() => getSelection()?.toString())).toBe("");
  expect(await page.locator("a[href]").count()).toBe(0);
  expect(await page.locator("input[type=file]").count()).toBe(0);
  await expect(page.locator(".kiosk-lesson")).toBeVisible();
});

test("a thrown error returns to the start, and the organiser's page tells of it", async ({ page }) => {
  await begin(page);
  await page.evaluate(() => {
    setTimeout(() => {
      throw new Error("made up");
    });
  });
  await expect(page.locator(".kiosk-welcome")).toBeVisible();
  const mark = await page.locator(".kiosk-mark").boundingBox();
  await page.mouse.move(mark!.x + 20, mark!.y + 20);
  await page.mouse.down();
  await page.waitForTimeout(3300);
  await page.mouse.up();
  for (const digit of "2468") await page.getByRole("button", { name: digit, exact: true }).click();
  await expect(page.getByRole("heading", { name: "For the organiser" })).toBeVisible();
  await expect(page.locator(".organiser")).toContainText("made up");
  await expectAccessible(page);
});
