import { expect, type Page } from "@playwright/test";
import { expectAccessible, watchPage } from "./page.ts";
import { test } from "./resting-field.ts";

const kept = (page: Page) =>
  page.evaluate(() => JSON.parse(localStorage.getItem("lungward.progress") ?? "null"));

test("U26 a number is typed, a usual mistake is named, the right one opens the worked solution", async ({
  page,
}) => {
  test.setTimeout(180_000);
  const unfaulted = watchPage(page);
  await page.goto("?mode=study&lesson=15-numbers&step=power&language=en");
  await page.locator("input[value=technical]").check({ timeout: 60_000 });
  const field = page.locator(".typed input");
  const check = page.getByRole("button", { name: "Check" });
  await field.fill("about 12");
  await check.click();
  await expect(page.locator(".question [role=alert]")).toContainText("about 12");
  await expect(field).toHaveAttribute("aria-invalid", "true");
  await expectAccessible(page);
  // The numbers of the question, multiplied without their units.
  const numbers = page.locator(".question label .live-number");
  await expect(numbers.first()).toHaveText(/\d/, { timeout: 60_000 });
  const [flow, from, to] = (await numbers.allTextContents()).map((text) => Number.parseFloat(text));
  await field.fill(((from! - to!) * flow!).toFixed(1).replace(".", ","));
  await check.click();
  await expect(page.locator(".feedback-verdict")).toHaveText("The units were not converted");
  await expect(page.locator(".solution")).not.toHaveAttribute("open");
  await field.fill((2.222 * (from! - to!) * flow!).toFixed(1));
  await check.click();
  await expect(page.locator(".feedback-verdict")).toHaveText("That is the number.");
  await expect(page.locator(".solution li").last()).toContainText("mW");
  await expect(page.locator(".solution")).toHaveAttribute("open");
  const attempt = (await kept(page)).lessons["15-numbers"].answers.power;
  expect(attempt).toMatchObject({ right: false, tries: 2, typed: { mistake: "unit" } });
  unfaulted();
});

test("the course quiz is reached from the study page, gives one try, and goes on where it was left", async ({
  page,
}) => {
  test.setTimeout(180_000);
  const unfaulted = watchPage(page);
  await page.goto("?mode=study&language=en");
  await page.getByRole("link", { name: "Open the quiz" }).click({ timeout: 60_000 });
  const place = page.locator(".position");
  await expect(place).toHaveText("Question 1 of 30", { timeout: 60_000 });
  const question = page.locator(".question");
  if (await question.locator(".typed input").count()) await question.locator(".typed input").fill("1");
  else if (await question.locator("input[type=radio]").count())
    await question.locator("input[type=radio]").first().check({ force: true });
  await question.getByRole("button", { name: "Check" }).click();
  await expect(page.locator(".feedback")).toBeVisible({ timeout: 60_000 });
  await expectAccessible(page);
  await page.locator(".quiz-next").click();
  await expect(place).toHaveText("Question 2 of 30");
  expect(Object.keys((await kept(page)).quiz.given)).toHaveLength(1);
  await page.reload();
  await expect(place).toHaveText("Question 2 of 30", { timeout: 60_000 });
  unfaulted();
});

test("a model answer opens once something is written, and the writing is kept", async ({ page }) => {
  test.setTimeout(120_000);
  await page.goto("?mode=study&lesson=07-without-a-pump&step=net-ask&language=en");
  await page.locator("input[value=technical]").check({ timeout: 60_000 });
  const compare = page.getByRole("button", { name: "Compare with a model answer" });
  await expect(compare).toHaveAttribute("aria-disabled", "true");
  await page.locator(".question textarea").fill("Much passes in one phase.");
  await compare.click();
  await expect(page.locator(".lesson-words")).toContainText("One counted how much of the flow");
  const { written } = (await kept(page)).lessons["07-without-a-pump"];
  expect(Object.values(written)).toEqual(["Much passes in one phase."]);
});
