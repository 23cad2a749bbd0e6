import { readFileSync } from "node:fs";
import { expect, type Page, test } from "@playwright/test";
import { unzipSync } from "fflate";
import { setTechnical, t } from "../../src/i18n/index.ts";
import { expectAccessible, figure } from "./page.ts";
import { test as resting } from "./resting-field.ts";

const open = async (page: Page) => {
  await page.goto("?mode=bench");
  await figure(page, "pressureDrop");
  await page.locator(".toolbar [data-item=take]").click();
};

async function saved(page: Page, item: string): Promise<{ name: string; bytes: Buffer }> {
  const coming = page.waitForEvent("download", { timeout: 60_000 });
  await page.locator(`.panel [data-item=${item}]`).click();
  const download = await coming;
  return { name: download.suggestedFilename(), bytes: readFileSync((await download.path())!) };
}

resting("a still is a PNG of the size asked for, up to 4K", async ({ page }) => {
  test.setTimeout(120_000);
  await open(page);
  await page.locator("#stage canvas").waitFor();
  await page.getByRole("radio", { name: "3840" }).check();
  const { name, bytes } = await saved(page, "still");
  expect(name).toBe("lungward.png");
  expect(bytes.subarray(1, 4).toString()).toBe("PNG");
  // IHDR: width and height (PNG specification, 11.2.2)
  expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([3840, 2160]);
});

test("a drawing is an SVG whose words are text and whose walls are shapes, as the picture shows them, with version, link and cautions", async ({
  page,
}) => {
  test.setTimeout(120_000);
  // As the bench names parts.
  setTechnical(true);
  await page.goto("?mode=bench&state=1~tatriopulmonary~r1");
  await figure(page, "pressureDrop");
  await page.locator("#stage canvas").waitFor();
  await page.locator(".toolbar [data-item=take]").click();
  await page.waitForTimeout(3000);
  const { name, bytes } = await saved(page, "drawing");
  expect(name).toBe("lungward.svg");
  // At the drawing's own size, in which plates find the same places.
  await page.getByRole("radio", { name: "1280" }).check();
  const still = await saved(page, "still");
  const found = await page.evaluate(
    async ([svg, png]) => {
      const file = new DOMParser().parseFromString(svg, "image/svg+xml");
      const counted = async (address: string) => {
        const image = new Image();
        image.src = address;
        await image.decode();
        const canvas = document.createElement("canvas");
        [canvas.width, canvas.height] = [1280, 720];
        const ink = canvas.getContext("2d")!;
        ink.drawImage(image, 0, 0, 1280, 720);
        const { data } = ink.getImageData(0, 0, 1280, 598);
        // A coarse picture: mean of red, green and blue in blocks of 32 px.
        const sums = new Float64Array(40 * 19);
        for (let k = 0; k < data.length; k += 4) {
          const [x, y] = [(k / 4) % 1280, Math.floor(k / 4 / 1280)];
          sums[(y >> 5) * 40 + (x >> 5)]! += (data[k]! + data[k + 1]! + data[k + 2]!) / 3 / 1024;
        }
        return [...sums];
      };
      return {
        wrong: file.querySelector("parsererror")?.textContent ?? null,
        words: [...file.querySelectorAll("text")].map((text) => text.textContent).join("\n"),
        reported: file.querySelector("desc")?.textContent ?? "",
        data: JSON.parse(file.querySelector("metadata")?.textContent ?? "null") as Record<string, string>,
        shapes: file.querySelectorAll("path").length,
        outside: [...file.querySelectorAll("[href]")]
          .map((element) => element.getAttribute("href")!.slice(0, 5))
          .filter((start) => !start.startsWith("#") && start !== "data:"),
        drawn: await counted(URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }))),
        shot: await counted(`data:image/png;base64,${png}`),
      };
    },
    [bytes.toString("utf8"), still.bytes.toString("base64")] as const,
  );
  expect(found.wrong).toBeNull();
  for (const word of [
    "Chamber",
    t("place.leftPulmonaryArtery"),
    "liver and gut",
    "Pressure drop along the pathway",
  ])
    expect(found.words).toContain(word);
  expect(found.words).toMatch(/not for diagnosis/);
  expect(found.reported).toMatch(/mmHg/);
  expect(found.data.link).toContain("tatriopulmonary");
  expect(found.data.version).toMatch(/^\d/);
  expect(found.shapes).toBeGreaterThan(50);
  expect(found.outside).toEqual([]);
  // Block by block it is as bright as the still; the flow may settle between the two.
  const unlike = found.drawn.filter((value, k) => Math.abs(value - found.shot[k]!) > 24);
  expect(unlike.length).toBeLessThan(0.04 * found.drawn.length);
});

resting(
  "U29 the table carries the numbers shown, the settings, the link and six cautions",
  async ({ page }) => {
    await open(page);
    const drop = await figure(page, "pressureDrop");
    const text = (await saved(page, "table")).bytes.toString("utf8");
    const rows = text.trimEnd().split("\r\n");
    const row = rows.find((each) => each.includes("Pressure drop along the pathway"))!;
    const [value, low, high] = row.split(",").slice(2, 5).map(Number);
    expect(value).toBe(drop);
    expect(low).toBeLessThan(drop);
    expect(high).toBeGreaterThan(drop);
    expect(row).toContain(",mmHg,mm[Hg]");
    expect(rows.filter((row) => row.startsWith("caution,"))).toHaveLength(6);
    expect(text).toContain("mode=bench");
    expect(rows.filter((row) => row.startsWith("settings,")).length).toBeGreaterThan(20);
  },
);

resting("a clip is recorded, and recording can be cancelled", async ({ page }) => {
  test.setTimeout(120_000);
  await page.emulateMedia({ reducedMotion: "no-preference" });
  await page.setViewportSize({ width: 800, height: 600 });
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

resting(
  "U19 the page for families fits one A4 and one Letter page, with picture, numbers, cautions, version",
  async ({ page }) => {
    test.setTimeout(120_000);
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
    for (const language of ["es", "de", "fr"]) {
      await page.goto(`?mode=bench&language=${language}`);
      await page.locator(".toolbar [data-item=take]").click();
      await page.locator(".panel [data-item=handout]").click();
      await expect(page.locator(".sheet img")).toBeVisible({ timeout: 30_000 });
      const pdf = (await page.pdf({ format: "Letter" })).toString("latin1");
      expect(pdf.match(/\/Type\s*\/Page[^s]/g), language).toHaveLength(1);
    }
  },
);

resting("the browser's own print puts that page on paper in place of the bench", async ({ page }) => {
  test.setTimeout(120_000);
  await page.goto("?mode=bench");
  await figure(page, "pressureDrop");
  await page.locator("#stage canvas").waitFor();
  // From the browser's menu.
  const pdf = (await page.pdf({ format: "A4" })).toString("latin1");
  expect(pdf.match(/\/Type\s*\/Page[^s]/g)).toHaveLength(1);
  expect(pdf).toMatch(/\/Subtype\s*\/Image/);
  await expect(page.locator(".handout")).toHaveCount(0);
  // By keys.
  await page.evaluate(() => {
    window.print = () => {
      const count = (what: string) => document.querySelectorAll(`.sheet ${what}`).length;
      document.body.dataset.printed = [count("img"), count("[data-caution]")].join();
      dispatchEvent(new Event("afterprint"));
    };
  });
  await page.keyboard.press("Control+p");
  await expect(page.locator("body")).toHaveAttribute("data-printed", "1,6", { timeout: 60_000 });
  await expect(page.locator(".handout")).toHaveCount(0);
});

test("U19 a lesson's page for families fits one A4 and one Letter page, with its pictures, words, cautions", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await page.goto("?mode=study&lesson=02-steps&view=handout");
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
  await page.getByText("Choose steps and pictures").click();
  await page
    .getByRole("checkbox", { name: /^With picture/ })
    .last()
    .uncheck();
  await expect(page.locator(".sheet-pictures img")).toHaveCount(3);
  await expect(page.locator(".sheet-pictures figure")).toHaveCount(4);
  await page.locator(".handout-steps li").first().getByRole("checkbox").first().uncheck();
  await expect(page.locator(".sheet-pictures figure")).toHaveCount(3);
  await expect(page.locator(".sheet [data-caution]")).toHaveCount(6);
  await expectAccessible(page);
  await page.reload();
  await expect(page.getByRole("textbox", { name: "From your own team" })).toHaveValue(/000 000/);
});

test("a lesson is taken along as slides, as pages and as pictures with words, and can be stopped", async ({
  page,
}) => {
  test.setTimeout(180_000);
  await page.addInitScript(() => {
    window.print = () => document.body.setAttribute("data-printed", "");
  });
  await page.goto("?mode=lecture&list=03-pathways*job.chamber");
  const count = 2;
  await expect(page.locator(".builder-list ol li")).toHaveCount(count, { timeout: 30_000 });
  const deck = page.locator("[data-deck]");
  const make = (kind: string) => deck.locator(`[data-item=${kind}]`).click();
  const files = async (kind: string) => {
    const coming = page.waitForEvent("download", { timeout: 60_000 });
    await make(kind);
    const file = await coming;
    return [file.suggestedFilename(), unzipSync(readFileSync(await file.path()))] as const;
  };

  await make("pptx");
  await make("cancel");
  await expect(deck.locator("[data-item=pptx]")).toBeVisible({ timeout: 20_000 });

  const [name, slides] = await files("pptx");
  expect(name).toMatch(/^lungward-[a-z0-9-]+-en-\d{4}-\d\d-\d\d\.pptx$/);
  expect(Object.keys(slides).filter((each) => /slides\/slide\d+\.xml$/.test(each))).toHaveLength(count);
  expect(Buffer.from(slides["ppt/slides/slide1.xml"]!).toString()).toContain("mmHg");

  await make("pdf");
  await expect(page.locator("body[data-printed]")).toBeVisible({ timeout: 60_000 });
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
  expect(pdf.match(/\/Type\s*\/Page[^s]/g)).toHaveLength(count);
  expect(pdf).toContain("/Font");
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  await expect(page.locator(".deck-pages")).toHaveCount(0);

  const [, stills] = await files("stills");
  const names = Object.keys(stills);
  expect(names.filter((each) => /^\d{3}-[\w-]+\.png$/.test(each))).toHaveLength(count);
  expect(names.filter((each) => /^\d{3}-[\w-]+\.txt$/.test(each))).toHaveLength(count);
});
