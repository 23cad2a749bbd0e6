/** What the page tests share: faults of the page fail a test, axe, and numbers read from the page. */
import { expect, type Locator, type Page } from "@playwright/test";
import axe from "axe-core";

/** Collects what the page throws or asks of other hosts; call the returned function at the end. */
export function watchPage(page: Page): () => void {
  const errors: string[] = [];
  page.on("pageerror", (error) => errors.push(error.message));
  page.on("request", (request) => {
    const { protocol, hostname } = new URL(request.url());
    if (/^https?:/.test(protocol) && hostname !== "127.0.0.1") errors.push(request.url());
  });
  return () => expect(errors).toEqual([]);
}

/** U10: no violation, of rules other than those left out. */
export async function expectAccessible(page: Page, leftOut: readonly string[] = []): Promise<void> {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe.source);
  const violations = await page.evaluate(async (without) => {
    const rules = Object.fromEntries(without.map((rule) => [rule, { enabled: false }]));
    const { axe: own } = window as unknown as { axe: typeof axe };
    const found = await own.run({ rules, resultTypes: ["violations"] });
    return found.violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(" ")).join(", ")}`,
    );
  }, leftOut);
  expect(violations, page.url()).toEqual([]);
}

/** The full value behind a shown figure, such as `pressureDrop`; waits until it is known. */
export async function figure(page: Page, name: string): Promise<number> {
  const shown = page.locator(`.side [data-figure="${name}"]`);
  await expect(shown).not.toHaveAttribute("data-value", "", { timeout: 30_000 });
  return Number(await shown.getAttribute("data-value"));
}

/** Puts a text of many lines in at once, as a paste does; `fill` would put it in line by line. */
export const paste = (into: Locator, text: string): Promise<void> =>
  into.evaluate((element: HTMLTextAreaElement, value) => {
    element.focus();
    element.value = value;
    element.dispatchEvent(new InputEvent("input", { bubbles: true, inputType: "insertFromPaste" }));
  }, text);

/** A file let go over the page. */
export const drop = (page: Page, name: string, text: string): Promise<void> =>
  page.evaluate(
    ([called, content]) => {
      const files = new DataTransfer();
      files.items.add(new File([content!], called!, { type: "text/markdown" }));
      document.body.dispatchEvent(
        new DragEvent("drop", { dataTransfer: files, bubbles: true, cancelable: true }),
      );
    },
    [name, text],
  );

interface Screen {
  readonly query: string;
  readonly ready: string;
}

/** One screen of each setting that has words to read. */
export const SCREENS: Readonly<Record<string, Screen>> = {
  home: { query: "?mode=home", ready: ".door" },
  bench: { query: "?mode=bench", ready: ".toolbar" },
  study: { query: "?mode=study&lesson=02-steps", ready: ".lesson-words h2" },
  lecture: { query: "?mode=lecture", ready: "h1" },
  author: { query: "?mode=author&view=text", ready: "textarea" },
};

export async function openScreen(page: Page, { query, ready }: Screen, more = ""): Promise<void> {
  await page.goto(query + more);
  await expect(page.locator(ready).first()).toBeVisible({ timeout: 60_000 });
}
