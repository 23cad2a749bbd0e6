import { readFileSync } from "node:fs";
import { expect } from "@playwright/test";
import { drop, expectAccessible, paste, watchPage } from "./page.ts";
import { test } from "./resting-field.ts";

const example = () => /````markdown\n([\s\S]*?)````/.exec(readFileSync("docs/authoring.md", "utf8"))![1]!;

test("a lesson file is opened, runs, and shows its faults while one types, with the last good text still running", async ({
  page,
}) => {
  test.setTimeout(120_000);
  const unfaulted = watchPage(page);
  await page.goto("?mode=author&view=text");
  await page
    .locator("input[type=file]")
    .setInputFiles({ name: "my-lesson.md", mimeType: "text/markdown", buffer: Buffer.from(example()) });
  const words = page.locator(".author-preview .lesson-words");
  await expect(words.locator("h2")).toHaveText("A wide tube");
  await expect(words.locator(".live-number")).toHaveText(/\d\.\d\d.mmHg \(/);
  await expect(page.locator(".author-faults")).toContainText("No faults", { timeout: 60_000 });
  await paste(page.locator("textarea"), example().replace("conduitDiameter: 10", "conduitDiametre: 10"));
  await expect(page.locator(".author-faults li")).toHaveText(/Line 24: .*nearest: conduitDiameter/);
  await expect(words.locator("h2")).toHaveText("A wide tube");
  await page.getByRole("button", { name: /^Line 24/ }).click();
  await expect(page.locator("textarea")).toBeFocused();
  await page.getByRole("button", { name: "Use \u201cconduitDiameter\u201d" }).click();
  await expect(page.locator(".author-faults")).toContainText("Every step was run through the model", {
    timeout: 60_000,
  });
  await page.locator("textarea").press("Control+z");
  await expect(page.locator("textarea")).toHaveValue(/conduitDiametre/);
  await paste(page.locator("textarea"), example().replace("rises from previous", "falls from previous"));
  await page.locator("textarea").press("Control+End");
  await expect(words.locator("h2")).toHaveText("A narrow tube");
  await expect(page.locator(".author-preview .note")).toContainText("falls from previous");
  // Another text never takes the place of what was written: a drop, a pick, a lesson of the kit are texts of their own.
  const mine = await page.locator("textarea").inputValue();
  await drop(page, "dropped.md", example().replace("A wide tube", "Dropped"));
  await expect(page.locator("textarea")).toHaveValue(/## Dropped/);
  await page.getByLabel("Start from").selectOption("03-pathways");
  await expect(page.locator("textarea")).toHaveValue(/id: pathways-own/);
  // A write to the browser's database ends after the key that caused it.
  await page.waitForTimeout(1000);
  await page.goto("?mode=author&view=text&lesson=04-energy-loss");
  await expect(page.locator("textarea")).toHaveValue(/id: energy-loss-own/);
  await page.getByRole("button", { name: /^My lessons/ }).click();
  const list = page.getByRole("dialog", { name: "My lessons" });
  await expectAccessible(page);
  // The picked file, the drop and two copies of the kit's lessons; the first text was there before.
  const rows = list.locator(".own-texts > li");
  await expect(rows).toHaveCount(5);
  await list.getByRole("listitem", { name: "my-lesson" }).getByRole("button", { name: "Open" }).click();
  await expect(page.locator("textarea")).toHaveValue(mine);
  unfaulted();
});

test("nothing in a lesson runs or loads", async ({ page }) => {
  const requests: string[] = [];
  page.on("request", (request) => requests.push(request.url()));
  await page.goto("?mode=author&view=text");
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
  await page.goto("?mode=author&view=text");
  await expect(page.locator("textarea")).toBeVisible({ timeout: 30_000 });
  await page.waitForTimeout(1000);
  await expectAccessible(page);
});

test("an own lesson stands in study, in a talk's list and in the kiosk, until it is hidden; deleting asks first", async ({
  page,
}) => {
  test.setTimeout(180_000);
  const unfaulted = watchPage(page);
  await page.goto("?mode=author&view=text");
  const text = page.locator("textarea");
  await expect(text).toBeVisible({ timeout: 60_000 });
  await drop(page, "mine.md", example().replace("title: One tube, two widths", "title: Words of my own"));
  await expect(text).toHaveValue(/Words of my own/);
  await expect(page.locator(".author-faults")).toContainText("No faults", { timeout: 60_000 });
  await page.goto("?mode=study");
  const card = page.locator(".lesson-card", { hasText: "Words of my own" });
  await expect(card).toContainText("Own", { timeout: 60_000 });
  await card.locator("a").click();
  await expect(page.locator(".lesson-words h2")).toHaveText("A wide tube");
  await page.goto("?mode=lecture");
  await expect(page.locator(".picker-lesson", { hasText: "Words of my own" })).toBeVisible({
    timeout: 60_000,
  });
  await page.goto("?mode=kiosk");
  await page.locator(".kiosk-languages button").first().click();
  await expect(page.locator(".kiosk-topics").getByRole("button", { name: "Words of my own" })).toBeVisible();
  await page.goto("?mode=author&view=text");
  await page.getByRole("button", { name: /^My lessons/ }).click();
  const row = page.getByRole("listitem", { name: "mine", exact: true });
  await row.getByRole("checkbox").uncheck();
  await row.getByRole("button", { name: "Delete" }).click();
  await page.getByRole("button", { name: "Keep it" }).click();
  await expect(row).toHaveCount(1);
  await page.goto("?mode=study");
  await expect(page.locator(".lesson-card")).not.toHaveCount(0);
  await expect(card).toHaveCount(0);
  // A file that the learner adds is there at once.
  await drop(
    page,
    "theirs.md",
    example().replace("id: my-lesson", "id: theirs").replace("One tube, two widths", "Added here"),
  );
  await expect(page.locator(".lesson-card", { hasText: "Added here" })).toBeVisible();
  unfaulted();
});

test("a lesson saved as a file comes back from it after it was deleted, the last one with it", async ({
  page,
}) => {
  test.setTimeout(120_000);
  const unfaulted = watchPage(page);
  await page.goto("?mode=author&view=text");
  const text = page.locator("textarea");
  await text.fill(example().replace("title: One tube, two widths", "title: Saved and back"));
  await page.getByRole("button", { name: /^My lessons/ }).click();
  const waiting = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save as a file" }).click();
  const file = await waiting;
  expect(file.suggestedFilename()).toBe("my-lesson.md");
  await page.getByRole("button", { name: "Delete" }).click();
  await page.getByRole("button", { name: "Delete it" }).click();
  // One to begin with stands in its place.
  await expect(text).toHaveValue(/id: new-lesson/);
  await page.keyboard.press("Escape");
  await page.locator("input[type=file]").setInputFiles(
    await file.path().then((path) => ({
      name: "my-lesson.md",
      mimeType: "text/markdown",
      buffer: readFileSync(path),
    })),
  );
  await expect(text).toHaveValue(/title: Saved and back/);
  unfaulted();
});
