import { describe, expect, it } from "vitest";
import { type Block, settle } from "../../src/scenes/layers/settle.ts";
import { seededRandom } from "../../src/sim/random.ts";

const box = { x: 0, y: 0, width: 1000, height: 600 };
const label = (x: number, y: number): Block => ({ x, y, width: 150, height: 50 });
const clear = (a: Block, b: { x: number; y: number; width: number; height: number }) =>
  Math.abs(a.x - b.x) >= (a.width + b.width) / 2 || Math.abs(a.y - b.y) >= (a.height + b.height) / 2;

describe("labels", () => {
  it("stay where they are when they have room", () => {
    const labels = [label(200, 100), label(500, 300)];
    expect(settle(labels, box)).toEqual(labels);
  });

  it("U20 never cover each other nor the key, and never leave the box, wherever a dozen of them start", () => {
    const random = seededRandom(3);
    const key = { x: 0, y: 0, width: 220, height: 180 };
    for (let round = 0; round < 40; round++) {
      const labels = Array.from({ length: 12 }, () => label(1000 * random(), 600 * random()));
      const settled = settle(labels, box, [key]);
      settled.forEach((a, i) => {
        expect(a.x - a.width / 2).toBeGreaterThanOrEqual(-0.5);
        expect(a.x + a.width / 2).toBeLessThanOrEqual(1000.5);
        expect(a.y - a.height / 2).toBeGreaterThanOrEqual(-0.5);
        expect(a.y + a.height / 2).toBeLessThanOrEqual(600.5);
        for (const b of settled.slice(i + 1)) expect(clear(a, b)).toBe(true);
        expect(clear(a, { x: 110, y: 90, width: 220, height: 180 })).toBe(true);
      });
    }
  });
});
