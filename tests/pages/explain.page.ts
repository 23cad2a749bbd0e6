/** Explained by change: what was before, the scenes at a glance, handles that say what they are. */
import { expect, type Page, test } from "@playwright/test";
import { expectAccessible, figure, watchPage } from "./page.ts";
import { test as resting } from "./resting-field.ts";

/** The hints of a first visit would lie over what is pressed here. */
const seen = (page: Page) => page.addInitScript(() => localStorage.setItem("lungward.cueSeen", "true"));

const open = async (page: Page, query = "?mode=bench") => {
  await page.goto(query);
  await figure(page, "pressureDrop");
};

test.setTimeout(120_000);

resting("a change leaves what each number was, until a press ends the comparison", async ({ page }) => {
  await seen(page);
  const sound = watchPage(page);
  await open(page);
  const changes = page.locator(".side [data-change]");
  await expect(changes).toHaveCount(0);
  const before = await figure(page, "pressureDrop");
  const grip = page.getByRole("slider", { name: "Conduit diameter" });
  await expect(grip).toBeVisible({ timeout: 30_000 });
  await grip.focus();
  await page.keyboard.press("PageDown");
  await expect(changes).toHaveCount(5, { timeout: 30_000 });
  const drop = page.locator(".readout", { hasText: "Pressure drop along" });
  await expect(drop.locator("[data-change]")).toContainText(`${before.toFixed(2)} →`);
  await expectAccessible(page);
  await page.getByRole("button", { name: "Hide" }).click();
  await expect(changes).toHaveCount(0);
  await grip.focus();
  await page.keyboard.press("ArrowUp");
  await expect(changes).toHaveCount(5, { timeout: 30_000 });
  // A press on the picture, away from any handle.
  await page.mouse.click(300, 600);
  await expect(changes).toHaveCount(0);
  sound();
});

resting("scenes stand in a bar as pictures, chosen by arrows or a press", async ({ page }) => {
  await seen(page);
  const sound = watchPage(page);
  await open(page);
  const bar = page.getByRole("group", { name: "Scene" });
  await expect(bar.getByRole("radio")).toHaveCount(7);
  await expect(bar.locator("img")).toHaveCount(7, { timeout: 40_000 });
  // The strip is that of the pathway on the stage, and holds a picture for each scene.
  const shapes = () =>
    bar
      .locator("img")
      .evaluateAll((all: HTMLImageElement[]) => all.map((each) => each.naturalHeight / each.naturalWidth));
  await expect.poll(shapes).toEqual(Array(7).fill((7 * 108) / 192));
  await expect(bar.locator("img").first()).toHaveAttribute("src", /extracardiac-/);
  await bar.getByRole("radio", { name: "Pathway" }).focus();
  await page.keyboard.press("ArrowDown");
  await expect(bar.getByRole("radio", { name: "Whole circulation" })).toBeChecked();
  await expect(page.locator("#scene-reading")).toContainText("Whole circulation", { timeout: 30_000 });
  await bar.getByRole("radio", { name: "Breathing" }).click();
  await expect(bar.getByRole("radio", { name: "Breathing" })).toBeChecked();
  sound();
});

resting("a handle tells its name and value while it is pointed at or has the focus", async ({ page }) => {
  await seen(page);
  await open(page);
  const handle = page.locator(".handle", { hasText: "Conduit diameter" });
  const tag = handle.locator(".handle-tag");
  await expect(handle.getByRole("slider")).toBeVisible({ timeout: 30_000 });
  await expect(tag).toHaveCSS("visibility", "hidden");
  await handle.getByRole("slider").hover();
  await expect(tag).toHaveCSS("visibility", "visible");
  await expect(tag).toContainText("18.0");
  await page.mouse.move(5, 5);
  await expect(tag).toHaveCSS("visibility", "hidden");
  await handle.getByRole("slider").focus();
  await expect(tag).toHaveCSS("visibility", "visible");
});

resting("a link with a state of its own decides about handles", async ({ page }) => {
  await open(page, "?mode=bench&state=1");
  await expect(page.locator(".handle")).toHaveCount(0);
});

test("the probe reads speed, origins and pressure where its cross stands, moved by pointer and arrows", async ({
  page,
}) => {
  await seen(page);
  const sound = watchPage(page);
  await open(page);
  await page.getByRole("button", { name: "Probe" }).click();
  const tag = page.locator(".probe-tag");
  await expect(tag).toContainText("m/s", { timeout: 60_000 });
  await expect(tag).toContainText("mmHg in the circulation");
  await expectAccessible(page);
  const cross = page.getByRole("application");
  await expect(cross).toBeFocused();
  const place = () => cross.evaluate((element) => (element as HTMLElement).style.translate);
  const before = await place();
  await page.keyboard.press("ArrowUp");
  await expect.poll(place).not.toBe(before);
  await expect(page.locator("[role=status][aria-atomic]")).toContainText("metres a second");
  // Where there is no blood the cross stays.
  const stayed = await place();
  await page.mouse.move(250, 560);
  await page.waitForTimeout(600);
  expect(await place()).toBe(stayed);
  await page.keyboard.press("p");
  await expect(tag).toHaveCount(0);
  sound();
});

resting("any moment of beat and breath can be held, by keys, and let go again", async ({ page }) => {
  await seen(page);
  const sound = watchPage(page);
  await page.emulateMedia({ reducedMotion: "no-preference" });
  await open(page);
  await page.getByRole("button", { name: "Beat and breath" }).click();
  const strip = page.getByRole("region", { name: "One cycle of beat and breath" });
  await expect(strip).toContainText("ECG, schematic");
  const scrubber = strip.getByRole("slider");
  await scrubber.focus();
  await page.keyboard.press("Home");
  await expect(scrubber).toHaveAttribute("aria-valuetext", /^0\.0 seconds of .*, beat 1 of/);
  await page.keyboard.press("PageUp");
  const held = await scrubber.inputValue();
  expect(Number(held)).toBeGreaterThan(0);
  await page.waitForTimeout(700);
  expect(await scrubber.inputValue()).toBe(held);
  await expectAccessible(page);
  await page.locator("[data-item=pause]").click();
  await expect.poll(() => scrubber.inputValue(), { timeout: 20_000 }).not.toBe(held);
  await strip.getByRole("radio", { name: "0.1 ×" }).click();
  await expect(strip.getByRole("radio", { name: "0.1 ×" })).toBeChecked();
  sound();
});

resting("three hints greet a first visit, once", async ({ page }) => {
  await open(page);
  const hints = page.getByRole("complementary", { name: "First steps" });
  await expect(hints).toContainText("Drag this wall", { timeout: 30_000 });
  await expectAccessible(page);
  await hints.getByRole("button", { name: "Next" }).click();
  await hints.getByRole("button", { name: "Next" }).click();
  await hints.getByRole("button", { name: "Done" }).click();
  await expect(hints).toHaveCount(0);
  await page.goto("?mode=bench");
  await figure(page, "pressureDrop");
  await expect(page.locator(".handle-grip").first()).toBeVisible({ timeout: 30_000 });
  await expect(hints).toHaveCount(0);
});

test("two pathways lie in one body with a divider between them, moved by pointer and keys and kept in the address", async ({
  page,
}) => {
  await page.goto("?mode=bench&state=1~wlt~fg");
  await page.getByRole("button", { name: "Compare" }).click();
  await page.getByText("One over the other").click();
  const divider = page.getByRole("slider", { name: "Divider between the two pathways" });
  await expect(divider).toHaveAttribute("aria-valuenow", "50");
  await expect(divider).toBeVisible();
  await divider.press("ArrowRight");
  await expect(divider).toHaveAttribute("aria-valuetext", /Extracardiac on the left 52.*right 48/);
  const place = async () => (await divider.boundingBox())!.x;
  const middle = await place();
  await divider.press("Home");
  await expect(divider).toHaveAttribute("aria-valuenow", "0");
  // It follows with the next drawing.
  await expect.poll(place).toBeLessThan(middle - 100);
  await divider.press("End");
  await expect.poll(place).toBeGreaterThan(middle + 100);
  const box = (await divider.boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x - 150, box.y + box.height / 2, { steps: 3 });
  await page.mouse.up();
  const value = Number(await divider.getAttribute("aria-valuenow"));
  expect(value).toBeGreaterThan(10);
  expect(value).toBeLessThan(90);
  await expect.poll(place).toBeLessThan(box.x - 100);
  await expect(page).toHaveURL(new RegExp(`~d${value}(~|$)`));
  await page.reload();
  await expect(divider).toHaveAttribute("aria-valuenow", `${value}`, { timeout: 20_000 });
});
