/** The form beside the text: two views of one lesson. */
import { expect } from "@playwright/test";
import { expectAccessible, watchPage } from "./page.ts";
import { test } from "./resting-field.ts";

test("a lesson is written in the form: each field changes its own line, and the picture is taken as it is seen", async ({
  page,
}) => {
  test.setTimeout(120_000);
  const unfaulted = watchPage(page);
  await page.goto("?mode=author&view=text");
  const text = page.locator("textarea");
  await expect(text).toBeVisible({ timeout: 60_000 });
  const before = (await text.inputValue()).split("\n");
  await page.getByRole("radio", { name: "Form" }).check();
  await page.getByLabel("Title", { exact: true }).fill("Wide: and narrow");
  await page.locator('.lesson-form input[type="file"]').setInputFiles({
    name: "Kink.svg",
    mimeType: "image/svg+xml",
    buffer: Buffer.from(
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 80" onload="x()"><script>x()</script><path d="M5 40H195"/></svg>',
    ),
  });
  const figure = page.locator(".form-figures img");
  await expect(figure).toHaveAttribute("src", /^data:image\/svg/);
  const drawn = atob((await figure.getAttribute("src"))!.split(",")[1]!);
  expect(drawn).toMatch(/viewBox="0 0 200 80".*<path d="M5 40H195"/);
  expect(drawn).not.toMatch(/script|onload/);
  await page.getByRole("button", { name: /^2\. A narrow tube/ }).click();
  await page.getByLabel("Notes for the speaker").fill("Wait for an answer.");
  await page.getByRole("button", { name: "Adjust the picture …" }).click();
  await page.getByRole("textbox", { name: "Conduit diameter" }).fill("9");
  await page.getByRole("textbox", { name: "Conduit diameter" }).press("Enter");
  await page.getByRole("button", { name: "Use what I see" }).click();
  await page.getByRole("radio", { name: "Text" }).check();
  const after = (await text.inputValue()).split("\n");
  expect(after.filter((line) => !before.includes(line))).toEqual([
    'title: "Wide: and narrow"',
    "set: { conduitDiameter: 9 }",
    "### notes",
    "Wait for an answer.",
  ]);
  await page.getByRole("radio", { name: "Form" }).check();
  await page.getByRole("button", { name: "Add a step" }).click();
  const faulty = page.locator('.lesson-form [aria-invalid="true"]');
  await expect(faulty).toHaveCount(1);
  await page.getByLabel("Title of the step").fill("And now");
  await page.getByLabel("Kind of question").selectOption("Choose an answer");
  await expect(faulty).toHaveCount(5);
  await page.locator(".author-faults li button").first().click();
  await expect(page.getByLabel("What is asked")).toBeFocused();
  await expectAccessible(page);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(faulty).toHaveCount(0);
  // A phone shows the form over all of the picture, or the picture.
  await page.setViewportSize({ width: 390, height: 844 });
  const high = async (what: string) => (await page.locator(what).boundingBox())!.height;
  expect(await high(".lesson-form")).toBeGreaterThan(0.5 * 844);
  await page.getByRole("radio", { name: "Picture" }).check({ force: true });
  expect(await high(".author > .clear")).toBeGreaterThan(0.35 * 844);
  await expect(page.locator(".author-preview")).toBeVisible();
  await expectAccessible(page);
  await page.getByRole("radio", { name: "Form" }).check({ force: true });
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(page.getByLabel("Title of the step")).toHaveValue("");
  unfaulted();
});
