/** The hall answers by phone: a stage, its speaker's window and phones on a server of their own. */
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { expect, type Page, test } from "@playwright/test";
import { openFile } from "../../src/audience/journal.ts";
import { oneRoom } from "../../src/audience/rooms.ts";
import { openAudience } from "../../src/audience/server.ts";
import { expectAccessible } from "./page.ts";

const file = join(mkdtempSync(join(tmpdir(), "audience-")), "room.jsonl");

async function serve(port: number) {
  const { code, key, journal } = openFile(file, Date.now(), () => {});
  const audience = await openAudience({
    rooms: await oneRoom({ code, key, journal }, () => {}),
    folder: "dist/folder",
    host: "127.0.0.1",
    port,
    origins: [],
    trustProxy: false,
    onFault: () => {},
    address: (at) => `http://127.0.0.1:${at}/phone`,
  });
  const close = () => audience.close().then(journal.close);
  return { code, key, port: audience.port, close };
}

const bars = (page: Page, list: string) =>
  page.locator(`${list} li`).evaluateAll((all) => all.map((bar) => (bar as HTMLElement).dataset.count));

test("phones answer in their language, are locked by the speaker, show the stage's bars, and outlive the server", async ({
  context,
  page: stage,
  browser,
}) => {
  let server = await serve(0);
  const { port, code } = server;
  const own = `http://127.0.0.1:${port}`;
  await stage.goto(`${own}/stage#${code}.${server.key}`);
  await stage.waitForURL(/\?mode=lecture/);
  expect(stage.url()).not.toContain(server.key);
  await stage.goto(`${own}/?mode=lecture&lesson=01-two-jobs&step=5`);
  await expect(stage.locator(".invite-code")).toHaveText(code, { timeout: 30_000 });
  const opened = context.waitForEvent("page");
  await stage.keyboard.press("s");
  const speaker = await opened;
  const german = await (
    await browser.newContext({ locale: "de-DE", viewport: { width: 390, height: 844 } })
  ).newPage();
  const page = await german.goto(`${own}/phone`);
  expect(gzipSync((await page?.body()) ?? "").length).toBeLessThan(60_000);
  await german.locator("#code").fill(code.toLowerCase());
  await german.locator("form button").click();
  const english = await (await browser.newContext({ locale: "en-GB" })).newPage();
  await english.goto(`${own}/phone#${code}`);
  await expect(german.locator("h2")).toContainText("Sauerstoff", { timeout: 30_000 });
  await expect(english.locator("h2")).toContainText("oxygen", { timeout: 30_000 });
  const choices = german.locator(".choice");
  await choices.nth(1).click();
  await expect(german.getByText("Ihre Antwort ist gezählt")).toBeVisible();
  await english.getByRole("button", { name: "I am lost" }).click();
  await expect(speaker.locator(".hall-phones")).toContainText("1 is lost", { timeout: 30_000 });
  await expectAccessible(german);
  // The server goes: the talk does not, and what is tapped meanwhile counts once it is back.
  await server.close();
  await expect(german.getByText("Die Verbindung ist unterbrochen")).toBeVisible();
  await choices.nth(0).click();
  await expect(stage.locator(".invite")).toHaveCount(0);
  server = await serve(port);
  await expect(german.getByText("Ihre Antwort ist gezählt")).toBeVisible({ timeout: 20_000 });
  await german.reload();
  await expect(choices.nth(0)).toHaveAttribute("aria-pressed", "true");
  await expect(speaker.locator(".hall-desk output")).toHaveText(["1", "0", "0"]);
  await speaker.keyboard.press("2");
  await speaker.getByRole("button", { name: "Lock the answers" }).click();
  await expect(choices.nth(0)).toBeDisabled();
  await speaker.getByRole("button", { name: "Show the answers" }).click();
  await expect.poll(() => bars(stage, ".hall-chart")).toEqual(["1", "1", "0"]);
  await expect.poll(() => bars(german, ".bars")).toEqual(["1", "1", "0"]);
  await speaker.getByRole("button", { name: "Show what the model says" }).click();
  await expect(german.locator(".model")).toContainText("Ihre Antwort, die Antwort des Modells");
  const download = speaker.waitForEvent("download");
  await speaker.getByRole("button", { name: "Save the counts" }).click();
  expect((await download).suggestedFilename()).toBe("hall-counts.csv");
  await speaker.getByRole("button", { name: "End, and erase" }).click();
  await speaker.getByRole("button", { name: "Erase them now?" }).click();
  await expect(german.getByText("Der Vortrag ist zu Ende")).toBeVisible();
  expect(await german.evaluate(() => localStorage.length)).toBe(0);
  await server.close();
});
