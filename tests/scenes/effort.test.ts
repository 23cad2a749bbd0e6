import { expect, test } from "vitest";
import { vesselsOf } from "../../src/scenes/circuit/anatomy.ts";
import { shownIn } from "../../src/scenes/circuit/arrange.ts";
import { saturationOf } from "../../src/scenes/circuit/circuit-blood.ts";
import { layVessels } from "../../src/scenes/circuit/dots.ts";
import { effort } from "../../src/scenes/circuit/effort.ts";
import { GROWN } from "../../src/scenes/circuit/proportions.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

const laid = layVessels(vesselsOf("extracardiac", false));
const at = (metabolicEquivalents: number) =>
  solve({ ...START.request, stage: "extracardiac", set: { ...START.request.set, metabolicEquivalents } });
const [rest, work] = [at(1), at(6)];
const widthsAt = (circulation: typeof rest): ReadonlyMap<string, number> => {
  const streams = effort();
  streams.follow(circulation, Number.POSITIVE_INFINITY);
  return new Map(streams.widened(laid).map(({ vessel: { name, width } }) => [name, width]));
};

test("effort widens the vessels of the legs, narrows those of belly and kidneys, and leaves what is sewn", () => {
  const [before, after] = [widthsAt(rest), widthsAt(work)];
  const change = (name: string) => after.get(name)! / before.get(name)!;
  for (const name of ["leftLegArtery", "rightLegFemoralVein", "leftLegTibialArtery"])
    expect(change(name), name).toBeGreaterThan(1.3);
  for (const name of ["gutArtery", "portal", "leftKidneyVein", "rightKidneyArtery", "hepatic"])
    expect(change(name), name).toBeLessThan(0.9);
  for (const name of ["conduit", "leftPulmonaryArtery", "leftCarotid", "arch"])
    expect(change(name), name).toBe(1);
});

test("widths follow little by little, and settle", () => {
  const streams = effort();
  streams.follow(rest, Number.POSITIVE_INFINITY);
  expect(streams.follow(rest, 0.1)).toBe(false);
  const width = () =>
    streams.widened(laid).find(({ vessel }) => vessel.name === "leftLegArtery")!.vessel.width;
  const before = width();
  expect(streams.follow(work, 0.1)).toBe(true);
  expect(width()).toBeGreaterThan(before);
  expect(width()).toBeLessThan(widthsAt(work).get("leftLegArtery")!);
  for (let k = 0; k < 100; k++) streams.follow(work, 0.1);
  expect(streams.follow(work, 0.1)).toBe(false);
  expect(width()).toBeCloseTo(widthsAt(work).get("leftLegArtery")!, 3);
});

test("portal blood has given some of its oxygen, hepatic blood more, and working legs' blood most", () => {
  const of = (blood: Parameters<typeof saturationOf>[1]) => saturationOf(work, blood);
  expect(of("portal")).toBeLessThan(of("arterial"));
  expect(of("hepatic")).toBeLessThan(of("portal"));
  expect(of("legs")).toBeLessThan(of("hepatic"));
  expect(of("kidneys")).toBeGreaterThan(of("portal"));
  const still = { ...rest, extras: {} };
  expect(saturationOf(still, "legs")).toBe(rest.saturations.ivc);
});

test("a body is whole where its heart is large enough to read, and else as far as its thighs", () => {
  const box = (width: number, height: number) => ({ x: 0, y: 0, width, height });
  expect(shownIn(box(1200, 800), GROWN)).toBe(GROWN.body);
  expect(shownIn(box(1200, 400), GROWN)).toBe(GROWN.thighs);
  expect(shownIn(box(200, 800), GROWN)).toBe(GROWN.thighs);
});
