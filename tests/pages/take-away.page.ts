import { readFileSync } from "node:fs";
import { expect, type Page, test } from "@playwright/test";
import { unzipSync } from "fflate";
import { expectAccessible, figure } from "./page.ts";

const open = async (page: Page) => {
  await page.goto("?setting=bench");
  await figure(page, "pressureDrop.handbook");
  await page.locator(".toolbar [data-item=take]").click();
};

async function saved(page: Page, item: string): Promise<{ name: string; bytes: Buffer }> {
  const coming = page.waitForEvent("download", { timeout: 60_000 });
  await page.locator(`.panel [data-item=${item}]`).click();
  const download = await coming;
  return { name: download.suggestedFilename(), bytes: readFileSync((await download.path())!) };
}

test("a still is a PNG of the size asked for, up to 4K", async ({ page }) => {
  test.setTimeout(120_000);
  await open(page);
  await page.locator("#stage canvas").waitFor();
  await page.waitForTimeout(2000);
  await page.getByRole("radio", { name: "3840" }).check();
  const { name, bytes } = await saved(page, "still");
  expect(name).toBe("lungward.png");
  expect(bytes.subarray(1, 4).toString()).toBe("PNG");
  // IHDR: width and height (PNG specification, 11.2.2)
  expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([3840, 2160]);
});

test("U29 the table carries the numbers shown, the settings, the link and six cautions", async ({ page }) => {
  await open(page);
  const drop = await figure(page, "pressureDrop.handbook");
  const text = (await saved(page, "table")).bytes.toString("utf8");
  const rows = text.trimEnd().split("\r\n");
  expect(rows.find((row) => row.includes("Pressure drop along the pathway"))).toContain(
    `,${drop},mmHg,mm[Hg]`,
  );
  expect(rows.filter((row) => row.startsWith("caution,"))).toHaveLength(6);
  expect(text).toContain("setting=bench");
  expect(rows.filter((row) => row.startsWith("settings,")).length).toBeGreaterThan(20);
});

test("a clip is recorded, and recording can be cancelled", async ({ page }) => {
  test.setTimeout(120_000);
  await open(page);
  await page.locator("#stage canvas").waitFor();
  await page.locator(".panel [data-item=clip]").click();
  await page.getByRole("button", { name: "Cancel" }).click();
  await expect(page.locator(".panel [data-item=clip]")).toBeVisible();
  const { name, bytes } = await saved(page, "clip");
  expect(name).toMatch(/\.webm$/);
  expect(bytes.length).toBeGreaterThan(10_000);
  // EBML magic number of WebM (RFC 8794)
  expect(bytes.subarray(0, 4).toString("hex")).toBe("1a45dfa3");
});

test("U19 the page for families fits one A4 and one Letter page, with picture, numbers, cautions, version", async ({
  page,
}) => {
  await open(page);
  await page.locator("#stage canvas").waitFor();
  await page.locator(".panel [data-item=handout]").click();
  await expect(page.locator(".sheet img")).toBeVisible({ timeout: 30_000 });
  await page
    .getByRole("textbox", { name: "From your own team" })
    .fill("Call the ward, day and night: 000 000.");
  await expect(page.locator(".sheet [data-caution]")).toHaveCount(6);
  await expectAccessible(page);
  for (const format of ["A4", "Letter"]) {
    const pdf = (await page.pdf({ format, preferCSSPageSize: false, tagged: true })).toString("latin1");
    expect(pdf.match(/\/Type\s*\/Page[^s]/g), format).toHaveLength(1);
    expect(pdf).toContain("/StructTreeRoot");
  }
});

test("U19 a lesson's page for families fits one A4 and one Letter page, with its pictures, words, cautions", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await page.emulateMedia({ reducedMotion: "reduce" });
  await page.goto("?setting=study&lesson=02-steps&view=handout");
  await expect(page.locator(".sheet-pictures img")).toHaveCount(4, { timeout: 90_000 });
  await page
    .getByRole("textbox", { name: "From your own team" })
    .fill("Call the ward, day and night: 000 000.");
  await expect(page.locator(".sheet [data-caution]")).toHaveCount(6);
  await expect(page.locator(".sheet-remember")).not.toBeEmpty();
  await expectAccessible(page);
  for (const format of ["A4", "Letter"]) {
    const pdf = (await page.pdf({ format, preferCSSPageSize: false, tagged: true })).toString("latin1");
    expect(pdf.match(/\/Type\s*\/Page[^s]/g), format).toHaveLength(1);
    expect(pdf).toContain("/StructTreeRoot");
  }
});

test("pictures of all steps of a talk come in one ZIP", async ({ page }) => {
  test.setTimeout(180_000);
  await page.goto("?setting=lecture");
  await page.locator("summary").first().click();
  while ((await page.locator(".builder-list ol li").count()) < 2)
    await page
      .getByRole("button", { name: /^Add the step/ })
      .first()
      .click();
  const coming = page.waitForEvent("download", { timeout: 150_000 });
  await page.locator("[data-item=stills]").click();
  const files = unzipSync(readFileSync((await (await coming).path())!));
  const names = Object.keys(files);
  expect(names.length).toBeGreaterThanOrEqual(2);
  for (const name of names) {
    expect(name).toMatch(/^\d{3}-[\w-]+\.png$/);
    expect(Buffer.from(files[name]!.subarray(1, 4)).toString()).toBe("PNG");
  }
});
