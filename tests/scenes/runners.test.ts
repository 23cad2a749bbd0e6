import type { Graphics } from "pixi.js";
import { expect, test, vi } from "vitest";
import { EFFORTS } from "../../src/chain/running-sweep.ts";
import { innerBox } from "../../src/scenes/drawing/plot.ts";
import { drawOthers, drawShown, roomAhead } from "../../src/scenes/exercise/runners.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";

vi.mock("pixi.js", () => ({}));

/** CSS px: how far left and right anything is drawn. */
function spanOf(draw: (ink: Graphics) => void): readonly [least: number, most: number] {
  const xs: number[] = [];
  const note: Readonly<Record<string, (...given: never[]) => void>> = {
    circle: (x: number, _: number, radius: number) => xs.push(x - radius, x + radius),
    rect: (x: number, _: number, wide: number) => xs.push(x, x + wide),
    poly: (points: readonly number[]) => xs.push(...points.filter((_, i) => i % 2 === 0)),
    moveTo: (x: number) => xs.push(x),
    lineTo: (x: number) => xs.push(x),
  };
  const ink: Graphics = new Proxy({} as Graphics, {
    get:
      (_, name: string) =>
      (...given: unknown[]) => {
        note[name]?.(...(given as never[]));
        return ink;
      },
  });
  draw(ink);
  return [Math.min(...xs), Math.max(...xs)];
}

test.each([
  ["projector", 620, 128, 20],
  ["kiosk", 411, 91, 12],
  ["phone", 370, 84, 13],
])("the row of runners stays within its box beside the numbers: %s", (_, width, height, type) => {
  const box = { x: 10, y: 20, width, height };
  const inner = innerBox({ ...box, width: width - roomAhead(EFFORTS, box, type) }, type, 0);
  const toX = (effort: number) => inner.x + ((effort - 1) / 7) * inner.width;
  for (let time = 0; time < 1; time += 0.05) {
    const state = { efforts: EFFORTS, now: 8, years: 5, time, still: false };
    const [least, most] = spanOf((ink) => {
      drawOthers(ink, state, { toX }, box, darkTheme(String));
      drawShown(ink, state, { toX }, box, darkTheme(String));
    });
    expect(least).toBeGreaterThanOrEqual(box.x);
    expect(most).toBeLessThanOrEqual(box.x + width);
  }
  expect(inner.width).toBeGreaterThan(0.8 * width);
});
