import { expect, test } from "vitest";
import { createSweep, planSweep } from "../../src/chain/running-sweep.ts";
import { hasMessage } from "../../src/i18n/index.ts";
import { DARK, LIGHT } from "../../src/scenes/theme/colour.ts";
import { mapColour } from "../../src/scenes/theme/maps.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";
import { digitsFor } from "../../src/ui/traces/digits.ts";
import { inkOn, placesOf } from "../../src/ui/traces/map-cells.ts";
import {
  pressureVolumeLoop,
  summaryOf,
  sweepSeries,
  TRACE_KINDS,
  traceSeries,
} from "../../src/ui/traces/series.ts";

const circulation = solve({ ...START.request, set: { fenestrationDiameter: 4 } });

test("U7 within a chart no two curves share a colour or a dash pattern, and each has its words", () => {
  for (const palette of [DARK, LIGHT])
    for (const kind of TRACE_KINDS) {
      const series = traceSeries(kind, circulation, palette);
      expect(series.length, kind).toBeGreaterThan(1);
      expect(new Set(series.map(({ colour }) => colour)).size).toBe(series.length);
      expect(new Set(series.map(({ dash }) => String(dash))).size).toBe(series.length);
      for (const { name } of series) expect(hasMessage(`traces.series.${name}`), name).toBe(true);
    }
});

test("with two ventricles the curves are of the left heart and of the pulmonary trunk", () => {
  const two = solve({ ...START.request, stage: "two-ventricle" });
  const names = [...traceSeries("pressures", two, DARK), ...pressureVolumeLoop(two, DARK)!.series].map(
    ({ name }) => name,
  );
  expect(names).toEqual(["mainPulmonaryArtery", "leftAtrium", "pulmonaryVein", "ivc", "leftVentricle"]);
  for (const name of names) expect(hasMessage(`traces.series.${name}`), name).toBe(true);
});

test("a closed fenestration has no curve", () => {
  const names = (set: Record<string, number>) =>
    traceSeries("flows", solve({ ...START.request, set }), DARK).map(({ name }) => name);
  expect(names({})).not.toContain("fenestration");
  expect(names({ fenestrationDiameter: 4 })).toContain("fenestration");
});

test("the table in place of a trace states the model's own mean", () => {
  const pathway = traceSeries("pressures", circulation, DARK).find(({ name }) => name === "pathway")!;
  const summary = summaryOf(pathway.values, true)!;
  expect(summary.mean).toBeCloseTo(circulation.pressures.pathway, 1);
  expect(summary.least).toBeLessThan(summary.mean);
  expect(summary.greatest).toBeGreaterThan(summary.mean);
});

test("gaps are left out of a summary, and nothing but gaps has none", () => {
  expect(summaryOf([1, Number.NaN, 3], false)).toEqual({ mean: 2, least: 1, greatest: 3 });
  expect(summaryOf([Number.NaN], false)).toBeNull();
});

test("the pressure-volume loop encloses the ventricle's stroke work, turning anticlockwise", () => {
  const loop = pressureVolumeLoop(circulation, DARK)!;
  const pressure = loop.series[0]!.values;
  let work = 0;
  for (let i = 1; i < loop.x.length; i++)
    work -= ((pressure[i]! + pressure[i - 1]!) / 2) * (loop.x[i]! - loop.x[i - 1]!);
  // mmHg.mL over one repeat -> mW, against the energy budget's own figure.
  const milliwatt = ((work * 133.322e-6) / circulation.traces.period) * 1000;
  expect(milliwatt / circulation.energy.sources.ventricle!).toBeCloseTo(1, 1);
});

test("a sweep that is not answered yet is a curve of gaps", () => {
  const { sweep, cancel } = createSweep(
    planSweep({ ...START, scene: "exercise" })!,
    () => new Promise(() => {}),
  );
  const [first] = sweepSeries(
    sweep.value,
    ({ flows }) => flows.systemic,
    (name) => name,
    DARK,
  );
  expect(Array.from(first!.values).every(Number.isNaN)).toBe(true);
  cancel();
});

test("U6 ink on every colour of the maps keeps 4.5:1", () => {
  const channel = (value: number) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);
  for (const map of ["speed", "pressure", "loss", "age"] as const)
    for (let place = 0; place <= 1; place += 0.05) {
      const colour = mapColour(map, place);
      const [r, g, b] = colour.map(channel);
      const lum = 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
      const contrast = inkOn(colour) === "#000000" ? (lum + 0.05) / 0.05 : 1.05 / (lum + 0.05);
      expect(contrast).toBeGreaterThanOrEqual(4.5);
    }
});

test("a map's cells are between the least and the greatest, and an empty cell stays empty", () => {
  expect(
    placesOf([
      [2, null],
      [4, 3],
    ]),
  ).toEqual([
    [0, null],
    [1, 0.5],
  ]);
  expect(placesOf([[5, 5]])).toEqual([[0.5, 0.5]]);
});

test("marks are written exactly: 7.5 is never written as 8", () => {
  expect(digitsFor([0, 5, 10])).toBe(0);
  expect(digitsFor([0, 0.5])).toBe(1);
  expect(digitsFor([0.25, 0.3])).toBe(2);
  expect(digitsFor([7])).toBe(0);
  expect(digitsFor([5, 7.5, 10])).toBe(1);
  expect(digitsFor([0.1, 0.2, 0.30000000000000004])).toBe(1);
});
