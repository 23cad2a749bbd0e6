/** A newer version on the server while a talk and a study session go on: it waits, is offered, and nothing is lost. */
import { readdirSync, readFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join } from "node:path";
import { expect } from "@playwright/test";
import { watchPage } from "./page.ts";
import { test } from "./resting-field.ts";

test.use({ serviceWorkers: "allow", reuseContext: false });

const BUILT = "dist/folder";
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".svg": "image/svg+xml",
};

/** The build as if all its pieces had changed: no name of one is as before. */
function nextVersion() {
  const hash = /-([\w-]{8})(?=\.\w+$)/;
  const hashes = readdirSync(join(BUILT, "assets")).flatMap((name) => hash.exec(name)?.[1] ?? []);
  const turned = (text: string) => [...text].reverse().join("");
  const known = new Map([...hashes, ...hashes.map(turned)].map((each) => [each, turned(each)]));
  const rename = (text: string) =>
    text.replace(/(?<=-)[\w-]{8}(?=\.\w)/g, (found) => known.get(found) ?? found);
  return { rename, pageOf: (text: string) => rename(text).replace("<title>", '<meta name="next"><title>') };
}

async function serve() {
  const state = { next: false, missed: [] as string[] };
  const { rename, pageOf } = nextVersion();
  const server = createServer((request, answer) => {
    const { pathname } = new URL(request.url!, "http://kit");
    const path = pathname === "/" ? "/index.html" : pathname;
    const type = extname(path);
    try {
      const file = readFileSync(join(BUILT, state.next ? rename(path) : path));
      const change = type === ".html" ? pageOf : rename;
      const body =
        state.next && /html|js|css/.test(type)
          ? change(String(file)).replace(/(url:\s*"index\.html",\s*revision:\s*")/, "$1next")
          : file;
      answer.writeHead(200, { "content-type": TYPES[type] ?? "application/octet-stream" }).end(body);
    } catch {
      state.missed.push(path);
      answer.writeHead(404).end();
    }
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const { port } = server.address() as AddressInfo;
  return { state, home: `http://127.0.0.1:${port}/`, close: () => server.close() };
}

test("a newer version waits while a talk and a study session go on, is refused while other windows are open, and then loses nothing", async ({
  page,
  context,
}) => {
  test.setTimeout(120_000);
  const sound = watchPage(page);
  const { state, home, close } = await serve();
  await page.goto(`${home}?mode=study&lesson=04-energy-loss&step=narrow-ask`);
  await page.locator('.answer input[value="same"]').check({ force: true });
  await page.getByRole("button", { name: "This is my prediction" }).click();
  await expect(page.locator(".answer input").first()).toBeDisabled();
  await page.waitForFunction(() => navigator.serviceWorker.controller, undefined, { timeout: 60_000 });
  const talk = await context.newPage();
  await talk.goto(`${home}?mode=lecture&lesson=04-energy-loss&step=1`);
  await expect(talk.locator(".room-place")).toContainText("Step 1 of");

  state.next = true;
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())!.update());
  // Pieces that neither window has loaded: another language, another mode.
  await talk.keyboard.press("PageDown");
  await expect(talk.locator(".room-place")).toContainText("Step 2 of");
  await page.getByRole("button", { name: "Help" }).click();
  await page.getByRole("radio", { name: "Deutsch" }).check({ force: true });
  await expect(page.getByRole("button", { name: "Schließen" })).toBeVisible();
  await page.getByRole("radio", { name: "English" }).check({ force: true });
  await page.getByRole("button", { name: "Close", exact: true }).click();
  await page.getByRole("link", { name: "Lessons" }).first().click();
  const offer = page.getByRole("button", { name: "A newer version is ready" });
  await expect(offer).toBeVisible({ timeout: 60_000 });
  await offer.click();
  await expect(page.getByText("Close the other windows of Lungward first")).toBeVisible();
  await talk.keyboard.press("PageDown");
  await expect(talk.locator(".room-place")).toContainText("Step 3 of");
  expect(state.missed).toEqual([]);

  await talk.close();
  await offer.click();
  await expect(page.locator('meta[name="next"]')).toBeAttached({ timeout: 30_000 });
  await expect(page.locator(".lesson-card").nth(3)).toContainText("1 of 13 steps seen");
  await expect(offer).toHaveCount(0);
  expect(state.missed).toEqual([]);
  sound();
  close();
});

test.describe("without what is kept for use without a network", () => {
  test.use({ serviceWorkers: "block" });

  test("a part that does not come is told, and comes once the page is loaded again", async ({ page }) => {
    await page.goto("?mode=home");
    await expect(page.locator(".door").first()).toBeVisible();
    await page.route(/assets\/.*\.js/, (route) => route.abort());
    await page.locator("a.door[href*=bench]").click();
    const again = page.getByRole("button", { name: "Load the page again" });
    await expect(again).toBeVisible({ timeout: 30_000 });
    await page.unroute(/assets\/.*\.js/);
    await again.click();
    await expect(page.locator(".toolbar")).toBeVisible({ timeout: 60_000 });
  });
});
