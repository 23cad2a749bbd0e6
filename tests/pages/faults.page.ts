/** What goes wrong on other people's machines, done here on purpose; the table is docs/reliability.md. Long because each fault has its case. */
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { expect, type Page, test } from "@playwright/test";
import { drop as dropText, figure, paste, watchPage } from "./page.ts";
import { test as resting } from "./resting-field.ts";

test.setTimeout(240_000);
// What one fault leaves behind in the browser must not reach the next.
test.use({ reuseContext: false });
resting.use({ reuseContext: false });

interface Probe {
  readonly workers: Worker[];
  /** ms at which each worker was started */
  readonly begun: number[];
  /** ms at which each worker first sent a field */
  readonly fields: (number | undefined)[];
  frames: number;
}
const probe = <Result>(page: Page, read: (probe: Probe) => Result): Promise<Result> =>
  page.evaluate(`(${read})(window.probe)`) as Promise<Result>;

/** Lets the test see the page's workers and frames; `prelude` runs first inside every worker. */
async function watchWorkers(page: Page, prelude = ""): Promise<void> {
  await page.addInitScript((first) => {
    const seen = {
      workers: [] as Worker[],
      begun: [] as number[],
      fields: [] as (number | undefined)[],
      frames: 0,
    };
    Object.assign(window, { probe: seen });
    const count = () => {
      seen.frames++;
      requestAnimationFrame(count);
    };
    requestAnimationFrame(count);
    const Own = Worker;
    window.Worker = class extends Own {
      constructor(...what: ConstructorParameters<typeof Worker>) {
        super(...what);
        const index = seen.workers.push(this) - 1;
        seen.begun[index] = performance.now();
        this.addEventListener("message", ({ data }) => {
          if (data?.kind === "field") seen.fields[index] ??= performance.now();
        });
      }
    };
    if (first) {
      const Plain = Blob;
      window.Blob = class extends Plain {
        constructor(parts: BlobPart[] = [], options?: BlobPropertyBag) {
          super(/javascript/.test(options?.type ?? "") ? [first, ...parts] : parts, options);
        }
      };
    }
  }, prelude);
}

const flowing = (page: Page) =>
  expect
    .poll(() => probe(page, ({ fields }) => fields.some((at) => at !== undefined)), { timeout: 60_000 })
    .toBe(true);
const open = async (page: Page, query = "?mode=bench") => {
  await page.goto(query);
  await figure(page, "pressureDrop");
};

/** ms beyond a first start, which a busy machine stretches as much, until the flow is back. */
const STARTED_ANEW = 1500;
/** ms for which a worker may be silent while it builds its finer grid before it is given up (src/chain/field-link.ts) */
const NOTICED = 6000;
const BEYOND_A_START = { dies: STARTED_ANEW, "falls silent": NOTICED + STARTED_ANEW } as const;
/** ms until the picture is back */
const PICTURE_BACK = 3000;

test("a field worker that dies or falls silent is replaced, flows again soon after the time of a first start, and no number is lost; a silent solver answers the next question", async ({
  page,
}) => {
  const sound = watchPage(page);
  await watchWorkers(page);
  await open(page);
  await flowing(page);
  const before = await figure(page, "pressureDrop");
  const firstStart = await probe(page, ({ begun, fields }) => {
    const index = fields.findIndex((at) => at !== undefined);
    return fields[index]! - begun[index]!;
  });
  // What a start takes on this machine at this moment: the longest yet.
  let start = firstStart;
  for (const [how, end] of [
    ["dies", "(worker) => worker.dispatchEvent(new ErrorEvent('error', { message: 'made up' }))"],
    ["falls silent", "(worker) => worker.terminate()"],
  ] as const) {
    const lost = (await page.evaluate(`(() => {
      const { workers, fields } = window.probe;
      const index = fields.findLastIndex((at) => at !== undefined);
      (${end})(workers[index]);
      return { at: performance.now(), index };
    })()`)) as { at: number; index: number };
    const again = await page.waitForFunction(
      (index) => (window as unknown as { probe: Probe }).probe.fields.find((at, i) => i > index && at),
      lost.index,
      { timeout: 60_000 },
    );
    const took = (await again.jsonValue())! - lost.at;
    console.log(
      `flows again after ${(took / 1000).toFixed(2)} s when it ${how}; a first start took ${(firstStart / 1000).toFixed(2)} s`,
    );
    expect(took).toBeLessThan(start + BEYOND_A_START[how]);
    start = Math.max(start, took);
    expect(await figure(page, "pressureDrop")).toBeCloseTo(before, 6);
  }
  const count = await probe(page, ({ workers }) => {
    workers[0]!.terminate();
    return workers.length;
  });
  await page.getByRole("radio", { name: "Lateral tunnel" }).check();
  await expect
    .poll(() => probe(page, ({ workers }) => workers.length), { timeout: 30_000 })
    .toBeGreaterThan(count);
  await expect.poll(() => figure(page, "pressureDrop"), { timeout: 30_000 }).not.toBe(before);
  sound();
});

resting(
  "at a kiosk a lost graphics context comes back in under 3 s with the place kept, and a clock that jumps by a day sends nobody away",
  async ({ page }) => {
    const sound = watchPage(page);
    // An imitated chip paints slowly: a small window, in which blood moves.
    await page.setViewportSize({ width: 800, height: 600 });
    await page.emulateMedia({ reducedMotion: "no-preference" });
    await page.addInitScript(() => {
      const real = Date.now;
      Date.now = () => real() + ((window as unknown as { jump?: number }).jump ?? 0);
    });
    await page.goto("?mode=kiosk&draw=webgl");
    await page.locator(".kiosk-languages button").first().click();
    await page.locator(".kiosk-topics main > ul button").first().click();
    await expect(page.locator("#stage canvas")).toBeVisible({ timeout: 60_000 });
    await page.locator(".kiosk-bar .main").click();
    const place = await page.locator(".kiosk-place").textContent();
    const took = await page.evaluate(async () => {
      const old = document.querySelector<HTMLCanvasElement>("#stage canvas")!;
      const began = performance.now();
      old.getContext("webgl2")!.getExtension("WEBGL_lose_context")!.loseContext();
      while (performance.now() - began < 20_000) {
        const now = document.querySelector<HTMLCanvasElement>("#stage canvas");
        if (now && now !== old && now.width > 1) return performance.now() - began;
        await new Promise(requestAnimationFrame);
      }
      return Number.POSITIVE_INFINITY;
    });
    console.log(`a new picture after ${(took / 1000).toFixed(2)} s`);
    expect(took).toBeLessThan(PICTURE_BACK);
    await expect(page.locator(".kiosk-place")).toHaveText(place!);
    for (const jump of [86_400_000, -86_400_000]) {
      await page.evaluate((by) => Object.assign(window, { jump: by }), jump);
      // Longer than the kiosk's own look at its clock, once a second.
      await page.waitForTimeout(1200);
      await expect(page.locator(".kiosk-place")).toHaveText(place!);
      await expect(page.getByRole("alertdialog")).toHaveCount(0);
    }
    sound();
  },
);

test("without vector instructions the plain kernel computes the flow; without memory for it the numbers continue", async ({
  page,
}) => {
  const sound = watchPage(page);
  await watchWorkers(page, "WebAssembly.validate = () => false;");
  await open(page);
  await flowing(page);
  const other = await page.context().newPage();
  await watchWorkers(
    other,
    "WebAssembly.Memory = class { constructor() { throw new RangeError('could not allocate memory'); } };",
  );
  await open(other);
  await expect(other.locator(".notes")).toContainText("The numbers are not affected", { timeout: 60_000 });
  expect(await figure(other, "pressureDrop")).toBeGreaterThan(0);
  sound();
});

const STORAGES = {
  denied: () => {
    for (const name of ["localStorage", "sessionStorage"])
      Object.defineProperty(window, name, {
        get() {
          throw new DOMException("made up", "SecurityError");
        },
      });
  },
  full: () => {
    Storage.prototype.setItem = () => {
      throw new DOMException("made up", "QuotaExceededError");
    };
  },
  corrupt: () => {
    for (const name of [
      "letters",
      "cueSeen",
      "largerWords",
      "theme",
      "telling",
      "progress",
      "organiser",
      "counts",
      "draft",
    ])
      localStorage.setItem(`lungward.${name}`, '{"version":[1,{\u0000');
  },
};
/** To another mode without reloading the page. */
const move = (page: Page, query: string) =>
  page.evaluate((there) => {
    history.pushState(null, "", there);
    dispatchEvent(new PopStateEvent("popstate"));
  }, query);

for (const [kind, fault] of Object.entries(STORAGES)) {
  resting(`with storage ${kind} the study, the kiosk and the author's page work`, async ({ page }) => {
    const sound = watchPage(page);
    await page.addInitScript(fault);
    await page.goto("?mode=study&lesson=02-steps");
    const title = page.locator(".lesson-words h2");
    await expect(title).toBeVisible({ timeout: 60_000 });
    const first = (await title.textContent())!;
    await page.locator(".lesson-way-on").locator("button, a").last().click();
    await expect(title).not.toHaveText(first);
    await move(page, "?mode=author&view=text");
    await page.locator("textarea").fill("Words.");
    await expect(page.locator(".author-faults li").first()).toBeVisible();
    // Last: a kiosk lets nobody out by the browser's history.
    await move(page, "?mode=kiosk");
    await page.locator(".kiosk-languages button").first().click();
    await page.locator(".kiosk-topics main > ul button").first().click();
    await expect(page.locator(".kiosk-lesson")).toBeVisible({ timeout: 60_000 });
    sound();
  });
}

resting("a record that a newer version wrote is left as it is", async ({ page }) => {
  const newer = JSON.stringify({ version: 2, lessons: {}, more: "unknown here" });
  await page.addInitScript((text) => localStorage.setItem("lungward.progress", text), newer);
  await page.goto("?mode=study&lesson=02-steps");
  const title = page.locator(".lesson-words h2");
  await expect(title).toBeVisible({ timeout: 60_000 });
  const first = (await title.textContent())!;
  await page.locator(".lesson-way-on").locator("button, a").last().click();
  await expect(title).not.toHaveText(first);
  expect(await page.evaluate(() => localStorage.getItem("lungward.progress"))).toBe(newer);
});

test("a tab that wakes hours later continues with the same workers; the window shrinks to nothing and back, the display's scale changes, fonts are missing: the picture fits its place", async ({
  page,
}) => {
  const refused: string[] = [];
  await page.route(/\.woff2?$/, (route) => {
    refused.push(route.request().url());
    return route.abort();
  });
  await page.addInitScript(() => {
    const [now, date] = [performance.now.bind(performance), Date.now];
    Object.assign(window, { slept: 0 });
    const slept = () => (window as unknown as { slept: number }).slept;
    performance.now = () => now() + slept();
    Date.now = () => date() + slept();
  });
  const sound = watchPage(page);
  await watchWorkers(page);
  await open(page);
  await flowing(page);
  const canvas = page.locator("#stage canvas");
  await expect(canvas).toBeVisible({ timeout: 60_000 });
  expect(refused.length).toBeGreaterThan(0);
  const devtools = await page.context().newCDPSession(page);
  const movesOn = async () => {
    const frames = await probe(page, ({ frames }) => frames);
    await expect
      .poll(() => probe(page, ({ frames }) => frames), { timeout: 30_000 })
      .toBeGreaterThan(frames + 3);
  };

  // Browsers differ in what they stop in a tab asleep; to all of them the clocks are hours on between two frames.
  const before = await probe(page, ({ workers }) => workers.length);
  await devtools.send("Page.setWebLifecycleState", { state: "frozen" });
  await page.evaluate(() => {
    Object.assign(window, { slept: 5 * 3_600_000 });
    const began = Date.now();
    // Meanwhile nothing of the page runs.
    while (Date.now() - began < 1500);
  });
  await devtools.send("Page.setWebLifecycleState", { state: "active" });
  await movesOn();
  // Longer than the watch over silent workers.
  await page.waitForTimeout(2500);
  expect(await probe(page, ({ workers }) => workers.length)).toBe(before);
  await expect(page.locator(".notes .note")).toHaveCount(0);

  const show = (width: number, height: number, deviceScaleFactor: number) =>
    devtools.send("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor, mobile: false });
  const drawn = () =>
    canvas.evaluate((element: HTMLCanvasElement) => {
      const { clientWidth, clientHeight } = element.parentElement!;
      return {
        off: [
          Math.abs(element.width - clientWidth * devicePixelRatio),
          Math.abs(element.height - clientHeight * devicePixelRatio),
        ].some((by) => by > 2),
        ratio: devicePixelRatio,
      };
    });
  await show(1, 1, 1);
  await expect.poll(() => page.evaluate(() => innerWidth)).toBe(1);
  await movesOn();
  for (const ratio of [1, 2, 1.25]) {
    // Small enough for the processor to draw every one of its pixels.
    await show(800, 600, ratio);
    await expect.poll(drawn, { timeout: 20_000 }).toEqual({ off: false, ratio });
  }
  // Of a larger screen the processor draws no more pixels than it can in time.
  await show(1600, 1000, 2);
  const pixels = () => canvas.evaluate(({ width, height }: HTMLCanvasElement) => width * height);
  await expect.poll(pixels, { timeout: 20_000 }).toBeGreaterThan(2_200_000);
  expect(await pixels()).toBeLessThan(2_310_000);
  await movesOn();
  sound();
});

const NOT_THERE = "not-there-yet.js";

/** Passes the built page on, so that a server can fail while the browser looks. */
async function between(origin: string) {
  const state = { down: false, script: (text: string) => text };
  const server = createServer(async (request, answer) => {
    if (state.down) {
      request.socket.destroy();
      return;
    }
    if (request.url!.endsWith(NOT_THERE)) {
      answer.writeHead(404).end();
      return;
    }
    const got = await fetch(new URL(request.url!, origin));
    const type = got.headers.get("content-type") ?? "";
    answer.writeHead(got.status, { "content-type": type, "cache-control": "no-cache" });
    const isWorker = request.url!.startsWith("/sw.js");
    answer.end(isWorker ? state.script(await got.text()) : Buffer.from(await got.arrayBuffer()));
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const { port } = server.address() as AddressInfo;
  return { state, home: `http://127.0.0.1:${port}/`, close: () => server.close() };
}

resting.describe("kept for use without a network", () => {
  resting.use({ serviceWorkers: "allow" });

  resting(
    "after one visit the kit and its docs open without a network; an update that breaks off half-way leaves the old version complete; an incomplete cache is completed from the network",
    async ({ page, baseURL }) => {
      const sound = watchPage(page);
      const { state, home, close } = await between(baseURL!);
      await page.goto(home);
      await page.evaluate(async () => {
        const { active } = await navigator.serviceWorker.ready;
        while (active?.state !== "activated") await new Promise((done) => setTimeout(done, 50));
      });
      const whole = () => page.evaluate(async () => (await caches.keys()).length);
      const before = await whole();
      // The next version's list names a file that the server does not have yet.
      state.script = (text) =>
        text.replace(
          /\{\s*"?url"?:\s*"index\.html"/,
          (first) => `{url:"assets/${NOT_THERE}",revision:"2"},${first}`,
        );
      const end = await page.evaluate(async () => {
        const registration = (await navigator.serviceWorker.getRegistration())!;
        const found = new Promise<ServiceWorker>((done) => {
          registration.addEventListener("updatefound", () => done(registration.installing!));
        });
        await registration.update().catch(() => {});
        const worker = await found;
        while (worker.state !== "redundant" && worker.state !== "installed")
          await new Promise((done) => setTimeout(done, 50));
        return worker.state;
      });
      expect(end).toBe("redundant");
      expect(await whole()).toBe(before);
      state.down = true;
      await page.goto(`${home}?mode=bench`);
      await figure(page, "pressureDrop");
      await page.goto(`${home}docs/model.html`);
      await expect(page.locator("h1")).toHaveText("The model");
      await page.getByRole("searchbox").fill("fenestration");
      await expect(page.locator("#found a").first()).toBeVisible();
      state.down = false;
      const removed = await page.evaluate(async () => {
        let count = 0;
        for (const name of await caches.keys()) {
          const cache = await caches.open(name);
          for (const request of await cache.keys())
            if (/assets\/.*\.js/.test(request.url) && (await cache.delete(request))) count++;
        }
        return count;
      });
      expect(removed).toBeGreaterThan(3);
      await page.goto(`${home}?mode=bench`);
      await figure(page, "pressureDrop");
      close();
      sound();
    },
  );
});

resting(
  "a file that is huge or binary leaves the text as it was and says why; one nested beyond reason shows its faults while the last good text runs",
  async ({ page }) => {
    const sound = watchPage(page);
    await page.goto("?mode=author&view=text");
    const text = page.locator("textarea");
    await expect(text).toBeVisible({ timeout: 60_000 });
    const before = await text.inputValue();
    const faults = page.locator(".author-faults");
    const drop = (name: string, size: number, byte: number) =>
      page.evaluate(
        ([called, length, filling]) => {
          const files = new DataTransfer();
          files.items.add(new File([new Uint8Array(length).fill(filling)], called));
          document.body.dispatchEvent(
            new DragEvent("drop", { dataTransfer: files, bubbles: true, cancelable: true }),
          );
        },
        [name, size, byte] as const,
      );
    await drop("huge.md", 100_000_000, 97);
    await expect(faults).toContainText(/huge\.md\. Allowed: .* kB/);
    await expect(text).toHaveValue(before);
    await drop("picture.png", 4096, 0);
    await expect(faults).toContainText("picture.png");
    await expect(text).toHaveValue(before);
    // Deep nesting and a swarm of aliases: what makes readers of such files run away.
    const swarm = ["a: &a [x, x, x, x, x, x, x, x, x]"];
    for (let depth = 0; depth < 9; depth++) {
      const [at, next] = [..."abcdefghij"].slice(depth, depth + 2);
      swarm.push(`${next}: &${next} [${Array(9).fill(`*${at}`).join(", ")}]`);
    }
    const hostile = `---\n${swarm.join("\n")}\n---\n\n## x {#x}\n\n### plain\n${"> ".repeat(3000)}x ${"[".repeat(3000)}\n`;
    const title = page.locator(".author-preview h2");
    const running = (await title.textContent())!;
    await paste(text, hostile);
    await expect(faults.locator("li").first()).toBeVisible();
    await expect(title).toHaveText(running);
    await paste(text, before);
    await expect(faults).toContainText("No faults", { timeout: 60_000 });
    // Dropped, it is a text of its own, beside the one that was there.
    await dropText(page, "nested.md", hostile);
    await expect(text).toHaveValue(hostile);
    await expect(faults.locator("li").first()).toBeVisible();
    await expect(page.getByRole("button", { name: "My lessons (2)" })).toBeVisible();
    sound();
  },
);

test("a scene that words hide, or leave hardly any room, is drawn without a fault", async ({ page }) => {
  test.setTimeout(180_000);
  const unfaulted = watchPage(page);
  await page.emulateMedia({ reducedMotion: "no-preference" });
  // The growing bodies, and the washing out of dye.
  for (const place of ["09-tube-and-growth&step=4", "04-energy-loss&step=12"]) {
    await page.goto(`?mode=lecture&lesson=${place}&draw=canvas`);
    await expect(page.locator(".room-words h2")).toBeVisible({ timeout: 30_000 });
    for (const box of ["display: none", "width: 26px; height: 26px", "width: 60px; height: 60px"]) {
      await page.addStyleTag({
        content: `html body .clear[data-clear] { position: absolute; display: block; ${box} }`,
      });
      await page.evaluate(async () => {
        for (let frame = 0; frame < 12; frame++) await new Promise(requestAnimationFrame);
      });
    }
  }
  unfaulted();
});
