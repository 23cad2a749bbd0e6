import { readFileSync } from "node:fs";
import { expect, test } from "@playwright/test";
import { drop, expectAccessible, paste, watchPage } from "./page.ts";

test.use({ reducedMotion: "reduce" });

const example = () => /````markdown\n([\s\S]*?)````/.exec(readFileSync("docs/authoring.md", "utf8"))![1]!;

test("a lesson file is opened, runs, and shows its faults while one types, with the last good text still running", async ({
  page,
}) => {
  test.setTimeout(120_000);
  const unfaulted = watchPage(page);
  await page.goto("?mode=author");
  await page
    .locator("input[type=file]")
    .setInputFiles({ name: "my-lesson.md", mimeType: "text/markdown", buffer: Buffer.from(example()) });
  const words = page.locator(".author-preview .lesson-words");
  await expect(words.locator("h2")).toHaveText("A wide tube");
  await expect(words.locator(".live-number")).toHaveText(/\d\.\d\d.mmHg \(/);
  await expect(page.locator(".author-faults")).toContainText("No faults");
  await paste(page.locator("textarea"), example().replace("conduitDiameter: 10", "conduitDiametre: 10"));
  await expect(page.locator(".author-faults li")).toHaveText(/Line 24: .*nearest: conduitDiameter/);
  await expect(words.locator("h2")).toHaveText("A wide tube");
  await page.locator(".author-faults button").click();
  await expect(page.locator("textarea")).toBeFocused();
  await paste(page.locator("textarea"), example().replace("rises from previous", "falls from previous"));
  await page.locator("textarea").press("Control+End");
  await expect(words.locator("h2")).toHaveText("A narrow tube");
  await expect(page.locator(".author-preview .note")).toContainText("falls from previous");
  // What was written here is lost only once that is agreed to: by a drop, by a pick, by a lesson of the kit.
  const mine = await page.locator("textarea").inputValue();
  const dialog = page.getByRole("alertdialog", { name: "Replace what you have written?" });
  const dropped = example().replace("A wide tube", "Dropped");
  await drop(page, "dropped.md", dropped);
  await expect(dialog).toBeVisible();
  await expectAccessible(page);
  await page.keyboard.press("Escape");
  await expect(dialog).toHaveCount(0);
  await page
    .locator("input[type=file]")
    .setInputFiles({ name: "picked.md", mimeType: "text/markdown", buffer: Buffer.from(dropped) });
  await dialog.getByRole("button", { name: "Keep my text" }).click();
  await page.getByLabel("Begin from").selectOption("03-pathways");
  await dialog.getByRole("button", { name: "Keep my text" }).click();
  await page.goto("?mode=author&lesson=03-pathways");
  await dialog.getByRole("button", { name: "Keep my text" }).click();
  await expect(page.locator("textarea")).toHaveValue(mine);
  await drop(page, "dropped.md", dropped);
  await dialog.getByRole("button", { name: "Replace it" }).click();
  await expect(page.locator("textarea")).toHaveValue(/## Dropped/);
  unfaulted();
});

test("nothing in a lesson runs or loads", async ({ page }) => {
  const requests: string[] = [];
  page.on("request", (request) => requests.push(request.url()));
  await page.goto("?mode=author");
  await expect(page.locator("textarea")).toBeVisible({ timeout: 30_000 });
  await page.waitForTimeout(1500);
  requests.length = 0;
  const nasty = `<img src="https://example.org/x.png" onerror="window.ran = 1"> <script>window.ran = 1</script>`;
  const technical = `\n### technical\nIt is $\\href{javascript:window.ran=1}{x}$ and $\\includegraphics{https://example.org/y.png}$ ${nasty}\n`;
  await paste(
    page.locator("textarea"),
    example()
      .replace("## A narrow tube", `${technical}\n## A narrow tube`)
      .replace("Blood from", `${nasty} Blood from`),
  );
  await expect(page.locator(".author-preview .script")).toContainText("<script>");
  await page.evaluate(() => localStorage.setItem("lungward.telling", '"technical"'));
  await page.reload();
  await expect(page.locator(".author-preview .katex, .author-preview .script")).not.toHaveCount(0);
  await page.waitForTimeout(1500);
  expect(await page.evaluate(() => (window as unknown as { ran?: number }).ran)).toBeUndefined();
  expect(requests.filter((url) => url.includes("example.org"))).toEqual([]);
  expect(await page.locator(".author-preview a[href], .author-preview img").count()).toBe(0);
});

test("U10 the author's page has no violations", async ({ page }) => {
  await page.goto("?mode=author");
  await expect(page.locator("textarea")).toBeVisible({ timeout: 30_000 });
  await page.waitForTimeout(1000);
  await expectAccessible(page);
});
