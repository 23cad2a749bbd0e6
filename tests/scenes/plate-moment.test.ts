// @vitest-environment happy-dom
import { beforeEach, expect, test, vi } from "vitest";
import type { Frame } from "../../src/chain/frame.ts";
import { formatQuantity } from "../../src/i18n/index.ts";
import { makeBreathing } from "../../src/scenes/breathing/breathing-scene.ts";
import { makeCalf } from "../../src/scenes/calf/calf-scene.ts";
import { valueAt } from "../../src/scenes/drawing/trace-clock.ts";
import type { Viewport } from "../../src/scenes/scene.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

const written = vi.hoisted((): string[] => []);
const nothing = vi.hoisted(() => async () => {
  const { Container } = await import("pixi.js");
  const drawn = { fit: { x: 0, y: 0, scale: 1 }, vessels: [], open: [0, 0], stands: ["shut", "shut"] };
  return () => ({ view: new Container(), lay: () => {}, draw: () => drawn, release: () => {} });
});
vi.mock("../../src/scenes/drawing/lettering.ts", async () => {
  const { Container } = await import("pixi.js");
  const room = { x: 0, y: 0, width: 10, height: 10 };
  const lettering = () => ({
    view: new Container(),
    begin: () => {},
    measure: () => room,
    end: () => {},
    write: ({ lines }: { lines: readonly { words: string }[] }) => {
      written.push(...lines.map(({ words }) => words));
      return room;
    },
  });
  return { lettering };
});
vi.mock("../../src/scenes/breathing/thorax.ts", async () => ({ thorax: await nothing() }));
vi.mock("../../src/scenes/circuit/circuit-legend.ts", () => ({ circuitLegend: () => undefined }));
vi.mock("../../src/scenes/drawing/strips.ts", async () => ({ strips: await nothing() }));
vi.mock("../../src/scenes/calf/valve-lens.ts", async (actual) => ({
  ...(await actual()),
  valveLens: await nothing(),
}));
vi.mock("../../src/scenes/calf/leg.ts", async (actual) => ({ ...(await actual()), leg: await nothing() }));

const circulation = solve({ ...START.request, set: { breathing: "deep", metabolicEquivalents: 3 } });
const BOX = { x: 0, y: 0, width: 900, height: 600 };
const viewport: Viewport = { full: BOX, clear: BOX, floor: 12, elapsed: 1 / 60, dense: 1, meshes: null };
const theme = darkTheme((key, values) => `${key} ${values?.pressure ?? ""}`);
beforeEach(() => {
  written.length = 0;
});

test.each([
  ["breathing", makeBreathing, "pleural"],
  ["calf", makeCalf, "calf"],
] as const)("%s: the number on the plate is of the moment that is seen", (scene, make, trace) => {
  const { view, draw } = make();
  const values = circulation.traces.pressures[trace]!;
  const seen = new Set<string>();
  for (let time = 0; time < 3; time += 1 / 60) {
    const frame = { state: { ...START, scene, view: { ...START.view, labels: false } }, time } as Frame;
    draw({ ...frame, panes: [{ circulation }] as unknown as Frame["panes"] }, viewport, theme);
    const value = valueAt(circulation.traces, values, time);
    const said = written.findLast((each) => each.includes("mmHg"))!;
    expect(said).toContain(formatQuantity(Math.round(value) + 0, "mmHg"));
    seen.add(said);
  }
  expect(seen.size).toBeGreaterThan(3);
  view.destroy();
});
