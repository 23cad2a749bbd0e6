/** What the page tests share: faults of the page fail a test, axe, and numbers read from the page. */
import AxeBuilder from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";

/** Collects what the page throws or asks of other hosts; call the returned function at the end. */
export function watchPage(page: Page): () => void {
  const troubles: string[] = [];
  page.on("pageerror", (error) => troubles.push(error.message));
  page.on("request", (request) => {
    const { protocol, hostname } = new URL(request.url());
    if (/^https?:/.test(protocol) && hostname !== "127.0.0.1") troubles.push(request.url());
  });
  return () => expect(troubles).toEqual([]);
}

/** U10 */
export async function expectAccessible(page: Page): Promise<void> {
  // In the page itself: the other way opens a second page for each analysis, and we have no frames.
  const { violations } = await new AxeBuilder({ page }).setLegacyMode().analyze();
  expect(
    violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(" ")).join(", ")}`),
  ).toEqual([]);
}

/** The full value behind a shown figure, such as `pressureDrop.handbook`; waits until it is known. */
export async function figure(page: Page, name: string): Promise<number> {
  const shown = page.locator(`.side [data-figure="${name}"]`);
  await expect(shown).not.toHaveAttribute("data-value", "", { timeout: 30_000 });
  return Number(await shown.getAttribute("data-value"));
}

/** Leaves out painting, not what is painted: for tests of words and controls, to which a software painter only gives waiting. */
export async function withoutPainting(page: Page): Promise<void> {
  await page.addInitScript(() => {
    for (const draw of [
      "drawElements",
      "drawElementsInstanced",
      "drawArrays",
      "drawArraysInstanced",
    ] as const)
      WebGL2RenderingContext.prototype[draw] = () => {};
  });
}
