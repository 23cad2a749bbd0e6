/**
 * Where the time of the opening goes, until blood is seen to move, at full speed and with the page's own thread slowed down four
 * times. `LUNGWARD_LONG=1 npx playwright test bench/opening` on a quiet machine; the fastest of some openings is shown.
 */
import { expect, type Page, test } from "@playwright/test";

test.use({ reducedMotion: "no-preference", reuseContext: false, viewport: { width: 1280, height: 720 } });

const WAYS = ["canvas", "webgl"] as const;
const RATES = [1, 4] as const;
const TURNS = 3;

/** What is noted; a page that the processor draws reaches it in this order. */
const STAGES = [
  "code runs",
  "words",
  "renderer",
  "coarse field flows",
  "blood drawn",
  "blood moves",
  "circulation solved",
  "fine field flows",
  "chest drawn",
] as const;
/** CSS px in a window of 1280 x 720: within the conduit, and of the ventricle beside it. */
const PLACES = { CONDUIT: [925, 330], VENTRICLE: [1030, 330] } as const;
declare const CONDUIT: readonly [number, number];
declare const VENTRICLE: readonly [number, number];

type Stage = (typeof STAGES)[number];
type Times = Partial<Record<Stage, number>>;

/** Notes when each stage is reached, ms from the asking: what the workers say, what stands in the page, and what the stage shows. */
function watch() {
  const times: Times = {};
  Object.assign(window, { times });
  const reach = (stage: Stage) => {
    times[stage] ??= performance.now();
  };
  const Plain = window.Worker;
  window.Worker = class extends Plain {
    constructor(...from: ConstructorParameters<typeof Plain>) {
      super(...from);
      this.addEventListener("message", ({ data }: MessageEvent<{ kind?: string; shape?: unknown }>) => {
        if (data.kind === "solved") reach("circulation solved");
        if (data.kind === "field") reach(data.shape ? "fine field flows" : "coarse field flows");
      });
    }
  };
  new MutationObserver(() => {
    if (document.querySelector("#stage")) reach("code runs");
    if (document.querySelector("h1")) reach("words");
    if (document.querySelector("#stage canvas")) reach("renderer");
  }).observe(document, { childList: true, subtree: true });
  const glass = document.createElement("canvas").getContext("2d", { willReadFrequently: true })!;
  /** Brightness of what the stage shows in a square of 40 px around this place. Plain loops: at every frame they count as the page's own time. */
  const seen = (stage: HTMLCanvasElement, x: number, y: number): Uint8Array => {
    const dense = stage.width / innerWidth;
    const [left, top] = [Math.round((x - 20) * dense), Math.round((y - 20) * dense)];
    // What the processor draws is read where it stands: a copy of the stage would cost the page a good part of a drawing.
    const drawn = stage.getContext("2d");
    if (!drawn) {
      glass.clearRect(0, 0, 40, 40);
      glass.drawImage(stage, left, top, 40, 40, 0, 0, 40, 40);
    }
    const { data } = drawn?.getImageData(left, top, 40, 40) ?? glass.getImageData(0, 0, 40, 40);
    const bright = new Uint8Array(1600);
    for (let k = 0; k < 1600; k++) bright[k] = Math.max(data[4 * k]!, data[4 * k + 1]!, data[4 * k + 2]!);
    return bright;
  };
  const counted = (places: Uint8Array, counts: (bright: number, k: number) => boolean): number => {
    let count = 0;
    for (let k = 0; k < 1600; k++) if (counts(places[k]!, k)) count++;
    return count;
  };
  let ground: Uint8Array | null = null;
  let before: Uint8Array | null = null;
  const look = (stage: HTMLCanvasElement) => {
    if (times["blood moves"] === undefined) {
      const lumen = seen(stage, ...CONDUIT);
      if (counted(lumen, (bright) => bright > 130) > 200) {
        const last = before;
        if (last && counted(lumen, (bright, k) => bright !== last[k]) > 0) reach("blood moves");
        reach("blood drawn");
        before = lumen;
      }
    }
    // What stands there when blood comes: before the first drawing the stage is empty, and a ground alone would pass for a chest.
    if (times["blood drawn"] === undefined) return;
    const chest = seen(stage, ...VENTRICLE);
    const first = ground ?? chest;
    ground = first;
    if (counted(chest, (bright, k) => Math.abs(bright - first[k]!) > 30) > 400) reach("chest drawn");
  };
  const ask = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (call) =>
    ask((time) => {
      call(time);
      const stage = document.querySelector<HTMLCanvasElement>("#stage canvas");
      if (stage && (times["blood moves"] === undefined || times["chest drawn"] === undefined)) look(stage);
    });
}

async function opening(page: Page, way: string, rate: number): Promise<Times> {
  const devtools = await page.context().newCDPSession(page);
  await page.goto("about:blank");
  await devtools.send("Network.setCacheDisabled", { cacheDisabled: true });
  await devtools.send("Emulation.setCPUThrottlingRate", { rate });
  await page.goto(`?draw=${way}`);
  const reached = () => page.evaluate(() => (window as unknown as { times: Times }).times);
  const missing = async () => {
    const times = await reached();
    return STAGES.filter((stage) => times[stage] === undefined);
  };
  await expect.poll(missing, { timeout: 60_000, message: `${way}, ${rate} times slower` }).toEqual([]);
  return reached();
}

test("the opening, stage by stage: blood moves before the chest is painted around it", async ({ page }) => {
  test.skip(!process.env.LUNGWARD_LONG, "a bench, not a guard: a minute");
  test.setTimeout(400_000);
  await page.addInitScript({
    content: `const { CONDUIT, VENTRICLE } = ${JSON.stringify(PLACES)}; (${watch})();`,
  });
  const columns: [name: string, times: Times][] = [];
  for (const way of WAYS)
    for (const rate of RATES) {
      const runs: Times[] = [];
      for (let turn = 0; turn < TURNS; turn++) runs.push(await opening(page, way, rate));
      runs.sort((a, b) => a["blood moves"]! - b["blood moves"]!);
      const [fastest] = runs;
      columns.push([`${way}, ${rate === 1 ? "full speed" : `${rate} times slower`}`, fastest!]);
      expect(fastest!["blood moves"]!).toBeLessThan(fastest!["chest drawn"]!);
    }
  const row = (stage: Stage) => columns.map(([name, times]) => [name, Math.round(times[stage]!)]);
  console.table(Object.fromEntries(STAGES.map((stage) => [stage, Object.fromEntries(row(stage))])));
});
