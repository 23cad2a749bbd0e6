/** WCAG 2.2 criteria that axe has no rule for: order, names, what focus and hover do, where help is; `docs/accessibility.md` names these. */
import { expect, type Page } from "@playwright/test";
import axe from "axe-core";
import { openScreen, SCREENS } from "./page.ts";
import { test } from "./resting-field.ts";

test.setTimeout(120_000);

const ALL = {
  ...SCREENS,
  list: { query: "?mode=study", ready: ".lesson-card" },
  talk: { query: "?mode=lecture&lesson=03-pathways&step=2", ready: ".toolbar" },
  kiosk: { query: "?mode=kiosk", ready: ".kiosk-languages button" },
};
/** Where there are parts to hover over. */
const HOVERED = ["bench", "study", "list", "home"];
/** What is read in turn there. */
const COLUMNS: Readonly<Record<string, string>> = {
  home: ".home-words > *",
  list: ".study-home main > *",
  study: ".lesson-words > *",
};
const BARS = ["bench", "study", "talk"];

// One opening of each screen serves all criteria, those last that change it.
for (const [name, screen] of Object.entries(ALL))
  test(`criteria of ${name}`, async ({ page }) => {
    await page.addInitScript(listenForFingers);
    await openScreen(page, screen);
    await test.step("2.4.6 no two headings or controls of one group are alike", () => expectNoneAlike(page));
    if (name in COLUMNS)
      await test.step("1.3.2 text is in reading order, wide and narrow", () =>
        expectReadingOrder(page, COLUMNS[name]!));
    await test.step("3.2.1 2.4.11 focus alone opens nothing and goes nowhere, and what has it is not hidden", () =>
      expectCalmFocus(page));
    if (HOVERED.includes(name))
      await test.step("1.4.13 2.5.1 nothing comes by hovering, and no control waits for two fingers or a drawn path", () =>
        expectCalmHover(page));
    await test.step("2.5.3 the seen words are in the name", () => expectNamedAsSeen(page));
    if (BARS.includes(name))
      await test.step("3.2.3 3.2.6 the way home is first in the bar and help last", () =>
        expectHelpLast(page, name));
  });

/** What this test itself puts into the page may not listen either: no locator evaluates there. */
function listenForFingers(): void {
  const heard: string[] = [];
  const listen = EventTarget.prototype.addEventListener;
  EventTarget.prototype.addEventListener = function (kind, ...rest) {
    if (/^(touch|gesture)/.test(kind)) heard.push(kind);
    return listen.call(this, kind, ...rest);
  };
  Object.assign(window, { heard });
}

async function expectNamedAsSeen(page: Page): Promise<void> {
  await page.evaluate(axe.source);
  const unlike = await page.evaluate(async () => {
    const { axe: own } = window as unknown as { axe: typeof axe };
    const found = await own.run({ runOnly: ["label-content-name-mismatch", "empty-heading"] });
    return found.violations.flatMap(({ nodes }) => nodes.map(({ html }) => html));
  });
  expect(unlike).toEqual([]);
}

async function expectNoneAlike(page: Page): Promise<void> {
  const alike = await page.evaluate(() => {
    const twice = (elements: Iterable<Element>) => {
      const said = [...elements]
        .filter((element) => (element as HTMLElement).checkVisibility())
        .map((element) => element.getAttribute("aria-label") ?? element.textContent?.trim() ?? "");
      return said.filter((words, i) => words === "" || said.indexOf(words) !== i);
    };
    return [
      ...twice(document.querySelectorAll("h1, h2, h3")),
      ...[...document.querySelectorAll("[role=toolbar], fieldset, nav, footer, .panel")].flatMap((group) =>
        twice(group.querySelectorAll("button, a, summary")),
      ),
    ];
  });
  expect(alike).toEqual([]);
}

async function expectReadingOrder(page: Page, column: string): Promise<void> {
  const before = page.viewportSize()!;
  for (const size of [{ width: 1280, height: 800 }, { width: 390, height: 844 }, before]) {
    await page.setViewportSize(size);
    const tops = await page.evaluate(
      (selector) =>
        [...document.querySelectorAll<HTMLElement>(selector)]
          .filter((element) => element.checkVisibility() && !element.matches(".lesson-way-on"))
          .map((element) => Math.round(element.getBoundingClientRect().top)),
      column,
    );
    expect(tops.length).toBeGreaterThan(1);
    expect(tops).toEqual([...tops].sort((a, b) => a - b));
  }
}

async function expectCalmFocus(page: Page): Promise<void> {
  const opened = () => page.locator("[role=dialog], dialog[open], .panel, [aria-expanded=true]").count();
  // The page writes its step into the address by itself soon after it opens, the bench its scene at any time.
  const place = () => page.url().replace(/&state=[^&]*/, "");
  for (let last = ""; last !== place(); await page.waitForTimeout(800)) last = place();
  const windows = () => page.context().pages().length;
  const before = { place: place(), opened: await opened(), windows: windows() };
  const hidden: string[] = [];
  for (let press = 0; press < 30; press++) {
    await page.keyboard.press("Tab");
    const covered = await page.evaluate(() => {
      const element = document.activeElement;
      if (!element || element === document.body) return null;
      // A native control that is laid out unseen shows its focus on its label.
      const shown = element.matches("input") ? (element.closest("label") ?? element) : element;
      const { left, top, width, height } = shown.getBoundingClientRect();
      const points = [0.1, 0.5, 0.9].flatMap((x) => [0.2, 0.5, 0.8].map((y) => [x, y] as const));
      const seen = points.some(([x, y]) => {
        const at = document.elementFromPoint(left + x * width, top + y * height);
        return at !== null && (shown.contains(at) || at.contains(shown));
      });
      return seen ? null : shown.outerHTML.slice(0, 120);
    });
    if (covered) hidden.push(covered);
  }
  expect(hidden).toEqual([]);
  expect({ place: place(), opened: await opened(), windows: windows() }).toEqual(before);
}

async function expectCalmHover(page: Page): Promise<void> {
  expect(await page.locator("[title]:not(svg *)").count()).toBe(0);
  const seen = () =>
    page.evaluate(
      () =>
        [...document.querySelectorAll<HTMLElement>("body *")].filter((element) => element.checkVisibility())
          .length,
    );
  const controls = await page.locator("button:visible, a:visible, summary:visible, .readout:visible").all();
  for (const control of controls.slice(0, 12)) {
    await control.hover({ force: true });
    const under = await seen();
    await page.mouse.move(1, 1);
    // What comes by hovering goes with it; what a page still puts up stays.
    expect(under, (await control.textContent()) ?? "").toBeLessThanOrEqual(await seen());
  }
  expect(await page.evaluate(() => (window as unknown as { heard: string[] }).heard)).toEqual([]);
}

async function expectHelpLast(page: Page, name: string): Promise<void> {
  const bar = page.getByRole("toolbar").getByRole("button");
  await expect(bar.last()).toHaveAttribute("data-item", "help");
  if (name !== "talk") await expect(page.locator("header.top a").first()).toHaveClass("wordmark");
  await bar.last().press("Enter");
  await expect(page.getByRole("dialog")).toBeVisible();
}
