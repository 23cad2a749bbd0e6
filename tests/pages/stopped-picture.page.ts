/** A fault in the drawing itself, made on purpose. */
import { expect, test } from "@playwright/test";

// The next test draws without it.
test.use({ reuseContext: false });

test("a picture whose drawing fails is told, and is no longer told once it is drawn again", async ({
  page,
}) => {
  await page.addInitScript(() => {
    const seen = { fails: false };
    const { setTransform } = CanvasRenderingContext2D.prototype;
    Object.assign(window, { seen });
    CanvasRenderingContext2D.prototype.setTransform = function (...to: []) {
      if (seen.fails && this.canvas.isConnected) throw new Error("a fault in drawing");
      setTransform.apply(this, to);
    };
  });
  await page.goto("?mode=bench&draw=canvas&state=1");
  await expect(page.locator("#scene-reading")).toHaveText(/.{40}/, { timeout: 60_000 });
  const told = page.getByText("The picture has stopped");
  await page.evaluate("seen.fails = true");
  await expect(told).toBeVisible();
  await expect(page.getByRole("button", { name: "Load the page again" })).toBeVisible();
  await page.evaluate("seen.fails = false");
  await expect(told).toHaveCount(0);
});
