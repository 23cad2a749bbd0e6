/** A talk with the speaker's own slides: put together, saved, opened again, shown to its end. */
import { expect } from "@playwright/test";
import { test } from "./resting-field.ts";

const SVG = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 160 90"><rect width="160" height="90" fill="teal"/><script>document.title="stolen"</script></svg>`;

test("a talk of a title, a bench state, a picture and two steps is kept, saved, opened again and shown", async ({
  page,
}) => {
  await page.goto("?mode=bench");
  await page.locator(".toolbar [data-item=take]").click();
  await page.locator("[data-item=talk]").click();
  await expect(page.getByText("Added at the end of your talk.").first()).toBeVisible();

  await page.goto("?mode=lecture");
  const rows = page.locator(".builder-list ol > li");
  await expect(rows).toHaveCount(1);
  await page.getByRole("button", { name: "Add a title" }).click();
  await page
    .getByLabel("Add pictures or a PDF")
    .last()
    .setInputFiles([
      { name: "ward.svg", mimeType: "image/svg+xml", buffer: Buffer.from(SVG) },
      { name: "notes.txt", mimeType: "text/plain", buffer: Buffer.from("no picture") },
    ]);
  await expect(rows).toHaveCount(3);
  await expect(page.getByText("notes.txt")).toBeVisible();
  await page.locator("summary").first().click();
  const steps = page.getByRole("button", { name: /^Add the step/ });
  await steps.nth(0).click();
  await steps.nth(1).click();
  await page.getByRole("button", { name: "Add a closing slide" }).click();
  const count = await rows.count();
  await page.locator(".stop-name").first().click();
  await page.getByLabel("Your notes").fill("Greet the hall.");
  const saved = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save as a file" }).click();
  const file = await (await saved).path();

  await page.getByRole("button", { name: "Empty the list" }).click();
  await expect(rows).toHaveCount(0);
  await page.locator('input[accept*="zip"]').setInputFiles(file);
  await expect(rows).toHaveCount(count);
  await page.reload();
  await expect(rows).toHaveCount(count);
  await page.getByRole("link", { name: "Begin", exact: true }).click();
  const slide = page.locator(".own-slide");
  await expect(slide).toHaveAttribute("data-slide", "title");
  await page.keyboard.press("PageDown");
  await expect(slide).toHaveCount(0);
  await page.keyboard.press("PageDown");
  await expect(slide.locator("img")).toHaveJSProperty("complete", true);
  expect(
    await slide.locator("img").evaluate((image: HTMLImageElement) => image.naturalWidth),
  ).toBeGreaterThan(0);
  await page.keyboard.press("End");
  await expect(slide).toHaveText("Thank you");
  await page.reload();
  await expect(slide).toHaveText("Thank you");
});
