import { expect, type Page } from "@playwright/test";
import { expectAccessible } from "./page.ts";
import { test } from "./resting-field.ts";

const begin = async (page: Page) => {
  await page.goto("?mode=kiosk");
  await page.locator(".kiosk-languages button").first().click();
  await page.locator(".kiosk-topics main > ul button").first().click();
  await expect(page.locator(".kiosk-lesson")).toBeVisible();
};

const kept = (page: Page) =>
  page.evaluate(async () => ({
    local: { ...localStorage },
    session: { ...sessionStorage },
    cookies: document.cookie,
    databases: (await indexedDB.databases()).length,
  }));

test("U16 U17 warns for 20 s, any touch keeps the place, and the start keeps nothing of the visit", async ({
  page,
}) => {
  await page.clock.install();
  await begin(page);
  await page.clock.fastForward(61_000);
  const warning = page.getByRole("alertdialog");
  await expect(warning).toContainText(/Back to the start in (1\d|20) seconds/);
  await page.mouse.click(5, 500);
  await expect(warning).toHaveCount(0);
  await expect(page.locator(".kiosk-lesson")).toBeVisible();
  // With the clock in our hands no frame may tell that a button stands still: it is pressed without waiting for that.
  await page.getByRole("button", { name: "Larger text" }).dispatchEvent("click");
  await expect(page.getByRole("button", { name: "Smaller text" })).toBeVisible();
  await page.clock.fastForward(85_000);
  await expect(page.locator(".kiosk-welcome")).toBeVisible();
  await page.locator(".kiosk-languages button").first().dispatchEvent("click");
  await expect(page.getByRole("button", { name: "Larger text" })).toBeVisible();
  expect(await kept(page)).toEqual({ local: {}, session: {}, cookies: "", databases: 0 });
});

test("U5 U10 every target is at least 60 px, every word 24 px, without violations", async ({ page }) => {
  test.setTimeout(120_000);
  await page.setViewportSize({ width: 1080, height: 1920 });
  const measure = () =>
    page.evaluate(() => ({
      small: [...document.querySelectorAll<HTMLElement>(".kiosk button")]
        .filter((button) => button.offsetParent)
        .map((button) => ({ text: button.textContent, box: button.getBoundingClientRect() }))
        .filter(({ box }) => box.width < 60 || box.height < 60)
        .map(({ text }) => text),
      tiny: [...document.querySelectorAll<HTMLElement>(".kiosk *")]
        .filter(
          (element) => element.offsetParent && element.children.length === 0 && element.textContent?.trim(),
        )
        .filter((element) => Number.parseFloat(getComputedStyle(element).fontSize) < 24)
        .map((element) => element.textContent),
    }));
  await page.goto("?mode=kiosk");
  await expect(page.locator(".kiosk-languages button").first()).toBeVisible();
  expect(await measure()).toEqual({ small: [], tiny: [] });
  await expectAccessible(page);
  await page.locator(".kiosk-languages button").first().click();
  expect(await measure()).toEqual({ small: [], tiny: [] });
  await expectAccessible(page);
  await page.locator(".kiosk-topics main > ul button").first().click();
  await expect(page.locator(".kiosk-lesson")).toBeVisible();
  expect(await measure()).toEqual({ small: [], tiny: [] });
  await expectAccessible(page);
  await page.getByRole("button", { name: "Try it" }).click();
  expect(await measure()).toEqual({ small: [], tiny: [] });
});

test("U15 in the larger-words mode every capital is 0.0122 of the viewing distance", async ({ page }) => {
  await page.setViewportSize({ width: 1080, height: 1920 });
  await begin(page);
  await page.getByRole("button", { name: "Larger text" }).click();
  // A capital is 0.67 of the face's size; 24 inch, seen from 600 mm, are the standard settings.
  const needed = (0.0122 * 600) / ((24 * 25.4) / Math.hypot(1080, 1920)) / 0.67;
  const small = () =>
    page.evaluate(
      (least) =>
        [...document.querySelectorAll<HTMLElement>(".kiosk-words :not(.unseen), .kiosk-bar *")]
          .filter(
            ({ offsetParent, children, textContent }) =>
              offsetParent && !children.length && textContent?.trim(),
          )
          .filter((element) => Number.parseFloat(getComputedStyle(element).fontSize) < least)
          .map(({ textContent }) => textContent),
      needed,
    );
  expect(await small()).toEqual([]);
  await page.getByRole("button", { name: "Try it" }).click();
  expect(await small()).toEqual([]);
  const cut = await page.evaluate(
    () =>
      [...document.querySelectorAll<HTMLElement>(".kiosk button")].filter(
        ({ scrollWidth, clientWidth }) => scrollWidth > clientWidth + 2,
      ).length,
  );
  expect(cut).toBe(0);
});

test("read aloud speaks the words on the screen with the device's own voice, and stops", async ({ page }) => {
  await page.addInitScript(() => {
    const spoken: string[] = [];
    Object.assign(window, { spoken });
    const voices = [
      { lang: "en-GB", localService: true, name: "own" },
      { lang: "en-GB", localService: false, name: "from the network" },
    ];
    Object.defineProperty(window, "SpeechSynthesisUtterance", {
      value: class {
        voice: unknown;
        constructor(readonly text: string) {}
      },
    });
    Object.defineProperty(window, "speechSynthesis", {
      value: Object.assign(new EventTarget(), {
        getVoices: () => voices,
        speak: ({ text, voice }: { text: string; voice: unknown }) =>
          spoken.push(text, String(voice === voices[0])),
        cancel: () => spoken.push("silence"),
      }),
    });
  });
  const spoken = () => page.evaluate(() => (window as unknown as { spoken: string[] }).spoken);
  await begin(page);
  await page.getByRole("button", { name: "Read aloud" }).click();
  const said = await spoken();
  expect(said.at(-1)).toBe("true");
  expect(said.at(-2)).toContain((await page.locator(".kiosk-words .script p").first().textContent())!);
  // A second touch within 300 ms counts as a double tap.
  await page.waitForTimeout(400);
  await page.getByRole("button", { name: "Stop reading" }).click();
  await expect.poll(async () => (await spoken()).at(-1)).toBe("silence");
  await page.goto("?mode=study&lesson=02-steps");
  await page.getByRole("button", { name: "Read aloud" }).click();
  expect((await spoken()).at(-2)).toContain(
    (await page.locator(".lesson-words .script p").first().textContent())!,
  );
});

test("twenty gestures and keys do not leave the kiosk", async ({ page, context }) => {
  await begin(page);
  const url = () => new URL(page.url()).searchParams.get("mode");
  for (const key of [
    "F1",
    "F3",
    "F5",
    "F6",
    "F11",
    "F12",
    "Alt+ArrowLeft",
    "Alt+ArrowRight",
    "Control+p",
    "Control+s",
    "Control+o",
    "Control+f",
    "Control+r",
    "Control+u",
    "Control+Equal",
    "BrowserBack",
    "Escape",
    "Backspace",
  ])
    await page.keyboard.press(key).catch(() => {});
  await page.mouse.click(300, 300, { button: "right" });
  await page.mouse.dblclick(300, 500);
  await page.mouse.click(300, 300, { button: "middle" });
  await page.mouse.move(200, 300);
  await page.mouse.down();
  await page.mouse.move(700, 500, { steps: 4 });
  await page.mouse.up();
  const devtools = await context.newCDPSession(page);
  await devtools.send("Input.synthesizePinchGesture", { x: 500, y: 300, scaleFactor: 2 });
  await page.keyboard.down("Control");
  await page.mouse.wheel(0, -300);
  await page.keyboard.up("Control");
  await page.evaluate(() => {
    const files = new DataTransfer();
    files.items.add(new File(["x"], "x.html", { type: "text/html" }));
    const drop = new DragEvent("drop", { dataTransfer: files, bubbles: true, cancelable: true });
    if (document.body.dispatchEvent(drop)) location.hash = "dropped";
  });
  await page.evaluate(() => history.back());
  await page.waitForTimeout(500);
  expect(await page.evaluate(() => visualViewport?.scale)).toBe(1);
  expect(page.url()).not.toContain("dropped");
  expect(url()).toBe("kiosk");
  expect(context.pages()).toHaveLength(1);
  expect(await page.evaluate(() => getSelection()?.toString())).toBe("");
  expect(await page.locator("a[href]").count()).toBe(0);
  expect(await page.locator("input[type=file]").count()).toBe(0);
  await expect(page.locator(".kiosk-lesson")).toBeVisible();
});

test("a thrown error returns to the start, and the organiser's page lists it; counts are erased after confirmation", async ({
  page,
}) => {
  await begin(page);
  await page.evaluate(() =>
    localStorage.setItem("lungward.counts", JSON.stringify({ "2026-01-02": { "03-pathways": 4 } })),
  );
  await page.evaluate(() => {
    setTimeout(() => {
      throw new Error("made up");
    });
  });
  await expect(page.locator(".kiosk-welcome")).toBeVisible();
  const mark = await page.locator(".kiosk-mark").boundingBox();
  await page.mouse.move(mark!.x + 20, mark!.y + 20);
  await page.mouse.down();
  await page.waitForTimeout(3300);
  await page.mouse.up();
  const type = async (code: string) => {
    for (const digit of code) await page.getByRole("button", { name: digit, exact: true }).click();
    await page.getByRole("button", { name: "Enter", exact: true }).click();
  };
  await type("12468");
  await expect(page.getByRole("dialog")).toContainText("That was not the code");
  await expectAccessible(page);
  await type("2468");
  await expect(page.getByRole("heading", { name: "For the organiser" })).toBeVisible();
  await expect(page.locator(".organiser")).toContainText("made up");
  await expectAccessible(page);
  const counts = page.locator(".organiser tbody tr");
  await expect(counts).toHaveCount(1);
  await page.getByRole("button", { name: "Erase the counts" }).click();
  const dialog = page.getByRole("alertdialog", { name: "Erase the counts?" });
  await expectAccessible(page);
  await dialog.getByRole("button", { name: "Keep them" }).click();
  await expect(dialog).toHaveCount(0);
  await expect(counts).toHaveCount(1);
  await page.getByRole("button", { name: "Erase the counts" }).click();
  await dialog.getByRole("button", { name: "Erase them" }).click();
  await expect(counts).toHaveCount(0);
  expect(await page.evaluate(() => localStorage.getItem("lungward.counts"))).toBeNull();
});

for (const [width, height] of [
  [1920, 1080],
  [1280, 800],
  [1080, 1920],
] as const)
  test(`with larger text at ${width} x ${height} the picture keeps its room and a caution is in view`, async ({
    page,
  }) => {
    test.setTimeout(120_000);
    await page.setViewportSize({ width, height });
    await begin(page);
    await page.getByRole("button", { name: "Larger text" }).click();
    const steps = Number(/of (\d+)/.exec((await page.locator(".kiosk-place").textContent())!)![1]);
    let cautions = 0;
    for (let step = 1; step <= steps; step++) {
      await expect(page.locator(".kiosk-place")).toContainText(`Step ${step} of`);
      const boxes = await page.evaluate(() => {
        const box = (part: string) => document.querySelector(part)?.getBoundingClientRect().toJSON();
        return { clear: box("[data-clear]"), caution: box(".step-caution"), bar: box(".kiosk-bar") };
      });
      expect(boxes.clear.height / height, `step ${step}`).toBeGreaterThanOrEqual(0.55);
      if (boxes.caution) {
        cautions++;
        expect(boxes.caution.bottom, `step ${step}`).toBeLessThanOrEqual(boxes.bar.top);
      }
      // Two presses of one button within 0.3 s count as one.
      await page.waitForTimeout(350);
      if (step < steps) await page.getByRole("button", { name: "Next" }).click();
    }
    expect(cautions).toBeGreaterThan(0);
  });
