/** A talk with clicker and speaker's window. Long because each way to lose one's place has its case. */
import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, type Page } from "@playwright/test";
import { expectAccessible } from "./page.ts";
import { test } from "./resting-field.ts";

const LESSON = "?mode=lecture&lesson=04-energy-loss&step=1";
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

test("a blank stage hides the pen's lines until the picture is back", async ({ page }) => {
  await page.goto(LESSON.replace("step=1", "step=2"));
  await at(page, 2);
  await page.keyboard.press("d");
  await page.mouse.move(300, 200);
  await page.mouse.down();
  await page.mouse.move(420, 260, { steps: 5 });
  await page.mouse.up();
  const lines = page.locator(".pen-layer");
  await expect(lines).toHaveCSS("opacity", "1");
  await page.keyboard.press("b");
  await expect(lines).toHaveCSS("opacity", "0");
  await page.keyboard.press("b");
  await expect(lines).toHaveCSS("opacity", "1");
});

test("what-if controls beside a question cover neither the picture's numbers nor the place", async ({
  page,
}) => {
  await page.setViewportSize({ width: 1280, height: 720 });
  await page.goto("?mode=lecture&lesson=04-energy-loss&step=narrow-ask");
  await expect(page.locator(".room-words .question")).toBeVisible({ timeout: 60_000 });
  await page.keyboard.press("a");
  const box = async (name: string) => (await page.locator(name).boundingBox())!;
  const panel = await box(".room > .panel");
  for (const name of [".room-figures", ".room-place", ".room > .clear"]) {
    const { x, y, width, height } = await box(name);
    const apart =
      x >= panel.x + panel.width ||
      x + width <= panel.x ||
      y >= panel.y + panel.height ||
      y + height <= panel.y;
    expect(apart, name).toBe(true);
  }
  expect((await box(".room > .clear")).width).toBeGreaterThan(600);
  await page.keyboard.press("Escape");
  await expect(page.locator(".room-words .question")).toBeVisible();
});

test("U13 every key of the table does its part, whatever has the focus, held or pressed at random", async ({
  page,
}) => {
  await page.goto(LESSON.replace("step=1", "step=2"));
  await at(page, 2);
  const blank = page.locator(".room-blank");
  for (const next of ["PageDown", "ArrowRight", "ArrowDown", "Space", "Enter", "n", "N"]) {
    await page.keyboard.press(next);
    await at(page, 3);
    await page.keyboard.press("PageUp");
    await at(page, 2);
  }
  for (const back of ["ArrowLeft", "ArrowUp", "Backspace", "p", "P"]) {
    await page.keyboard.press("PageDown");
    await page.keyboard.press(back);
    await at(page, 2);
  }
  for (const [key, colour] of Object.entries({
    ".": "black",
    b: "black",
    "/": "black",
    ",": "white",
    w: "white",
  })) {
    await page.keyboard.press(key);
    await expect(blank).toHaveClass(`room-blank ${colour}`);
    await page.keyboard.press(key);
    await expect(blank).toHaveClass("room-blank none");
  }
  // A remote knows no focus: it steps from the bar and from a slider; both keep their other keys.
  await page.keyboard.press("a");
  await page.locator(".panel input[type=range]").first().focus();
  await page.keyboard.press("PageDown");
  await at(page, 3);
  await page.locator(".room-bar button").first().focus();
  await page.keyboard.press("PageUp");
  await at(page, 2);
  await page.keyboard.press("Escape");
  await expect(page.locator(".panel")).toHaveCount(0);
  await page.locator("body").click({ position: { x: 500, y: 300 } });
  await page.keyboard.press("?");
  await expect(page.getByRole("dialog")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.locator("dialog")).toHaveCount(0);
  // The browser's own print key is left alone.
  expect(
    await page.evaluate(() => {
      const print = new KeyboardEvent("keydown", {
        key: "p",
        ctrlKey: true,
        bubbles: true,
        cancelable: true,
      });
      return document.body.dispatchEvent(print);
    }),
  ).toBe(true);
  // Held for a second: one press and four repeats at most.
  await page.keyboard.press("Home");
  await at(page, 1);
  const began = Date.now();
  while (Date.now() - began < 1000) await page.keyboard.down("PageDown");
  const seconds = (Date.now() - began) / 1000;
  await page.keyboard.up("PageDown");
  const reached = Number(/Step (\d+)/.exec((await place(page).textContent())!)![1]);
  expect(reached).toBeGreaterThan(2);
  expect(reached - 1).toBeLessThanOrEqual(1 + 4 * seconds);
  // Fifty presses of all sorts, then Home, is as fresh as the start.
  await page.keyboard.press("Home");
  await at(page, 1);
  const words = page.locator(".room-words");
  const first = await words.textContent();
  const keys = [
    "PageDown",
    "PageUp",
    ".",
    "b",
    "w",
    "ArrowRight",
    "ArrowLeft",
    "Space",
    "Enter",
    "End",
    "h",
    "h",
    "r",
    "t",
    "t",
  ];
  for (let press = 0; press < 50; press++)
    await page.keyboard.press(keys[(press * 7 + (press >> 2)) % keys.length]!);
  await page.keyboard.press("r");
  await page.keyboard.press("Home");
  await at(page, 1);
  await expect(words).toHaveText(first!);
  await expect(blank).toHaveClass("room-blank none");
});

test("U13 F5 starts, then continues, and never reloads the page: a remote that sends F5 and Esc in turn does not lose the place", async ({
  page,
}) => {
  await page.goto(LESSON.replace("step=1", "step=3"));
  await at(page, 3);
  await page.evaluate(() => {
    (window as unknown as Record<string, unknown>).same = true;
  });
  await page.keyboard.press("F5");
  await at(page, 1);
  for (const key of ["PageDown", "Escape", "F5", "Escape", "Shift+F5"]) await page.keyboard.press(key);
  await at(page, 2);
  await page.keyboard.press("F5");
  expect(await page.evaluate(() => (window as unknown as Record<string, unknown>).same)).toBe(true);
});

const builds = {
  served: "",
  "one file from disk": pathToFileURL(resolve(process.env.LUNGWARD_DIST ?? "dist", "single/index.html")).href,
};
for (const [build, base] of Object.entries(builds))
  test(`both windows are in step within 100 ms, and again after either is reloaded: ${build}`, async ({
    context,
    page: room,
  }) => {
    test.setTimeout(120_000);
    test.skip(build !== "served" && !existsSync(new URL(base)), "the single file is not built");
    await room.goto(base + LESSON);
    await at(room, 1);
    const opened = context.waitForEvent("page");
    await room.keyboard.press("s");
    const speaker = await opened;
    const reported = speaker.locator(".speaker-head");
    await expect(reported).toContainText("Step 1 of", { timeout: 30_000 });
    // ms from a press in one window to the words of the other, by the one clock that both have
    const lag = async (from: Page, to: Page, where: string, key: string) => {
      await to.evaluate((selector) => {
        const element = document.querySelector(selector)!;
        Object.assign(window, { changed: 0 });
        new MutationObserver((_, self) => {
          Object.assign(window, { changed: Date.now() });
          self.disconnect();
        }).observe(element, { subtree: true, childList: true, characterData: true });
      }, where);
      await from.evaluate(() =>
        addEventListener("keydown", () => Object.assign(window, { pressed: Date.now() }), {
          capture: true,
          once: true,
        }),
      );
      await from.keyboard.press(key);
      await to.waitForFunction(() => (window as unknown as { changed: number }).changed > 0);
      const [pressed, changed] = await Promise.all([
        from.evaluate(() => (window as unknown as { pressed: number }).pressed),
        to.evaluate(() => (window as unknown as { changed: number }).changed),
      ]);
      return changed - pressed;
    };
    const lags: number[] = [];
    for (const key of ["PageDown", "PageUp", "PageDown"]) {
      lags.push(await lag(room, speaker, ".speaker-head p", key));
      lags.push(await lag(speaker, room, ".room-place", key));
    }
    console.log(`${build}: ${lags.join(", ")} ms`);
    // The quickest tells what the line can do; the others what else the machine was doing.
    expect(Math.min(...lags)).toBeLessThan(100);
    await at(room, 3);
    await speaker.reload();
    await expect(reported).toContainText("Step 3 of", { timeout: 30_000 });
    await room.reload();
    await at(room, 3);
    await room.keyboard.press("PageDown");
    await expect(reported).toContainText("Step 4 of");
  });

test("the speaker's window follows, commands, sees the answer first, and recovers when either is reloaded", async ({
  context,
  page: room,
}) => {
  test.setTimeout(120_000);
  await room.goto(LESSON);
  await at(room, 1);
  const opened = context.waitForEvent("page");
  await room.keyboard.press("s");
  const speaker = await opened;
  const reported = speaker.locator(".speaker-head");
  await expect(reported).toContainText("Step 1 of", { timeout: 30_000 });
  // A clicker often drives this window alone: it begins the clock, whatever was pressed or typed in before.
  await expect(reported).toContainText("not begun");
  await speaker.getByRole("textbox").first().click();
  await speaker.keyboard.press("PageDown");
  await expect(reported).toContainText("Step 2 of");
  await expect(reported).not.toContainText("not begun");
  await speaker.getByRole("button", { name: "Pen" }).click();
  await speaker.keyboard.press("Space");
  await at(room, 3);
  await speaker.keyboard.press("2");
  await speaker.keyboard.press("Enter");
  await at(room, 2);
  await room.keyboard.press("PageDown");
  await expect(reported).toContainText("Step 3 of");
  await at(room, 3);
  await expect(speaker.locator("[data-left]")).toBeVisible();
  await expect(speaker.locator(".speaker-notes")).not.toBeEmpty();

  const drop = speaker.locator('[data-figure="pressureDrop"]');
  await expect(drop).not.toHaveAttribute("data-value", "", { timeout: 30_000 });
  const slider = speaker.getByRole("slider").first();
  await slider.focus();
  const before = await room.locator('[data-figure="pressureDrop"]').getAttribute("data-value");
  await speaker.keyboard.press("Home");
  await expect.poll(() => drop.getAttribute("data-value")).not.toBe(before);
  // The room has seen nothing yet.
  expect(await room.locator('[data-figure="pressureDrop"]').getAttribute("data-value")).toBe(before);
  await speaker.getByRole("button", { name: "Send to the stage" }).click();
  await expect(room.locator(".room-words h2")).toHaveText("What if");
  await expect
    .poll(() => room.locator('[data-figure="pressureDrop"]').getAttribute("data-value"))
    .not.toBe(before);
  await room.keyboard.press("r");
  await expect(room.locator(".room-words h2")).not.toHaveText("What if");
  await expect
    .poll(async () => Number(await room.locator('[data-figure="pressureDrop"]').getAttribute("data-value")))
    .toBeCloseTo(Number(before), 2);

  await speaker.reload();
  await expect(reported).toContainText("Step 3 of", { timeout: 30_000 });
  await room.reload();
  await at(room, 3);
  await speaker.getByRole("button", { name: "Next" }).click();
  await at(room, 4);
  await expectAccessible(speaker);
});

test("U14 the script's capitals are 2.5 % of the picture's height, nothing is under 24 px, and answers are styled and large enough for the back row, with the scene above them", async ({
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
  await page.keyboard.press("4");
  await page.keyboard.press("Enter");
  await at(page, 4);
  await expect(page.locator(".answer").first()).toBeVisible();
  const answers = await page.evaluate(() =>
    [...document.querySelectorAll(".room-words :is(legend, .answer span, button)")].map((element) =>
      Number.parseFloat(getComputedStyle(element).fontSize),
    ),
  );
  expect(Math.min(...answers)).toBeGreaterThanOrEqual(24);
  const style = await page
    .locator(".answer")
    .first()
    .evaluate((element) => {
      const { display, borderTopWidth, minHeight } = getComputedStyle(element);
      return { display, borderTopWidth, tall: Number.parseFloat(minHeight) >= 44 };
    });
  expect(style).toEqual({ display: "flex", borderTopWidth: "1px", tall: true });
  const clear = (await page.locator("[data-clear]").boundingBox())!;
  expect(clear.height).toBeGreaterThan(0.45 * 1080);
  await page.locator(".answer").first().click();
  await expectAccessible(page);
});

test("a talk is put together, its time compared, its link opened", async ({ page }) => {
  await page.goto("?mode=lecture");
  await expect(page.getByRole("heading", { name: "Prepare a talk" })).toBeVisible();
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
  await page.getByRole("link", { name: "Begin", exact: true }).click();
  await expect(place(page)).toContainText("Step 1 of 2");
  expect(page.url()).toContain("list=");
});

test("one press starts a whole lesson", async ({ page }) => {
  await page.goto("?mode=lecture");
  await page.getByRole("link", { name: "Begin: Where the push goes" }).click();
  await at(page, 1);
  await expect(page.locator("h1")).toHaveText("Where the push goes");
});

test("the two large numbers follow the step: none of a pathway that is not there", async ({ page }) => {
  const names = () =>
    page
      .locator(".room-figures [data-figure]")
      .evaluateAll((all) => all.map((each) => each.getAttribute("data-figure")));
  await page.goto("?mode=lecture&lesson=01-two-jobs&step=1");
  await expect.poll(names).toEqual(["arterialSaturation", "hepaticVeinPressure"]);
  await page.goto("?mode=lecture&lesson=04-energy-loss&step=1");
  await expect.poll(names).toEqual(["hepaticVeinPressure", "atriumPressure"]);
});

test("the stage and the speaker's window show a question's answers at the same places, also after a reload", async ({
  context,
  page: room,
}) => {
  test.setTimeout(120_000);
  await room.goto("?mode=lecture&lesson=01-two-jobs&step=5");
  const asked = room.locator(".room-words .answer input");
  await expect(asked.first()).toBeVisible({ timeout: 30_000 });
  const ids = () => asked.evaluateAll((inputs) => inputs.map((input) => (input as HTMLInputElement).value));
  const opened = context.waitForEvent("page");
  await room.keyboard.press("s");
  const speaker = await opened;
  const answers = speaker.locator(".speaker-asked [data-choice]");
  await expect(answers.first()).toBeVisible({ timeout: 30_000 });
  const seen = await ids();
  expect(seen.length).toBeGreaterThan(1);
  const reported = () =>
    answers.evaluateAll((items) => items.map((item) => (item as HTMLElement).dataset.choice));
  expect(await reported()).toEqual(seen);
  await room.reload();
  await expect(asked.first()).toBeVisible({ timeout: 30_000 });
  expect(await ids()).toEqual(seen);
  await speaker.reload();
  await expect(answers.first()).toBeVisible({ timeout: 30_000 });
  expect(await reported()).toEqual(seen);
});
