import { readFileSync } from "node:fs";
import { expect, type Page } from "@playwright/test";
import { expectAccessible, watchPage } from "./page.ts";
import { test } from "./resting-field.ts";

const open = async (page: Page, more: string) => {
  await page.goto(`?mode=study${more}`);
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible({ timeout: 30_000 });
};
const next = (page: Page) => page.locator(".lesson-way-on").locator("button, a").last();
const kept = (page: Page) =>
  page.evaluate(() => JSON.parse(localStorage.getItem("lungward.progress") ?? "null"));

test("U24 U26 a learner predicts, watches, reads why, and finds the place again after a reload", async ({
  page,
}) => {
  test.setTimeout(180_000);
  const unfaulted = watchPage(page);
  // A link to the run itself opens its question first.
  await open(page, "&lesson=04-energy-loss&step=narrow");
  await expect(page.locator(".lesson-words h2")).toHaveText(/what will happen/i);
  await expect(next(page)).toHaveAttribute("aria-disabled", "true");
  await page.locator('.answer input[value="same"]').check({ force: true });
  await page.getByRole("button", { name: "This is my prediction" }).click();
  await expect(page.locator(".answer input").first()).toBeDisabled();
  await next(page).click();
  await expect(page.locator(".lesson-words")).toContainText("Watch what happens.");
  await next(page).click();
  const feedback = page.locator(".feedback");
  await expect(feedback).toContainText("You said:");
  await expect(feedback).toContainText("The model does something else.");
  expect(((await feedback.locator("p").last().textContent()) ?? "").split(/\s+/).length).toBeGreaterThan(4);
  await expect(page.locator(".script .live-number").first()).toHaveText(/\d\.\d+.mmHg/);
  // The language changes where one is.
  await page.getByRole("button", { name: "Help" }).click();
  await page.getByRole("radio", { name: "Deutsch" }).check({ force: true });
  await page.getByRole("button", { name: "Schließen" }).click();
  await expect(feedback).toContainText("Das Modell macht etwas anderes.");
  await page.getByRole("button", { name: "Hilfe" }).click();
  await page.getByRole("radio", { name: "English" }).check({ force: true });
  await page.getByRole("button", { name: "Close", exact: true }).click();
  await page.getByLabel("What surprised you?").fill("That it rises below the narrow place.");
  await next(page).click();
  const step = new URL(page.url()).searchParams.get("step");
  await page.reload();
  await expect(page.locator(".lesson-words h2")).toBeVisible();
  expect(new URL(page.url()).searchParams.get("step")).toBe(step);
  expect((await kept(page)).lessons["04-energy-loss"].answers["narrow-ask"]).toMatchObject({
    right: false,
    note: "That it rises below the narrow place.",
  });
  await open(page, "");
  await expect(page.getByRole("link", { name: /^Continue: / })).toBeVisible();
  unfaulted();
});

test("U4 a lesson is taken with keys alone", async ({ page }) => {
  test.setTimeout(120_000);
  await open(page, "&lesson=04-energy-loss");
  await page.keyboard.press("ArrowRight");
  await expect(page.locator(".order")).toBeVisible();
  // Each item moves by its buttons; the order is judged by the model.
  await page
    .getByRole("button", { name: /^Move down: / })
    .first()
    .focus();
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Check" }).focus();
  await page.keyboard.press("Enter");
  await expect(page.locator(".feedback")).toBeVisible();
  await page.keyboard.press("ArrowRight");
  await expect(page.locator(".lesson-words h2")).toBeFocused();
});

test("a goal is judged by the model at the control's present value", async ({ page }) => {
  test.setTimeout(120_000);
  const goal = readFileSync("lessons/en/06-fenestration.md", "utf8")
    .split(/^## /m)
    .find((step) => /kind: goal/.test(step))!;
  const id = /\{#([^}]+)\}/.exec(goal)![1]!;
  await open(page, `&lesson=06-fenestration&step=${id}`);
  await expect(page.locator(".goal")).toBeVisible();
  await page.getByRole("button", { name: "This is my answer" }).click();
  await expect(page.locator(".feedback.differs")).toBeVisible();
});

test("U10 the list of lessons, a lesson, its text and the glossary have no violations; nothing scrolls sideways at 320 px", async ({
  page,
}) => {
  test.setTimeout(180_000);
  for (const more of [
    "",
    "&lesson=04-energy-loss&step=where-high",
    "&lesson=04-energy-loss&view=text",
    "&page=glossary",
  ]) {
    await page.setViewportSize({ width: 1280, height: 720 });
    await open(page, more);
    await page.waitForTimeout(500);
    await expectAccessible(page);
    await page.setViewportSize({ width: 320, height: 700 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
  }
});

test("the record is saved with name and cautions, progress goes to a file and back, and all is erased from the start page", async ({
  page,
}) => {
  await open(page, "&lesson=01-two-jobs");
  await open(page, "");
  await page.getByLabel("Name").fill("Case N");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save to hand in" }).click(),
  ]);
  const record = readFileSync((await download.path())!, "utf8");
  // U29: six cautions
  expect(record.match(/<li>/g)!.length).toBeGreaterThanOrEqual(6);
  expect(record).toContain("invented");
  expect(record).toContain("Case N");
  const [progress] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save to continue elsewhere" }).click(),
  ]);
  expect(await kept(page)).not.toBeNull();
  await page.getByRole("button", { name: "Erase", exact: true }).click();
  await page.getByRole("button", { name: "Erase it" }).click();
  expect(await kept(page)).toBeNull();
  await page.getByLabel("Add from a file").setInputFiles((await progress.path())!);
  await page.getByRole("button", { name: "Add it" }).click();
  expect(Object.keys((await kept(page)).lessons)).toEqual(["01-two-jobs"]);
  await page.goto("?");
  await page.getByRole("button", { name: "Erase everything on this computer" }).click();
  await expect(page.getByRole("alertdialog")).toContainText("The learner’s record");
  await page.getByRole("button", { name: "Erase all of it" }).click();
  await expect(page.getByRole("alertdialog")).toContainText("Everything is erased.");
  await page.getByRole("button", { name: "Start again" }).click();
  expect(await page.evaluate(() => localStorage.length)).toBe(0);
});

test("U18 within a course system the lesson resumes in the right step, and the device keeps nothing", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await page.addInitScript({ path: "node_modules/scorm-again/dist/scorm12.js" });
  await page.addInitScript(() => {
    const scope = window as unknown as Record<string, unknown>;
    const { Scorm12API } = scope as {
      Scorm12API: new (settings: object) => { loadFromFlattenedJSON(json: object, at: string): void };
    };
    const api = new Scorm12API({ autocommit: false });
    const suspended = sessionStorage.getItem("double");
    if (suspended)
      api.loadFromFlattenedJSON(
        { "cmi.suspend_data": suspended, "cmi.core.lesson_status": "incomplete" },
        "",
      );
    scope.API = api;
  });
  await open(page, "&lesson=02-steps");
  const title = (await page.locator(".lesson-words h2").textContent()) ?? "";
  await next(page).click();
  await expect(page.locator(".lesson-words h2")).not.toHaveText(title);
  const second = (await page.locator(".lesson-words h2").textContent()) ?? "";
  const reported = await page.evaluate(() => {
    const { cmi } = (
      window as unknown as { API: { cmi: { suspend_data: string; core: Record<string, string> } } }
    ).API;
    sessionStorage.setItem("double", cmi.suspend_data);
    return {
      length: cmi.suspend_data.length,
      status: cmi.core.lesson_status,
      place: cmi.core.lesson_location,
    };
  });
  expect(reported).toMatchObject({ status: "incomplete", place: expect.stringMatching(/^02-steps#/) });
  expect(reported.length).toBeLessThanOrEqual(4096);
  expect(await kept(page)).toBeNull();
  await open(page, "");
  await page.getByRole("link", { name: /^Continue: / }).click();
  await expect(page.locator(".lesson-words h2")).toHaveText(second);
});
