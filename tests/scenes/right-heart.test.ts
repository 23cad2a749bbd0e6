// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { layVessels } from "../../src/scenes/circuit/dots.ts";
import { leafletsOf, valvesAt } from "../../src/scenes/circuit/right-heart.ts";
import {
  MOUTHS,
  PULMONARY,
  RIGHT_CHAMBERS,
  RIGHT_HEART_VESSELS,
  TRICUSPID,
} from "../../src/scenes/circuit/right-heart-shape.ts";
import { curve, type Spot } from "../../src/scenes/drawing/curve-drawing.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

const away = ([ax, ay]: Spot, [bx, by]: Spot) => Math.hypot(ax - bx, ay - by);
const ends = (name: string): readonly [Spot, Spot] => {
  const { points } = RIGHT_HEART_VESSELS.find((each) => each.name === name)!;
  return [points[0]!, points.at(-1)!];
};

test("each valve's hinges and each vein's mouth lie in a chamber's wall", () => {
  const walls = RIGHT_CHAMBERS.flatMap(({ cavity }) => {
    const { x, y } = curve(cavity, 4);
    return Array.from(x, (each, i): Spot => [each, y[i]!]);
  });
  for (const lips of MOUTHS)
    for (const lip of lips) expect(Math.min(...walls.map((wall) => away(wall, lip)))).toBeLessThan(9);
});

test("blood goes from both veins through the tricuspid valve to the apex, and out through the pulmonary valve", () => {
  const middle = ([a, b]: readonly [Spot, Spot]): Spot => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const [tricuspid, pulmonary] = [middle(TRICUSPID.hinges), middle(PULMONARY.hinges)];
  for (const vein of ["fromUpperVein", "fromLowerVein"])
    expect(away(ends(vein)[1], tricuspid)).toBeLessThan(12);
  expect(away(ends("throughRightVentricle")[0], tricuspid)).toBeLessThan(12);
  expect(away(ends("throughRightVentricle")[1], ends("throughOutflow")[0])).toBeLessThan(12);
  expect(away(ends("throughOutflow")[1], pulmonary)).toBeLessThan(8);
  expect(away(ends("lungTrunk")[0], pulmonary)).toBeLessThan(8);
  expect(ends("leftPulmonaryArtery")[0]).toEqual(ends("lungTrunk")[1]);
});

test("leaflets meet in the middle of a shut valve, and lie along the blood in an open one", () => {
  for (const valve of [TRICUSPID, PULMONARY]) {
    const [[, , one], [, , other]] = leafletsOf(valve, 0, false);
    expect(away(one, other)).toBeLessThan(1e-6);
    const [[, , a], [, , b]] = leafletsOf(valve, 1, false);
    expect(away(a, b)).toBeGreaterThan(0.6 * away(...valve.hinges));
  }
});

test("in each beat the tricuspid valve opens while the ventricle fills, the pulmonary one while it ejects, never both wide", () => {
  const circulation = solve({ ...START.request, stage: "two-ventricle" });
  const { heartPeriod } = circulation.traces;
  const seen = Array.from({ length: 200 }, (_, i) => valvesAt(circulation, (i / 200) * heartPeriod));
  expect(seen.some(([filling]) => filling === 1)).toBe(true);
  expect(seen.some(([, ejecting]) => ejecting === 1)).toBe(true);
  for (const [filling, ejecting] of seen) expect(Math.min(filling, ejecting)).toBeLessThanOrEqual(0.5);
});

test("vessels that open into each other are as wide where they meet", () => {
  const laid = layVessels(RIGHT_HEART_VESSELS);
  const width = (name: string) => laid.find(({ vessel }) => vessel.name === name)!.vessel.width;
  expect(Math.abs(width("lungTrunk") - width("leftPulmonaryArtery"))).toBeLessThanOrEqual(4);
});
