/** A kiosk's day in short: simulated visitors walk at random, leave, and nothing may pile up. `npm run soak` walks for 20 minutes. */
import { mkdirSync, writeFileSync } from "node:fs";
import { type CDPSession, expect, type Page, test } from "@playwright/test";
import { WAYS } from "../../scripts/docs/soak.ts";
import { seededRandom } from "../../src/sim/random.ts";
import { watchPage } from "./page.ts";
import { restFields } from "./resting-field.ts";

// What piles up is counted from nothing.
test.use({ reuseContext: false });

const LONG = process.env.LUNGWARD_LONG === "1";
/** s of wall clock spent walking: 20 minutes, or for the short walk only its two visits */
const LENGTH = LONG ? 1200 : 0;
const MIN_VISITS = 2;
/** s on the page's clock in one of the wall's: four hours in twenty minutes */
const PACE = 12;
const SEED = 20_240_229;
/** Visits before the level is first read: by then each part of the page has been loaded. */
const WARM_VISITS = LONG ? 4 : 1;
/** ms */
const LONGEST_GAP = 250;

interface Gauge {
  /** s by which the page's clock has been moved on */
  skipped: number;
  /** ms from one frame to the next, and how much of it the page's own scripts took: in turn, in a store that does not grow */
  readonly gaps: Float32Array;
  frames: number;
  /** ms of scripts in long frames by what called them */
  callers: Record<string, number>;
  /** What the graphics contexts that are still of use hold. */
  graphics(): { readonly contexts: number; readonly objects: number };
  /** Leaves out the frame in which the test itself held the page up. */
  rest(): void;
}
const gaugeOf = <Result>(page: Page, read: (gauge: Gauge) => Result): Promise<Result> =>
  page.evaluate(`(${read})(window.gauge)`) as Promise<Result>;

/** A clock that can be moved on, the gaps between frames, and counts of what the graphics contexts hold. */
function installGauge(): void {
  const contexts: {
    readonly context: WeakRef<WebGL2RenderingContext>;
    readonly held: WeakSet<object>;
    count: number;
  }[] = [];
  const bookOf = (context: WebGL2RenderingContext) => {
    const known = contexts.find((each) => each.context.deref() === context);
    if (known) return known;
    const book = { context: new WeakRef(context), held: new WeakSet<object>(), count: 0 };
    contexts.push(book);
    return book;
  };
  const live = () =>
    contexts.filter(({ context }) => {
      const it = context.deref();
      return it !== undefined && !it.isContextLost();
    });
  const real = performance.now.bind(performance);
  let last = real();
  let scripts = 0;
  const gauge: Gauge = {
    skipped: 0,
    gaps: new Float32Array(2 * 500_000),
    frames: 0,
    callers: {},
    graphics: () => ({ contexts: live().length, objects: live().reduce((sum, { count }) => sum + count, 0) }),
    rest: () => {
      last = Number.NaN;
    },
  };
  Object.assign(window, { gauge });
  performance.now = () => real() + 1000 * gauge.skipped;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries() as unknown as {
      readonly scripts: readonly {
        readonly duration: number;
        readonly invoker: string;
        readonly sourceFunctionName: string;
      }[];
    }[])
      for (const { duration, invoker, sourceFunctionName } of entry.scripts) {
        scripts += duration;
        const caller = `${invoker} ${sourceFunctionName}`;
        gauge.callers[caller] = (gauge.callers[caller] ?? 0) + duration;
      }
  }).observe({ type: "long-animation-frame" });
  const frame = () => {
    const now = real();
    if (!Number.isNaN(last)) gauge.gaps.set([now - last, scripts], 2 * (gauge.frames++ % 500_000));
    scripts = 0;
    last = now;
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
  const methods = WebGL2RenderingContext.prototype as unknown as Record<
    string,
    (this: WebGL2RenderingContext, ...given: unknown[]) => unknown
  >;
  for (const kind of ["Texture", "Buffer", "Framebuffer", "Renderbuffer", "Program", "VertexArray"]) {
    const make = methods[`create${kind}`]!;
    const end = methods[`delete${kind}`]!;
    methods[`create${kind}`] = function () {
      const made = make.call(this) as object | null;
      const book = bookOf(this);
      if (made) {
        book.held.add(made);
        book.count++;
      }
      return made;
    };
    methods[`delete${kind}`] = function (thing) {
      const book = bookOf(this);
      // A second deletion of the same thing does nothing, here as there.
      if (thing && book.held.delete(thing)) book.count--;
      return end.call(this, thing);
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
  const { contexts, objects } = await gaugeOf(page, (gauge) => gauge.graphics());
  await gaugeOf(page, (gauge) => gauge.rest());
  return {
    heap: named.JSHeapUsedSize! / 1e6,
    nodes: named.Nodes!,
    listeners: named.JSEventListeners!,
    workers: page.workers().length,
    contexts,
    graphics: objects,
  };
}

for (const way of WAYS) {
  // An imitated chip paints slowly: the short walk takes a small window, in which the picture and the flow stand still.
  const still = way === "webgl" && !LONG;
  test(`a kiosk's visitors come and go, and heap, graphics objects, workers and listeners stay level: ${way}${still ? ", the picture standing still" : ""}`, async ({
    page,
  }) => walk(page, way, still));
}

async function walk(page: Page, way: (typeof WAYS)[number], still: boolean): Promise<void> {
  test.setTimeout((LENGTH + 240) * 1000);
  const sound = watchPage(page);
  await page.addInitScript(installGauge);
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Performance.enable");
  if (still) await page.setViewportSize({ width: 640, height: 480 });
  await page.emulateMedia({ reducedMotion: still ? "reduce" : "no-preference" });
  if (still) await restFields(page);
  await page.goto(`?mode=kiosk&draw=${way}`);
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
  let visits = 0;
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
    visits++;
  };
  for (let warm = 0; warm < WARM_VISITS; warm++) await visit();
  await expect(welcome).toBeVisible({ timeout: 60_000 });
  const course = [{ hours: 0, ...(await level(page, devtools)) }];
  await gaugeOf(page, (gauge) => Object.assign(gauge, { frames: 0, callers: {} }));
  const clock = () => page.evaluate(() => performance.now() / 1000);
  const [began, start] = [Date.now(), await clock()];
  const walked = () => (Date.now() - began) / 1000;
  while (walked() < LENGTH || visits < WARM_VISITS + MIN_VISITS) {
    await visit();
    // Nobody comes for a while.
    const ahead = (await clock()) - start - PACE * walked();
    if (ahead < 0) await skip(page, -ahead);
    await expect(welcome).toBeVisible({ timeout: 60_000 });
    await page.waitForTimeout(300);
    course.push({ hours: ((await clock()) - start) / 3600, ...(await level(page, devtools)) });
  }
  const { kept, callers } = await gaugeOf(page, ({ gaps, frames, callers }) => ({
    kept: [...gaps.subarray(0, 2 * frames)],
    callers,
  }));
  const sorted = kept.filter((_, k) => k % 2 === 0).sort((a, b) => a - b);
  const scripts = kept.filter((_, k) => k % 2 === 1);
  const at = (part: number) => Math.round(sorted[Math.floor(part * (sorted.length - 1))]!);
  const report = {
    visits,
    seconds: Math.round(walked()),
    course,
    frames: {
      count: sorted.length,
      median: at(0.5),
      ninetyNine: at(0.99),
      longest: at(1),
      late: sorted.filter((gap) => gap > LONGEST_GAP).length,
      lateByScripts: scripts.filter((taken) => taken > LONGEST_GAP).length,
      longestScripts: Math.round(scripts.reduce((most, taken) => Math.max(most, taken), 0)),
    },
    callers: Object.entries(callers)
      .sort(([, a], [, b]) => b - a)
      .slice(0, 12)
      .map(([caller, ms]) => [caller, Math.round(ms)]),
  };
  mkdirSync(".cache", { recursive: true });
  writeFileSync(`.cache/soak-${way}.json`, `${JSON.stringify(report)}\n`);
  const [first, last] = [course[0]!, course.at(-1)!];
  console.log(JSON.stringify({ ...report, course: [first, last] }));
  expect(visits).toBeGreaterThan(WARM_VISITS);
  expect(last.heap).toBeLessThan(first.heap * 1.3 + 6);
  expect(last.workers).toBeLessThanOrEqual(first.workers);
  expect(last.contexts).toBeLessThanOrEqual(first.contexts);
  expect(last.nodes).toBeLessThan(first.nodes * 1.5 + 100);
  expect(last.listeners).toBeLessThan(first.listeners * 1.5 + 50);
  if (way === "webgl") expect(first.graphics).toBeGreaterThan(0);
  expect(last.graphics).toBeLessThan(first.graphics * 1.5 + 50);
  expect(Math.min(...course.map(({ graphics }) => graphics))).toBeGreaterThanOrEqual(0);
  sound();
}
