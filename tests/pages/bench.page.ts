import { expect, test as flowing, type Page } from "@playwright/test";
import { DARK } from "../../src/scenes/theme/colour.ts";
import { countColours } from "../scenes/pixels.ts";
import { expectAccessible, figure, watchPage } from "./page.ts";
import { test } from "./resting-field.ts";

const open = async (page: Page, query = "?mode=bench") => {
  await page.goto(query);
  await figure(page, "pressureDrop");
};
const bar = (page: Page, name: string) => page.locator(`.toolbar [data-item=${name}]`);

test("U4 a control is moved by keys alone, the numbers answer, undo takes it back", async ({ page }) => {
  const sound = watchPage(page);
  await open(page);
  const before = await figure(page, "pressureDrop");
  await page.keyboard.press("a");
  const track = page.locator(".panel").getByRole("slider", { name: "Conduit diameter" });
  await track.focus();
  await page.keyboard.press("Home");
  await expect(track).toHaveAttribute("aria-valuetext", "8.0 millimetres");
  await expect.poll(() => figure(page, "pressureDrop")).toBeGreaterThan(before);
  await expect(page.locator("[role=status][aria-atomic]")).toContainText("Pressure drop along the pathway");
  await page.keyboard.press("Control+z");
  await expect(track).toHaveAttribute("aria-valuetext", "18.0 millimetres");
  await expect.poll(() => figure(page, "pressureDrop")).toBeCloseTo(before, 3);
  sound();
});

test("a typical adult stands with higher pressure than a well one, and what is held says its number", async ({
  page,
}) => {
  await open(page);
  await bar(page, "adjust").click();
  const choose = (name: string) => page.getByRole("radio", { name, exact: true }).check({ force: true });
  await choose("Well");
  await expect(page.locator(".held")).toContainText("7.6");
  const well = await figure(page, "pathwayPressure");
  await choose("Typical");
  await expect(page.locator(".held")).toContainText("13.0");
  await expect.poll(() => figure(page, "pathwayPressure")).toBeGreaterThan(well + 2);
  await expect(page.locator(".panel")).toContainText("a stiffer ventricle");
  await expectAccessible(page);
});

test("every control has its number beside it, which takes a decimal comma", async ({ page }) => {
  await open(page);
  await bar(page, "adjust").click();
  const panel = page.locator(".panel");
  const field = panel.getByRole("textbox", { name: "Fenestration diameter" });
  await field.fill("4,5");
  await field.press("Enter");
  await expect(panel.getByRole("slider", { name: "Fenestration diameter" })).toHaveValue("4.5");
  await field.fill("40");
  await field.press("Enter");
  await expect(page.locator(".field-fault")).toContainText("“40” is not possible here");
  await expectAccessible(page);
});

test("U1 pause is one key and one press away and stays through a change of pathway", async ({ page }) => {
  await page.emulateMedia({ reducedMotion: "no-preference" });
  await open(page);
  await page.keyboard.press("k");
  await expect(page.locator("[data-item=pause]")).toHaveText("Play");
  await page.getByRole("radio", { name: "Lateral tunnel" }).check();
  await figure(page, "pressureDrop");
  await expect(page.locator("[data-item=pause]")).toHaveText("Play");
  await page.locator("[data-item=pause]").click();
  await expect(page.locator("[data-item=pause]")).toHaveText("Pause");
});

test("the bench keeps its state over a reload, a link opens the very state, and a broken one the nearest with a word on what was dropped", async ({
  page,
}) => {
  await open(page);
  await page.getByRole("radio", { name: "Lateral tunnel" }).check();
  await expect.poll(() => page.url()).toContain("state=1~tlt");
  await page.reload();
  await expect(page.getByRole("radio", { name: "Lateral tunnel" })).toBeChecked();
  await bar(page, "take").click();
  const link = await page.locator("[data-link]").inputValue();
  expect(link).toContain("state=1~tlt");
  await page.goto(link);
  await expect(page.getByRole("radio", { name: "Lateral tunnel" })).toBeChecked();
  await page.goto("?mode=bench&state=1~textracardiak~szzz9");
  await expect(page.getByRole("radio", { name: "Extracardiac" })).toBeChecked();
  await expect(page.locator(".page-notes")).toContainText("The nearest valid scene is open");
});

test("U4 a handle in the scene is a slider: moved by keys, by its buttons, and by dragging", async ({
  page,
}) => {
  await open(page, "?mode=bench&state=1~fH");
  const grip = page.getByRole("slider", { name: "Conduit diameter" });
  await expect(grip).toBeVisible({ timeout: 30_000 });
  await grip.focus();
  await page.keyboard.press("ArrowUp");
  await expect(grip).toHaveAttribute("aria-valuenow", "18.5");
  await grip.click();
  await page.getByRole("button", { name: "More: Conduit diameter" }).click();
  await expect(grip).toHaveAttribute("aria-valuenow", "19");
  await page.getByRole("button", { name: "Close" }).click();
  const box = (await grip.boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 25, box.y + box.height / 2, { steps: 5 });
  await page.mouse.move(box.x + box.width / 2 + 40, box.y + box.height / 2, { steps: 5 });
  await page.mouse.up();
  await expect(grip).not.toHaveAttribute("aria-valuenow", "19");
});

test("U10 every panel and dialog of the bench is without violations, in both themes", async ({ page }) => {
  test.setTimeout(180_000);
  await open(page);
  for (const name of ["adjust", "look", "compare", "numbers", "take"]) {
    await bar(page, name).click();
    await expect(page.locator(".panel")).toBeVisible();
    await page.waitForTimeout(500);
    await expectAccessible(page);
    await page.keyboard.press("Escape");
    await expect(bar(page, name)).toBeFocused();
  }
  await page.keyboard.press("t");
  await expectAccessible(page);
  await bar(page, "help").click();
  await expectAccessible(page);
  expect(await page.locator("dialog [data-caution]").count()).toBe(6);
});

test("U27 the key list opens by its sign, and letters can be switched off", async ({ page }) => {
  await open(page);
  await page.keyboard.press("?");
  await expect(page.getByRole("dialog", { name: "Keys" })).toBeVisible();
  await page.getByRole("switch").uncheck();
  await page.keyboard.press("Escape");
  await page.keyboard.press("a");
  await expect(page.locator(".panel")).toHaveCount(0);
});

test("U9 U28 the scene is read out on demand, and the ledger is a table that lights its element", async ({
  page,
}) => {
  await open(page);
  await bar(page, "numbers").click();
  await page.getByRole("button", { name: "Read to screen reader" }).click();
  await expect(page.locator("[role=status][aria-atomic]")).toContainText("millimetres of mercury");
  const rows = page.locator("table.ledger tbody tr");
  expect(await rows.count()).toBeGreaterThan(5);
  await rows.first().locator("button").focus();
  await expect(rows.first()).toHaveClass(/lit/);
  await page.getByRole("button", { name: "Power loss" }).click();
  await expect(page.locator("th[aria-sort=descending]")).toHaveText("Power loss");
});

test("U8 at 320 px nothing scrolls sideways", async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 700 });
  await open(page);
  for (const name of ["adjust", "numbers", "take"]) {
    await bar(page, name).click();
    const wide = await page.evaluate(() =>
      [...document.querySelectorAll(".panel, .panel-body, .shell, html")]
        .filter((element) => element.scrollWidth > element.clientWidth + 1)
        .map((element) => element.className),
    );
    expect(wide, name).toEqual([]);
    await page.keyboard.press("Escape");
  }
});

flowing("U3 with reduced motion nothing moves until asked", async ({ page }) => {
  await page.addInitScript(() => {
    const drawn = new Set<number>();
    const { stroke } = CanvasRenderingContext2D.prototype;
    CanvasRenderingContext2D.prototype.stroke = function (...given: [path?: Path2D]) {
      drawn.add(Number(document.timeline.currentTime));
      return stroke.apply(this, given as [path: Path2D]);
    };
    Object.assign(window, { drawn });
  });
  await open(page);
  await expect(page.locator("[data-item=pause]")).toHaveText("Play");
  // A picture that stands still is drawn once a second, and leaves the processor alone between.
  const inTwoSeconds = () =>
    page.evaluate(async () => {
      const { drawn } = window as unknown as { drawn: Set<number> };
      drawn.clear();
      await new Promise((resolve) => setTimeout(resolve, 2000));
      return drawn.size;
    });
  await expect.poll(inTwoSeconds, { timeout: 40_000 }).toBeLessThanOrEqual(3);
  expect(await inTwoSeconds()).toBeGreaterThan(0);
  await page.locator("[data-item=pause]").click();
  await expect(page.locator("[data-item=pause]")).toHaveText("Pause");
});

test("without WebGL and canvas the numbers and the ledger continue", async ({ page }) => {
  await page.addInitScript(() => {
    HTMLCanvasElement.prototype.getContext = () => null;
  });
  await open(page);
  await expect(page.locator(".stage-without-picture")).toContainText("cannot draw the moving picture");
  await bar(page, "numbers").click();
  expect(await page.locator("table.ledger tbody tr").count()).toBeGreaterThan(5);
});

test("two ventricles have a picture of their own, and nothing that needs a computed plane", async ({
  page,
}) => {
  const sound = watchPage(page);
  await page.goto("?mode=bench&state=1~ttv");
  await expect(page.locator("#scene-reading")).toContainText("Whole circulation, Two ventricles", {
    timeout: 30_000,
  });
  const rich = async () => (await countColours(page, [DARK.richGround], 24))[0]!;
  await expect.poll(rich, { timeout: 30_000 }).toBeGreaterThan(3000);
  await expect(page.locator("[data-item=dye]")).toHaveCount(0);
  await bar(page, "look").click();
  await expect(page.getByRole("switch", { name: "Names of the parts" })).toBeVisible();
  await expect(page.getByRole("switch", { name: "Streamlines" })).toHaveCount(0);
  sound();
});
