// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest.ts";
import { streamIn } from "../../src/scenes/layers/vein-stream.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { pathwaySizes } from "../../src/sim/geometry/pathways/sizes.ts";
import { START } from "../../src/state/scene-state.ts";

const request = { ...START.request, stage: "glenn" } as const;
const geometry = pathwayGeometry(request)!;
const circulation = solve(request);
const { outline } = anatomyOf(geometry.chest).parts.find(({ name }) => name === "lowerVein")!;

test("at the Glenn stage the lower vein is drawn from below into the atrium, at its own width", () => {
  const atrium = geometry.chest.atrium;
  const lowest = Math.min(...atrium.map(([, y]) => y));
  const ys = outline.map(([, y]) => y);
  expect(Math.min(...ys)).toBeLessThan(lowest - 15);
  expect(Math.max(...ys)).toBeGreaterThan(lowest);
  const [a, b] = [outline[0]!, outline.at(-1)!];
  expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeCloseTo(pathwaySizes(request).ivc, 6);
});

test("its marks move by the blood that the circulation moved, upwards, and stay in the vein", () => {
  const marks = (time: number) => streamIn(geometry, circulation, time)!;
  const [left, right] = [Math.min(...outline.map(([x]) => x)), Math.max(...outline.map(([x]) => x))];
  const { position, count, origin } = marks(0.3);
  // 0.9 marks for each mm2 of the drawn lumen.
  expect(count).toBe(Math.round(0.9 * pathwaySizes(request).ivc * (end(outline.length / 2) - end(0))));
  for (let i = 0; i < count; i++) {
    expect(position[2 * i]!).toBeGreaterThan(left);
    expect(position[2 * i]!).toBeLessThan(right);
  }
  expect(new Set(origin)).toEqual(new Set([1, 2]));
  // A mark rises by what passed over the lumen's area, times the parabola: twice the mean in the middle, and marks keep to nine tenths of
  // the half width. One that leaves at the top comes in again below.
  const samples = 4;
  const [before, after] = [marks(0), marks(circulation.traces.time[samples]!)];
  const mean = (1000 * carried(samples)) / ((Math.PI * pathwaySizes(request).ivc ** 2) / 4);
  const length = end(outline.length / 2) - end(0);
  const rises = Array.from({ length: count }, (_, i) => {
    const rise = after.position[2 * i + 1]! - before.position[2 * i + 1]!;
    return rise < 0 ? rise + length : rise;
  });
  // Positions are single precision: about 1e-5 mm.
  expect(Math.max(...rises) / mean).toBeLessThan(2 + 1e-4);
  expect(Math.max(...rises) / mean).toBeGreaterThan(1.99);
  expect(Math.min(...rises) / mean).toBeGreaterThan(2 * (1 - 0.9 ** 2) - 1e-4);
});

/** mm, height of the vein's middle at its lower (0) or upper end of the outline, which runs up one side and down the other. */
const end = (i: number): number => {
  const [a, b] = i === 0 ? [outline[0]!, outline.at(-1)!] : [outline[i - 1]!, outline[i]!];
  return (a[1] + b[1]) / 2;
};

/** mL that the lower vein has carried until a sample, by the trapezoidal rule. */
function carried(samples: number): number {
  const { time, flows } = circulation.traces;
  let sum = 0;
  for (let i = 1; i <= samples; i++)
    sum += ((flows.ivc![i]! + flows.ivc![i - 1]!) / 2) * (time[i]! - time[i - 1]!) * (1000 / 60);
  return sum;
}

test("no other stage has such a vein", () => {
  expect(streamIn(pathwayGeometry(START.request)!, circulation, 0)).toBeNull();
});
