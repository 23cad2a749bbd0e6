import { readFileSync } from "node:fs";
import { expect, test } from "@playwright/test";
import { unzipSync } from "fflate";
import { watchPage } from "./page.ts";

/** Where the course system keeps its packages. */
const COURSE = "/course-system";

test("a package made on the page runs in a course system: its lessons alone, its rules, its language, an answer reported", async ({
  page,
}) => {
  test.setTimeout(120_000);
  const unfaulted = watchPage(page);
  await page.goto("?mode=study&page=package&language=de");
  await page.getByRole("button", { name: "Keine Lektion" }).click();
  for (const name of ["Drei Wege, Blut in die Lunge zu führen", "Wo der Druck bleibt"])
    await page.getByRole("checkbox", { name }).check();
  await page.getByRole("button", { name: "Nach oben: Wo der Druck bleibt" }).click();
  await page.getByRole("radio", { name: "SCORM 2004" }).check({ force: true });
  await page.getByRole("textbox", { name: "Bestehensgrenze" }).fill("75");
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Paket speichern" }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^lungward-[0-9a-f]{8}-scorm2004-de-\d{4}-\d\d-\d\d\.zip$/);
  const files = unzipSync(new Uint8Array(readFileSync((await download.path())!)));
  const manifest = new TextDecoder().decode(files["imsmanifest.xml"]);
  expect(manifest).toContain("<title>Wie Blut ohne Pumpe in die Lunge kommt");

  const types: Record<string, string> = {
    html: "text/html",
    js: "text/javascript",
    css: "text/css",
    wasm: "application/wasm",
  };
  await page.route(`**${COURSE}/**`, (route) => {
    const path = new URL(route.request().url()).pathname.slice(COURSE.length + 1);
    const body = files[path];
    const contentType = types[path.split(".").pop()!];
    return body
      ? route.fulfill({ body: Buffer.from(body), ...(contentType ? { contentType } : {}) })
      : route.fulfill({ status: 404 });
  });
  await page.addInitScript({ path: "node_modules/scorm-again/dist/scorm2004.js" });
  await page.addInitScript(() => {
    const scope = window as unknown as {
      Scorm2004API: new (settings: object) => unknown;
      API_1484_11: unknown;
    };
    scope.API_1484_11 = new scope.Scorm2004API({ autocommit: false });
  });
  const [, launch] = /href="(index\.html[^"]*)"/.exec(manifest)!;
  await page.goto(`${COURSE}/${launch!.replace(/&amp;/g, "&")}`);
  await expect(page.locator(".lesson-card strong")).toHaveText(
    ["Wo der Druck bleibt", "Drei Wege, Blut in die Lunge zu führen"],
    { timeout: 30_000 },
  );
  await expect(page.locator(".study-home")).toContainText("Er ist bestanden, wenn 75 %");
  await page.locator(".lesson-card a").first().click();
  await page.locator(".lesson-way-on").locator("button").last().click();
  await page.locator(".question button.main").click();
  await expect(page.locator(".feedback")).toBeVisible({ timeout: 30_000 });
  const elementOf = (element: string) =>
    page.evaluate(
      (name) =>
        (window as unknown as { API_1484_11: { GetValue(name: string): string } }).API_1484_11.GetValue(name),
      element,
    );
  expect(await elementOf("cmi.completion_status")).toBe("incomplete");
  expect(await elementOf("cmi.interactions._count")).toBe("1");
  expect(await elementOf("cmi.interactions.0.description")).toMatch(/^\{lang=de\}\S/);
  unfaulted();
});
