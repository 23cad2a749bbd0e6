/** A kiosk's day in short: simulated visitors walk at random, leave, and nothing may pile up. `LUNGWARD_LONG=1` walks for 20 minutes. */
import { type CDPSession, expect, type Page, test } from "@playwright/test";
import { seededRandom } from "../../src/sim/random.ts";
import { watchPage } from "./page.ts";

const LONG = process.env.LUNGWARD_LONG === "1";
/** s of wall clock spent walking */
const LENGTH = LONG ? 1200 : 60;
const SEED = 20_240_229;
/** Visits before the level is first read: by then each part of the page has been loaded. */
const WARM_VISITS = 2;

interface Gauge {
  /** s by which the page's clock has been moved on */
  skipped: number;
  /** ms between frames since they were last read */
  gaps: number[];
  live: Record<string, number>;
}

/** A clock that can be moved on, the gaps between frames, and counts of what the graphics context holds. */
function installGauge(): void {
  const gauge: Gauge = { skipped: 0, gaps: [], live: {} };
  Object.assign(window, { gauge });
  const real = performance.now.bind(performance);
  performance.now = () => real() + 1000 * gauge.skipped;
  let last = real();
  const frame = () => {
    const now = real();
    gauge.gaps.push(now - last);
    last = now;
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
  const context = WebGL2RenderingContext.prototype as unknown as Record<
    string,
    (...given: unknown[]) => unknown
  >;
  for (const kind of ["Texture", "Buffer", "Framebuffer", "Program", "VertexArray"]) {
    const make = context[`create${kind}`]!;
    const end = context[`delete${kind}`]!;
    gauge.live[kind] = 0;
    context[`create${kind}`] = function (...given) {
      gauge.live[kind]!++;
      return make.apply(this, given);
    };
    context[`delete${kind}`] = function (...given) {
      if (given[0]) gauge.live[kind]!--;
      return end.apply(this, given);
    };
  }
}

const skip = (page: Page, seconds: number) =>
  page.evaluate((by) => {
    (window as unknown as { gauge: Gauge }).gauge.skipped += by;
  }, seconds);

async function level(page: Page, devtools: CDPSession) {
  await devtools.send("HeapProfiler.collectGarbage");
  await devtools.send("HeapProfiler.collectGarbage");
  const { metrics } = await devtools.send("Performance.getMetrics");
  const named = Object.fromEntries(metrics.map(({ name, value }) => [name, value]));
  const { live, gaps } = await page.evaluate(() => {
    const { gauge } = window as unknown as { gauge: Gauge };
    return { live: { ...gauge.live }, gaps: gauge.gaps.splice(0) };
  });
  return {
    heap: named.JSHeapUsedSize! / 1e6,
    nodes: named.Nodes!,
    listeners: named.JSEventListeners!,
    workers: page.workers().length,
    graphics: Object.values(live).reduce((sum, count) => sum + count, 0),
    gaps: gaps.sort((a, b) => a - b),
  };
}

test("a kiosk's visitors come and go, and heap, graphics objects, workers and listeners stay level", async ({
  page,
}) => {
  test.setTimeout((LENGTH + 240) * 1000);
  const sound = watchPage(page);
  await page.addInitScript(installGauge);
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Performance.enable");
  await page.goto("?setting=kiosk");
  const random = seededRandom(SEED);
  const press = async (selector: string) => {
    const buttons = page.locator(selector);
    await buttons
      .first()
      .waitFor({ timeout: 10_000 })
      .catch(() => {});
    const count = await buttons.count();
    if (count > 0)
      await buttons
        .nth(Math.floor(random() * count))
        .click({ timeout: 5000 })
        .catch(() => {});
  };
  const welcome = page.locator(".kiosk-welcome");
  const visit = async () => {
    await expect(welcome).toBeVisible({ timeout: 60_000 });
    await press(".kiosk-languages button");
    await press(".kiosk-topics main > ul button");
    const acts = 2 + Math.floor(random() * 5);
    for (let act = 0; act < acts; act++) {
      await press(random() < 0.5 ? ".kiosk-bar .main" : ".kiosk button");
      await skip(page, 5 + 20 * random());
    }
    // Left standing: the warning, then the start.
    for (let wait = 0; wait < 8 && !(await welcome.isVisible()); wait++) {
      await skip(page, 45);
      await page.waitForTimeout(400);
    }
  };
  for (let warm = 0; warm < WARM_VISITS; warm++) await visit();
  const first = await level(page, devtools);
  const began = Date.now();
  let visits = 0;
  while (Date.now() - began < LENGTH * 1000) {
    await visit();
    visits++;
  }
  await expect(welcome).toBeVisible();
  await page.waitForTimeout(1000);
  const last = await level(page, devtools);
  const hours = (await page.evaluate(() => performance.now())) / 3.6e6;
  const at = (part: number) => last.gaps[Math.floor(part * (last.gaps.length - 1))]!.toFixed(0);
  const told = ({ heap, nodes, listeners, workers, graphics }: typeof first) =>
    `heap ${heap.toFixed(1)} MB, nodes ${nodes}, listeners ${listeners}, workers ${workers}, graphics objects ${graphics}`;
  console.log(
    `${visits} visits, ${hours.toFixed(1)} h on the page's clock\nfirst: ${told(first)}\nlast:  ${told(last)}\nframe gap, ms: median ${at(0.5)}, 99 % ${at(0.99)}, longest ${at(1)}; over 250: ${last.gaps.filter((gap) => gap > 250).length} of ${last.gaps.length}`,
  );
  expect(visits).toBeGreaterThan(0);
  expect(last.heap).toBeLessThan(first.heap * 1.3 + 6);
  expect(last.workers).toBeLessThanOrEqual(first.workers);
  expect(last.listeners).toBeLessThan(first.listeners * 1.5 + 50);
  expect(last.graphics).toBeLessThan(first.graphics * 1.5 + 50);
  sound();
});
