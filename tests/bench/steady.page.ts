/**
 * A steady minute of the pathway beside its field workers, as a computer without a graphics chip shows it: how long the gaps
 * between frames are, in those of an empty page of the same run. `LUNGWARD_LONG=1 npx playwright test bench/steady`; with
 * `LUNGWARD_PANES=3` of so many pathways side by side, `LUNGWARD_SPEED=0.5` at so much of real speed.
 */
import { expect, type Page, test } from "@playwright/test";

test.use({ reducedMotion: "no-preference" });

const SIZES = [
  [1280, 720],
  [1920, 1080],
] as const;
/** s */
const LENGTH = 60;
/** In gaps of an empty page, 60 a second: 50 ms. */
const LONGEST = 3;
/** The same for the mean gap where pathways stand side by side: 30 frames a second. */
const MEAN_BESIDE = 2;

const PANES = Number(process.env.LUNGWARD_PANES ?? 1);
const STATE = ["1", "tatriopulmonary", `r${process.env.LUNGWARD_SPEED ?? 1}`]
  .concat(["wextracardiac", "wlateral-tunnel"].slice(0, PANES - 1))
  .join("~");

/** ms between frames over so many seconds, in ascending order */
const gapsOf = (page: Page, seconds: number): Promise<number[]> =>
  page.evaluate(
    (length) =>
      new Promise<number[]>((done) => {
        const gaps: number[] = [];
        const end = performance.now() + 1000 * length;
        let last = Number.NaN;
        const frame = () => {
          const now = performance.now();
          if (!Number.isNaN(last)) gaps.push(now - last);
          last = now;
          if (now < end) requestAnimationFrame(frame);
          else done(gaps.sort((a, b) => a - b));
        };
        requestAnimationFrame(frame);
      }),
    seconds,
  );

test("a steady minute of the pathway leaves no frame out for longer than three of an empty page", async ({
  page,
}) => {
  test.skip(!process.env.LUNGWARD_LONG, "a bench, not a guard: some minutes");
  test.setTimeout(400_000);
  await page.goto("about:blank");
  const empty = await gapsOf(page, 3);
  const beat = empty[empty.length >> 1]!;
  const rows: Record<string, Record<string, number>> = {};
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height });
    await page.goto(`?mode=bench&state=${STATE}`);
    await expect(page.locator("#scene-reading")).toContainText(/eddies/, { timeout: 60_000 });
    // The page has been built up, and the flow has come to its repeat.
    await page.waitForTimeout(20_000);
    const gaps = await gapsOf(page, LENGTH);
    const at = (part: number) => Number(gaps[Math.floor(part * (gaps.length - 1))]!.toFixed(1));
    rows[`${width} x ${height}`] = {
      "a second": Number((gaps.length / LENGTH).toFixed(1)),
      median: at(0.5),
      "99 %": at(0.99),
      longest: at(1),
      "over 50 ms": gaps.filter((gap) => gap > 50).length,
    };
  }
  console.table(rows);
  for (const row of Object.values(rows)) {
    if (PANES > 1) expect(1000 / row["a second"]!).toBeLessThan(MEAN_BESIDE * beat + 0.1);
    else expect(row.longest).toBeLessThan(LONGEST * beat);
  }
});
