/** The hall's answers by raised hands: counted in one window, shown in the other beside the model's. */
import { expect } from "@playwright/test";
import { test } from "./resting-field.ts";

test("hands counted by keys appear on the stage when shown, survive its reload, and stand beside the model's answer", async ({
  context,
  page: room,
}) => {
  await room.goto("?mode=lecture&lesson=01-two-jobs&step=4");
  await expect(room.locator(".room-words h2")).toBeVisible({ timeout: 30_000 });
  const opened = context.waitForEvent("page");
  await room.keyboard.press("s");
  const speaker = await opened;
  // The window has keys of its own before a question comes.
  await expect(speaker.locator(".speaker-head")).toContainText("Step 4 of", { timeout: 30_000 });
  await speaker.keyboard.press("PageDown");
  await expect(room.locator(".room-words .answer").first()).toBeVisible({ timeout: 30_000 });
  await expect(speaker.locator(".hall-desk")).toBeVisible({ timeout: 30_000 });
  // A number that is typed is no hand.
  const typing = speaker.locator(".number-field input, input[type=text]").first();
  await typing.focus();
  await speaker.keyboard.press("1");
  await typing.blur();
  for (const key of ["1", "2", "2", "3", "u"]) await speaker.keyboard.press(key);
  const chart = room.locator(".hall-chart");
  const counts = () =>
    chart.locator("li").evaluateAll((bars) => bars.map((bar) => (bar as HTMLElement).dataset.count));
  await expect(speaker.locator(".hall-desk output")).toHaveText(["1", "2", "0"]);
  await expect(chart).toHaveCount(0);
  await speaker.getByRole("button", { name: "Lock the answers" }).click();
  await speaker.keyboard.press("1");
  await speaker.getByRole("button", { name: "Show the answers" }).click();
  await expect.poll(counts).toEqual(["1", "2", "0"]);
  await expect(chart.locator(".model")).toHaveCount(0);
  await room.reload();
  await expect.poll(counts).toEqual(["1", "2", "0"]);
  await speaker.keyboard.press("PageDown");
  await expect(chart.locator(".model")).toHaveAttribute("data-choice", "lower");
});
