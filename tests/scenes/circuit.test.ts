import { expect, test } from "vitest";
import { swelling } from "../../src/scenes/anatomy/standing.ts";
import { vesselsOf } from "../../src/scenes/circuit/anatomy.ts";
import { arrange, CHEST, stack } from "../../src/scenes/circuit/arrange.ts";
import { isRich } from "../../src/scenes/circuit/circuit-blood.ts";
import { layDots, layVessels, placeDot, reachPerMillilitre } from "../../src/scenes/circuit/dots.ts";
import { levelHeight } from "../../src/scenes/circuit/level.ts";
import { platesOf } from "../../src/scenes/circuit/plates.ts";
import { GROWN } from "../../src/scenes/circuit/proportions.ts";
import { curve } from "../../src/scenes/drawing/curve-drawing.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

test("what comes back from the body is marked as low in oxygen, however much a resting body leaves in it", () => {
  const { saturations } = solve({ ...START.request, stage: "two-ventricle" });
  for (const blood of ["svc", "ivc"] as const) expect(isRich(blood, saturations[blood]), blood).toBe(false);
  for (const blood of ["arterial", "pulmonaryVein"] as const)
    expect(isRich(blood, saturations[blood]), blood).toBe(true);
});

const laidOf = (stage: (typeof STAGES)[number]) => layVessels(vesselsOf(stage, true));

test.each(STAGES)("%s: the organs are all there and every vessel begins where another passes", (stage) => {
  const vessels = vesselsOf(stage, false);
  const names = vessels.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  for (const name of [
    "arch",
    "descending",
    "rightHeadBed",
    "leftHandBed",
    "liverBed",
    "gutBed",
    "rightBed",
    "leftBed",
    "svc",
    "lowerIvc",
  ])
    expect(names).toContain(name);
  // Each vessel but the heart's outlet begins where another passes or ends, or in a bed, within a vessel's width.
  const laid = laidOf(stage);
  for (const { vessel, line } of laid) {
    if (vessel.flow === "aorta" || vessel.flow === "pulmonary" || vessel.name === "chamber") continue;
    const near = Math.min(
      ...laid
        .filter((other) => other.vessel !== vessel)
        .flatMap((other) => [other.line, ...(other.between ?? [])])
        .map((other) =>
          Math.min(...Array.from(other.x, (x, i) => Math.hypot(x - line.x[0]!, other.y[i]! - line.y[0]!))),
        ),
    );
    expect(near, vessel.name).toBeLessThan(34);
  }
});

test("dots spread evenly: no stretch of a vessel is left empty or crowded", () => {
  const laid = laidOf("extracardiac");
  const dots = layDots(laid);
  expect(dots.count).toBeGreaterThan(300);
  expect(dots.count).toBeLessThan(1800);
  const own = Array.from({ length: dots.count }, (_, i) => i).filter(
    (i) => laid[dots.vessel[i]!]!.vessel.name === "lowerIvc",
  );
  const starts = own.map((i) => dots.start[i]!).sort((a, b) => a - b);
  for (let i = 1; i < starts.length; i++) expect(starts[i]! - starts[i - 1]!).toBeCloseTo(1 / own.length, 5);
});

test("a dot moves as far as the blood that passed, and twice as much blood moves it twice as far", () => {
  const laid = laidOf("extracardiac").find(({ vessel }) => vessel.name === "descending")!;
  const out = new Float64Array(5);
  const at = (reach: number) => {
    placeDot(laid, 0.1, 0, reach, out);
    return out[4]! * laid.line.length;
  };
  const one = reachPerMillilitre(laid.vessel, 0.72) * 2;
  expect(at(2 * one) - at(0)).toBeCloseTo(2 * (at(one) - at(0)), 6);
});

test("a dot never leaves the lumen that is drawn", () => {
  const out = new Float64Array(6);
  // A chamber's blood fills it between its own sides.
  for (const laid of laidOf("atriopulmonary").filter(({ cavity }) => !cavity)) {
    const fine = curve(laid.vessel.points, 1);
    for (let k = 0; k <= 50; k++) {
      placeDot(laid, k / 50, k % 2 ? 1 : -1, 0, out);
      const near = Math.min(...Array.from(fine.x, (x, i) => Math.hypot(x - out[0]!, fine.y[i]! - out[1]!)));
      expect(near, laid.vessel.name).toBeLessThanOrEqual(laid.vessel.width / 2 + 0.1);
    }
  }
});

const blocksOf = (stage: (typeof STAGES)[number], width: number, height: number) =>
  platesOf(stage).map((plate) => ({ plate, width, height }));

test("with a question on a low screen no block is below its box", () => {
  const box = { x: 0, y: 100, width: 380, height: 300 };
  const few = blocksOf("extracardiac", 150, 62)
    .filter(({ plate }) => plate.first)
    .map((block) => (block.plate.organ ? { ...block, width: 190, height: 115 } : block));
  const { places } = arrange(few, box, 8, GROWN.body);
  places.forEach(({ y }, i) => {
    expect(y + few[i]!.height).toBeLessThanOrEqual(box.y + box.height + 1);
    expect(y).toBeGreaterThanOrEqual(box.y - 1);
  });
});

test("where plates have no room beside the lungs, none lies on the key above them", () => {
  const box = { x: 120, y: 70, width: 900, height: 560 };
  const chest = blocksOf("two-ventricle", 120, 36).filter(({ plate }) => plate.at[1] < CHEST.bottom);
  const [head, at] = [150, { scale: 1.5, x: -100, y: -180 }];
  const { places } = arrange(chest, box, 8, CHEST, { head, at });
  const onLeft = places.filter((_, i) => chest[i]!.plate.side === "left");
  expect(onLeft.length).toBeGreaterThan(0);
  for (const { y } of onLeft) expect(y).toBeGreaterThanOrEqual(box.y + head);
});

test.each([
  ["a wide hall screen", { x: 32, y: 32, width: 1856, height: 960 }, 150, 62],
  ["a tall kiosk", { x: 32, y: 100, width: 1016, height: 1700 }, 180, 70],
  ["a phone", { x: 12, y: 80, width: 366, height: 680 }, 110, 40],
])("no plate covers another or leaves the box on %s", (_, box, width, height) => {
  const { places } = arrange(blocksOf("extracardiac", width, height), box, 8, GROWN.body);
  places.forEach((a, i) => {
    expect(a.x).toBeGreaterThanOrEqual(box.x - 1);
    expect(a.x + width).toBeLessThanOrEqual(box.x + box.width + 1);
    expect(a.y).toBeGreaterThanOrEqual(box.y - 1);
    expect(a.y + height).toBeLessThanOrEqual(box.y + box.height + 1);
    for (const b of places.slice(i + 1))
      expect(
        Math.abs(a.x - b.x) < width && Math.abs(a.y - b.y) < height,
        `${a.x} ${a.y} / ${b.x} ${b.y}`,
      ).toBe(false);
  });
});

test("blocks that crowd at the end are pushed back up in order", () => {
  expect(stack([90, 95, 98], [10, 10, 10], 2, 0, 100)).toEqual([66, 78, 90]);
  expect(stack([5, 6], [10, 10], 2, 0, 100)).toEqual([0, 12]);
});

test("a chamber of eight times its mean volume is twice as wide; an empty one has no width", () => {
  expect(swelling(320, 40)).toBeCloseTo(2, 12);
  expect(swelling(-1, 40)).toBe(0);
});

test("a level is in proportion and never exceeds its column", () => {
  expect(levelHeight(12, 100)).toBeCloseTo(2 * levelHeight(6, 100), 12);
  expect(levelHeight(50, 100)).toBe(100);
  expect(levelHeight(-3, 100)).toBe(0);
});
