/**
 * How soon blood moves by the new flow after a lever is moved or a wall is dragged, and where the time goes: ms from the last touch, the
 * middle of some turns; and the frames meanwhile. `LUNGWARD_LONG=1 npx playwright test bench/first-answer` on a quiet machine.
 */
import { expect, type Page, test } from "@playwright/test";

test.use({ reducedMotion: "no-preference", viewport: { width: 1280, height: 800 } });

const DIAMETERS = {
  extracardiac: "Conduit diameter",
  atriopulmonary: "Chamber diameter",
  "lateral-tunnel": "Tunnel diameter",
} as const;
const TURNS = 3;
/** A hand that drags for a second: ms between two moves, and CSS px to the side after each; all of them move the wall. */
const HAND = 33;
const PULLS = Array.from({ length: 30 }, (_, move) => [2, 4, 6, 4, 2, 0][move % 6]!);

const FLOW = ["order sent", "first flow sent", "blood moves by it"] as const;
const FIRST = [...FLOW, "circulation solved", "by both"] as const;
const LAST = "grid as before";
type Stage = (typeof FIRST)[number] | typeof LAST;

interface Noted {
  readonly times: Partial<Record<Stage, number>>;
  /** ms between frames since the first touch */
  readonly gaps: number[];
  /** cells from left to right of the grids that were laid */
  readonly cells: number[];
}
type Held = Window & { noted: Noted; afresh(): void };

interface Told {
  readonly kind?: string;
  readonly shapeId?: number;
  readonly shape?: { readonly nx: number };
  readonly field?: { readonly shapeId: number };
}

/** Notes what the workers are told and say after a touch, and the frame that follows. */
function watch() {
  const all = window as unknown as Held;
  let touched = 0;
  let order = -1;
  let driven = false;
  let fresh: Stage[] = [];
  let last = performance.now();
  const forget = ({ gaps, cells }: Pick<Noted, "gaps" | "cells">) => {
    all.noted = { times: {}, gaps, cells };
    order = -1;
    driven = false;
    fresh = [];
  };
  all.afresh = () => forget({ gaps: [], cells: [] });
  all.afresh();
  const reach = (stage: Stage) => {
    all.noted.times[stage] ??= performance.now() - touched;
  };
  for (const kind of ["keydown", "pointermove"])
    addEventListener(
      kind,
      () => {
        touched = performance.now();
        forget(all.noted);
      },
      { capture: true },
    );
  const Plain = window.Worker;
  window.Worker = class extends Plain {
    constructor(...from: ConstructorParameters<typeof Plain>) {
      super(...from);
      this.addEventListener("message", ({ data }: MessageEvent<Told>) => {
        if (data.shape) all.noted.cells.push(data.shape.nx);
        if (data.kind === "solved") reach("circulation solved");
        if (data.kind !== "field" || data.field?.shapeId !== order) return;
        reach("first flow sent");
        fresh.push("blood moves by it");
        if (driven) fresh.push("by both");
        if (data.shape) fresh.push("grid as before");
      });
    }
    override postMessage(message: Told, ...more: [never]) {
      super.postMessage(message, ...more);
      if (message.kind === "boundary") driven = all.noted.times["circulation solved"] !== undefined;
      if (message.kind !== "build") return;
      order = message.shapeId ?? -1;
      reach("order sent");
    }
  };
  const ask = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (call) =>
    ask((time) => {
      call(time);
      for (const stage of fresh.splice(0)) reach(stage);
      const now = performance.now();
      // Several may call in one frame.
      if (now - last > 4) all.noted.gaps.push(now - last);
      last = now;
    });
}

const noted = (page: Page): Promise<Noted> => page.evaluate(() => (window as unknown as Held).noted);
const afresh = (page: Page): Promise<void> => page.evaluate(() => (window as unknown as Held).afresh());

async function answered(page: Page, stages: readonly Stage[]): Promise<Noted> {
  const missing = async () => {
    const { times } = await noted(page);
    return stages.filter((stage) => times[stage] === undefined);
  };
  await expect.poll(missing, { timeout: 30_000 }).toEqual([]);
  // Where the coarsest grid is all that this computer holds no other comes.
  await page.waitForTimeout(2500);
  return noted(page);
}

const middle = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

const rowOf = (runs: readonly Noted[]) => ({
  ...Object.fromEntries(
    [...FIRST, LAST].map((stage) => {
      const known = runs.flatMap(({ times }) => times[stage as Stage] ?? []);
      return [stage, known.length > 0 ? Math.round(middle(known)) : undefined];
    }),
  ),
  "middle frame": Math.round(middle(runs.map(({ gaps }) => middle(gaps)))),
  "longest frame": Math.round(middle(runs.map(({ gaps }) => Math.max(...gaps)))),
  "cells across the plane": runs[0]!.cells.join(" "),
});

async function pressed(page: Page, name: string): Promise<Noted[]> {
  await page.locator(".panel").getByRole("slider", { name }).focus();
  const runs: Noted[] = [];
  for (let turn = 0; turn < TURNS; turn++) {
    await afresh(page);
    await page.keyboard.press(turn % 2 === 0 ? "ArrowUp" : "ArrowDown");
    runs.push(await answered(page, FIRST));
  }
  return runs;
}

async function dragged(page: Page, name: string): Promise<Noted[]> {
  const grip = page.locator(".handles").getByRole("slider", { name });
  const runs: Noted[] = [];
  for (let turn = 0; turn < TURNS; turn++) {
    const { x, y, width, height } = (await grip.boundingBox())!;
    const [left, top] = [x + width / 2, y + height / 2];
    await page.mouse.move(left, top);
    await page.mouse.down();
    await afresh(page);
    for (const pull of PULLS) {
      await page.mouse.move(left - pull, top);
      await page.waitForTimeout(HAND);
    }
    // What else is solved meanwhile belongs to an earlier move.
    runs.push(await answered(page, FLOW));
    await page.mouse.up();
  }
  return runs;
}

for (const [stage, diameter] of Object.entries(DIAMETERS))
  test(`after a lever or a wall of the ${stage} pathway is moved, blood moves on a coarse grid before it does on the one that was held`, async ({
    page,
  }) => {
    test.skip(!process.env.LUNGWARD_LONG, "a bench, not a guard: a minute");
    test.setTimeout(300_000);
    await page.addInitScript(watch);
    await page.goto(`?mode=bench&draw=canvas&state=1~t${stage}~r0.5~fH`);
    await expect(page.locator("#scene-reading")).toContainText(/eddies/, { timeout: 60_000 });
    await page.keyboard.press("a");
    await page.waitForTimeout(6000);
    const rows: Record<string, ReturnType<typeof rowOf>> = {
      [diameter]: rowOf(await pressed(page, diameter)),
      "its wall dragged": rowOf(await dragged(page, diameter)),
    };
    console.table(rows);
    for (const row of Object.values(rows) as Partial<Record<Stage, number>>[])
      expect(row["blood moves by it"]!).toBeLessThan(row["grid as before"] ?? Number.POSITIVE_INFINITY);
  });
