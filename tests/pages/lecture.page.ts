import { readFileSync } from "node:fs";
import { expect, type Page, test } from "@playwright/test";
import { unzipSync } from "fflate";
import { expectAccessible } from "./page.ts";

const LESSON = "?setting=lecture&lesson=04-energy-loss&step=1";
const place = (page: Page) => page.locator(".room-place");
const at = (page: Page, step: number) => expect(place(page)).toContainText(`Step ${step} of`);

test("U13 a clicker's keys step, blank and return, and none loses the place", async ({ page }) => {
  await page.goto(LESSON);
  await at(page, 1);
  await page.keyboard.press("PageDown");
  await at(page, 2);
  await page.keyboard.press("PageDown");
  await page.keyboard.press("PageUp");
  await at(page, 2);
  for (const key of [".", "b"]) {
    await page.keyboard.press(key);
    await expect(page.locator(".room-blank")).toHaveClass(/black/);
    await page.keyboard.press("PageDown");
    await expect(page.locator(".room-blank")).toHaveClass(/none/);
    await at(page, 2);
  }
  await page.keyboard.press("w");
  await expect(page.locator(".room-blank")).toHaveClass(/white/);
  await page.keyboard.press("w");
  await page.keyboard.press("End");
  await page.keyboard.press("Home");
  await at(page, 1);
  await page.keyboard.press("3");
  await page.keyboard.press("Enter");
  await at(page, 3);
  await page.keyboard.press("Escape");
  await at(page, 3);
  await page.reload();
  await at(page, 3);
});

test("U13 F5 never loads the page anew", async ({ page }) => {
  await page.goto(LESSON);
  await at(page, 1);
  await page.evaluate(() => {
    (window as unknown as Record<string, unknown>).same = true;
  });
  await page.keyboard.press("Shift+F5");
  await page.keyboard.press("F5");
  expect(await page.evaluate(() => (window as unknown as Record<string, unknown>).same)).toBe(true);
});

test("the speaker's window follows, commands, sees the answer first, and recovers when either is loaded anew", async ({
  context,
}) => {
  test.setTimeout(120_000);
  const room = await context.newPage();
  await room.goto(LESSON);
  await at(room, 1);
  const opened = context.waitForEvent("page");
  await room.keyboard.press("s");
  const speaker = await opened;
  const told = speaker.locator(".speaker-head");
  await expect(told).toContainText("Step 1 of", { timeout: 30_000 });
  await room.keyboard.press("PageDown");
  await expect(told).toContainText("Step 2 of");
  await speaker.keyboard.press("PageDown");
  await at(room, 3);
  await expect(speaker.locator("[data-left]")).toBeVisible();
  await expect(speaker.locator(".speaker-notes")).not.toBeEmpty();

  const drop = speaker.locator('[data-figure="pressureDrop.handbook"]');
  await expect(drop).not.toHaveAttribute("data-value", "", { timeout: 30_000 });
  const slider = speaker.getByRole("slider").first();
  await slider.focus();
  const before = await room.locator('[data-figure="pressureDrop.handbook"]').getAttribute("data-value");
  await speaker.keyboard.press("Home");
  await expect.poll(() => drop.getAttribute("data-value")).not.toBe(before);
  // The room has seen nothing yet.
  expect(await room.locator('[data-figure="pressureDrop.handbook"]').getAttribute("data-value")).toBe(before);
  await speaker.getByRole("button", { name: "Send to the stage" }).click();
  await expect(room.locator(".room-words h2")).toHaveText("What if");
  await expect
    .poll(() => room.locator('[data-figure="pressureDrop.handbook"]').getAttribute("data-value"))
    .not.toBe(before);
  await room.keyboard.press("r");
  await expect(room.locator(".room-words h2")).not.toHaveText("What if");
  await expect
    .poll(async () =>
      Number(await room.locator('[data-figure="pressureDrop.handbook"]').getAttribute("data-value")),
    )
    .toBeCloseTo(Number(before), 2);

  await speaker.reload();
  await expect(told).toContainText("Step 3 of", { timeout: 30_000 });
  await room.reload();
  await at(room, 3);
  await speaker.getByRole("button", { name: "Next" }).click();
  await at(room, 4);
  await expectAccessible(speaker);
});

test("U14 the script's capitals are 2.5 % of the picture's height and nothing is under 24 px", async ({
  page,
}) => {
  await page.setViewportSize({ width: 1920, height: 1080 });
  await page.goto(LESSON);
  await at(page, 1);
  await page.keyboard.press("PageDown");
  const sizes = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>(".room-words *, .room-figures *, .room-place")]
      .filter(
        (element) => element.textContent?.trim() && element.children.length === 0 && element.offsetParent,
      )
      .map((element) => ({
        text: element.textContent,
        size: Number.parseFloat(getComputedStyle(element).fontSize),
      })),
  );
  expect(sizes.filter(({ size }) => size < 24)).toEqual([]);
  const script = await page.evaluate(() =>
    Number.parseFloat(
      getComputedStyle(
        document.querySelector(
          ".room-words .script, .room-words legend, .room-words .order > p, .room-words label",
        )!,
      ).fontSize,
    ),
  );
  // Capitals of the face are 0.67 of its size.
  expect((script * 0.67) / 1080).toBeGreaterThanOrEqual(0.025);
});

test("a talk is put together, its time compared, its link opened", async ({ page }) => {
  await page.goto("?setting=lecture");
  await expect(page.getByRole("heading", { name: "Put a talk together" })).toBeVisible();
  await page.locator("summary").first().click();
  await page
    .getByRole("button", { name: /^Add the step/ })
    .nth(1)
    .click();
  await page
    .getByRole("button", { name: /^Add the step/ })
    .nth(0)
    .click();
  await expect(page.locator(".builder-list ol li")).toHaveCount(2);
  await page
    .getByRole("button", { name: /^Later/ })
    .first()
    .click();
  await expect(page.locator("[data-needs]")).toContainText("minutes");
  await expectAccessible(page);
  await page.getByRole("link", { name: "Begin" }).click();
  await expect(place(page)).toContainText("Step 1 of 2");
  expect(page.url()).toContain("list=");
});

test("pictures of all steps of a talk come in one ZIP", async ({ page }) => {
  test.setTimeout(180_000);
  await page.goto("?setting=lecture");
  await page.locator("summary").first().click();
  while ((await page.locator(".builder-list ol li").count()) < 2)
    await page
      .getByRole("button", { name: /^Add the step/ })
      .first()
      .click();
  const coming = page.waitForEvent("download", { timeout: 150_000 });
  await page.locator("[data-item=stills]").click();
  const files = unzipSync(readFileSync((await (await coming).path())!));
  const names = Object.keys(files);
  expect(names.length).toBeGreaterThanOrEqual(2);
  for (const name of names) {
    expect(name).toMatch(/^\d{3}-[\w-]+\.png$/);
    expect(Buffer.from(files[name]!.subarray(1, 4)).toString()).toBe("PNG");
  }
});
