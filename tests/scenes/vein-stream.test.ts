// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
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
  const period = circulation.traces.period;
  const marks = (time: number) => streamIn(geometry, circulation, time)!;
  const [left, right] = [Math.min(...outline.map(([x]) => x)), Math.max(...outline.map(([x]) => x))];
  const { position, count, origin } = marks(0.3);
  expect(count).toBeGreaterThan(50);
  for (let i = 0; i < count; i++) {
    expect(position[2 * i]!).toBeGreaterThan(left);
    expect(position[2 * i]!).toBeLessThan(right);
  }
  expect(new Set(origin)).toEqual(new Set([1, 2]));
  // Within one repeat a mark rises by as much as passed over the lumen, times the profile's twice the mean at most.
  const step = period / 50;
  const [before, after] = [marks(0), marks(step)];
  const area = (Math.PI * pathwaySizes(request).ivc ** 2) / 4;
  const mean = (circulation.flows.ivc * 1000 * step) / 60 / area;
  const rises = Array.from(
    { length: count },
    (_, i) => after.position[2 * i + 1]! - before.position[2 * i + 1]!,
  ).filter((rise) => Math.abs(rise) < 10);
  expect(Math.max(...rises) * 1000).toBeGreaterThan(0);
  expect(Math.max(...rises.map(Math.abs))).toBeLessThan(2 * 3 * mean * 1000);
});

test("no other stage has such a vein", () => {
  expect(streamIn(pathwayGeometry(START.request)!, circulation, 0)).toBeNull();
});
