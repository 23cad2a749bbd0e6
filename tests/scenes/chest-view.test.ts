// @vitest-environment happy-dom
/** When a chest around the pathway that is painted piece by piece is begun anew. */
import { afterAll, beforeEach, expect, test, vi } from "vitest";
import { chestView } from "../../src/scenes/pathway/chest-view.ts";
import type { Moment } from "../../src/scenes/pathway/moment.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";

/** Drawings that one chest takes, and what was begun and shown. */
const PIECES = 5;
const painted = vi.hoisted(() => {
  // Other files of this process read the view with its own layer.
  vi.resetModules();
  return { begun: [] as number[], shown: [] as number[] };
});
afterAll(() => {
  vi.resetModules();
});
vi.mock("../../src/scenes/anatomy/courses.ts", () => ({ coursesOf: () => [] }));
vi.mock("../../src/scenes/layers/surface.ts", () => ({ surfaceOf: () => ({}) }));
vi.mock("../../src/scenes/anatomy/standing.ts", () => ({ standingAt: () => ({ lungs: 1 }) }));
vi.mock("../../src/scenes/anatomy/anatomy-layer.ts", async () => {
  const { Container } = await import("pixi.js");
  const part = () => new Container();
  return {
    anatomyLayer: () => ({
      pieces: new Proxy({}, { get: part }),
      ventricle: part(),
      valves: part(),
      begin(_: object, { saturations: { arterial } }: { saturations: { arterial: number } }) {
        painted.begun.push(arterial);
        let pieces = 0;
        return () => {
          if (++pieces < PIECES) return false;
          painted.shown.push(arterial);
          return true;
        };
      },
      move: () => {},
      sink: () => {},
    }),
  };
});

beforeEach(() => {
  for (const list of Object.values(painted)) list.length = 0;
});

const theme = darkTheme(String);
type Draw = Parameters<ReturnType<typeof chestView>["draw"]>;
const geometry = { name: "extracardiac", chest: {} };
/** Draws blood of such a saturation. */
function draw(
  view: ReturnType<typeof chestView>,
  arterial: number,
  { scale = 4, still = false, elapsed = 0.02 } = {},
) {
  const pane = { geometry, circulation: { saturations: { arterial } }, shape: null } as unknown as Draw[0];
  const moment = { time: 0, still, first: false, viewport: { elapsed, dense: 1 } } as unknown as Moment;
  return view.draw(pane, {} as Draw[1], scale, moment, theme);
}

test("while colours change at each drawing every chest is finished before the next is begun", () => {
  const view = chestView();
  for (let n = 0; n < 40; n++) draw(view, 60 + n);
  expect(painted.shown.length).toBeGreaterThan(4);
  expect(painted.begun.slice(0, painted.shown.length)).toEqual(painted.shown);
  // The last colours come once the hand rests.
  for (let n = 0; n < 2 * PIECES + 4; n++) draw(view, 99);
  expect(painted.shown.at(-1)).toBe(99);
});

test("a camera that comes closer at each drawing does not keep the first chest away", () => {
  const view = chestView();
  const seen = Array.from({ length: 12 }, (_, n) => draw(view, 60, { scale: 4 * 1.3 ** n }));
  expect(seen.at(-1)).not.toBeNull();
});

test("a picture takes the colours of its own moment at once, whatever is half painted", () => {
  const view = chestView();
  draw(view, 60);
  draw(view, 61, { elapsed: Number.POSITIVE_INFINITY });
  expect(painted.shown).toEqual([61]);
  draw(view, 62);
  draw(view, 63, { still: true });
  expect(painted.shown).toEqual([61, 63]);
});
