import { describe, expect, it } from "vitest";
import { hairline, keepOff, roomFor } from "../../src/scenes/layers/keep-off.ts";
import { heightAt } from "../../src/scenes/layers/path-line.ts";
import { type Block, settle } from "../../src/scenes/layers/spread-labels.ts";
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

describe("plates over a plane", () => {
  const plate = (at: readonly [number, number], x: number, y: number) => ({ ...label(x, y), at });

  it("stay where they would like to be when that is free, and leave the blood when it is not", () => {
    const liked = plate([500, 300], 300, 300);
    expect(keepOff([liked], box, [], () => false)).toEqual([liked]);
    const blood = (x: number) => x > 200 && x < 480;
    const [moved] = keepOff([liked], box, [], ({ x, width }) =>
      [x - width / 2, x, x + width / 2].some(blood),
    );
    expect(blood(moved!.x - moved!.width / 2) || blood(moved!.x + moved!.width / 2)).toBe(false);
  });

  it("do not run along each other's hairlines: two spots at one height have no line in common", () => {
    const [left, right] = [plate([450, 300], 750, 300), plate([550, 300], 250, 300)];
    const placed = keepOff([left, right], box, [], () => false);
    expect(placed).toHaveLength(2);
    expect(placed[0]!.x).toBeLessThan(placed[1]!.x);
  });

  it("change places where neither finds a way past the other's hairline", () => {
    // Room for two plates, one above the other, and each wants the place beside the other's spot.
    const room = { x: 0, y: 200, width: 420, height: 120 };
    const low = { ...plate([400, 225], 100, 290), height: 50 };
    const high = { ...plate([400, 295], 100, 230), height: 50 };
    const placed = keepOff([low, high], room, [], ({ x }) => x > 120);
    expect(placed).toHaveLength(2);
    expect(placed[0]!.y).toBeLessThan(placed[1]!.y);
  });

  it("do not cross their hairlines, where they would if each lay where it likes", () => {
    const [first, second] = [plate([500, 300], 300, 420), plate([500, 400], 300, 280)];
    const placed = keepOff([first, second], box, [], () => false);
    expect(placed[0]).toEqual(first);
    expect(placed[1]!.y).not.toBe(second.y);
    const [from, to] = hairline(placed[0]!);
    const side = ([x, y]: readonly [number, number]) =>
      Math.sign((to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0]));
    expect(hairline(second).map(side)).toEqual([-1, 1]);
    expect(new Set(hairline(placed[1]!).map(side)).size).toBe(1);
  });

  it("a panel takes the room nearest a corner in which it covers nothing, the smaller one where the larger has none", () => {
    const panels = [
      { width: 400, height: 200, plotted: true },
      { width: 200, height: 100, plotted: false },
    ];
    const at = (taken: readonly (typeof box)[], left: number, right: number) =>
      roomFor(panels, box, taken, ({ x, width }) => x + width > left && x < right);
    expect(at([], 2000, 3000)).toMatchObject({ x: 592, y: 8, plotted: true });
    expect(at([], 900, 1000)).toMatchObject({ x: 8, y: 8, plotted: true });
    // A narrow vessel beneath the middle of a panel is seen all the same.
    expect(at([], 780, 790)!.x + 400).toBeLessThanOrEqual(780);
    expect(at([{ ...box, height: 100 }], 300, 700)).toMatchObject({ x: 792, plotted: false });
    expect(at([{ ...box, height: 100 }], 300, 700)!.y).toBeGreaterThanOrEqual(100);
    expect(at([box], 2000, 3000)).toBeNull();
  });

  it("do not let a hairline pass below another plate", () => {
    const [first, second] = [plate([500, 300], 400, 360), plate([500, 420], 250, 250)];
    const covered = (line: ReturnType<typeof hairline>) =>
      [0.1, 0.3, 0.5, 0.7, 0.9].some((t) => {
        const [[ax, ay], [bx, by]] = line;
        return !clear(first, { x: ax + t * (bx - ax), y: ay + t * (by - ay), width: 0, height: 0 });
      });
    expect(covered(hairline(second))).toBe(true);
    const placed = keepOff([first, second], box, [], () => false);
    expect(placed[0]).toEqual(first);
    expect(covered(hairline(placed[1]!))).toBe(false);
  });

  it("a line's height is read between its points, and at its ends beyond them", () => {
    const line = [0, 10, 100, 10, 200, 50];
    expect([-5, 50, 150, 300].map((x) => heightAt(line, x))).toEqual([10, 10, 30, 50]);
  });
});
