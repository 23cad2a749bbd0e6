/**
 * Frames in a browser without a graphics chip, as the processor draws them and by a chip's way, imitated: tracers moved, our
 * own drawing, and the wait for the pixels, apart, as medians of one run. `LUNGWARD_LONG=1 npx playwright test bench/frames`.
 */
import { expect, test } from "@playwright/test";
import { build } from "vite";
import type { Bench, Measured } from "./frames-page.ts";

test.use({ reducedMotion: "no-preference" });

const SIZES = [
  [1280, 720],
  [1920, 1080],
] as const;
const COUNTS = [5_000, 10_000, 20_000, 50_000] as const;
const TURNS = 15;

const WAYS = ["canvas", "webgl"] as const;

type Held = Window & {
  frames(host: HTMLElement, way: (typeof WAYS)[number]): Promise<Bench>;
  held: Bench;
};

async function bundle(): Promise<string> {
  const made = await build({
    configFile: false,
    logLevel: "error",
    define: { __LUNGWARD_VERSION__: '"bench"', __SINGLE_FILE__: "false" },
    build: {
      write: false,
      target: "es2022",
      minify: false,
      lib: { entry: "tests/bench/frames-page.ts", formats: ["iife"], name: "bench" },
    },
  });
  const [first] = Array.isArray(made) ? made : [made];
  if (!first || !("output" in first)) throw new Error("nothing was built");
  return first.output[0].code;
}

test("frames of 5,000 to 50,000 tracers: the work grows no faster than their number", async ({ page }) => {
  test.skip(!process.env.LUNGWARD_LONG, "a bench, not a guard: some minutes");
  test.setTimeout(400_000);
  const code = await bundle();
  const rows: Record<string, Measured> = {};
  const row = (count: number, [width, height]: (typeof SIZES)[number], way: string) =>
    `${count} at ${width} x ${height}, ${way}`;
  for (const [size, way] of SIZES.flatMap((size) => WAYS.map((way) => [size, way] as const))) {
    const [width, height] = size;
    await page.setViewportSize({ width, height });
    await page.goto("about:blank");
    await page.setContent(
      '<body style="margin:0"><div id="host" style="position:fixed;inset:0"></div></body>',
    );
    await page.addScriptTag({ content: code });
    await page.evaluate(async (way) => {
      const held = window as unknown as Held;
      held.held = await held.frames(document.querySelector<HTMLElement>("#host")!, way);
    }, way);
    for (const count of COUNTS)
      rows[row(count, size, way)] = await page.evaluate(
        ([tracers, turns]) => {
          const { held } = window as unknown as Held;
          held.prepare(tracers);
          return held.measure(turns);
        },
        [count, TURNS] as const,
      );
  }
  console.table(rows);
  for (const size of SIZES) {
    for (const way of WAYS) {
      const [few, many] = [rows[row(COUNTS[0], size, way)]!, rows[row(COUNTS[3], size, way)]!];
      // Ten times as many; twice that leaves room for other work on the machine.
      expect(many.advection).toBeLessThan(20 * few.advection);
      expect(many.draw).toBeLessThan(20 * few.draw);
    }
    // What the processor draws is there sooner than what an imitated chip draws.
    const [own, imitated] = WAYS.map((way) => rows[row(COUNTS[1], size, way)]!);
    expect(own!.draw + own!.painted).toBeLessThan(imitated!.draw + imitated!.painted);
  }
});
