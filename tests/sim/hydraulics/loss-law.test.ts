import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { isFitted, readSet } from "../../../scripts/three-d/fit-set.ts";
import { page, readHeldOut, standing } from "../../../scripts/three-d/loss-page.ts";
import { unsettledOf } from "../../../scripts/three-d/unsettled.ts";
import { ledger, pathwayLoss } from "../../../src/sim/hydraulics/ledger.ts";
import { cholesky } from "../../../src/sim/hydraulics/loss-law/cholesky.ts";
import { branchDrops, leastChange, lossOf } from "../../../src/sim/hydraulics/loss-law/correction.ts";
import { crossable, partsAt, positionOf } from "../../../src/sim/hydraulics/loss-law/crossing.ts";
import {
  FEATURES,
  featuresOf,
  INTERPOLATED,
  streamsOf,
} from "../../../src/sim/hydraulics/loss-law/features.ts";
import { processOf } from "../../../src/sim/hydraulics/loss-law/gaussian-process.ts";
import { LAW } from "../../../src/sim/hydraulics/loss-law/law-set.ts";
import { covariancesOf } from "../../../src/sim/hydraulics/loss-law/quick-covariance.ts";
import { pathwayEstimate } from "../../../src/sim/hydraulics/pathway-estimate.ts";
import { baseLaw, pathwayLaw } from "../../../src/sim/hydraulics/pathway-network.ts";
import { CASES, PATHWAY_STAGES, type Stage } from "../../../src/sim/parameters/request.ts";
import { toMilliwatt, toMmHg } from "../../../src/sim/units.ts";

const set = readSet();
const fitted = set.filter(isFitted);
const names = fitted.map(({ stored }) => stored.name);
const ask = (stage: Stage, values: Record<string, number> = {}) =>
  ({ kind: "circulation", stage, body: CASES.caseA, volumeRule: "hold-output", set: values }) as const;
const flow = (0.72 * 3e-3) / 60;
const rest = { ivc: 0.55 * flow, svc: 0.45 * flow, left: 0.45 * flow, right: 0.55 * flow };

/** The file keeps three decimals: half of the last, and a little for the constants' six digits. */
const rounds = (value: number, stored: number, what: string) =>
  expect(Math.abs(value - stored), what).toBeLessThan(5.1e-4);

test("the stored law is that of this set and these relations", () => {
  expect(LAW.features.map(({ length }) => length)).toEqual(Array(INTERPOLATED).fill(fitted.length));
  fitted.forEach((each, i) => {
    const { request, sizes, flows, streams, fluid, stored } = each;
    const point = featuresOf(sizes, streams, fluid);
    for (const [k, value] of point.slice(0, INTERPOLATED).entries())
      rounds(value, LAW.features[k]![i]!, `${stored.name} ${FEATURES[k]}`);
    const base = lossOf(branchDrops(baseLaw(request, flows), flows), streams);
    rounds(Math.log(each.power / base.power), LAW.power.values[i]!, `${stored.name} power`);
    rounds(Math.log(each.drop / base.drop), LAW.drop.values[i]!, `${stored.name} drop`);
  });
});

test("without cases run from other starts nothing says how far shares stray", () => {
  const once = fitted.filter(({ stored }) => stored.shares.ivc.starts === undefined);
  expect(() => unsettledOf(once)).toThrow(/no case was run from other starts/);
  expect(unsettledOf(fitted)).toBeCloseTo(LAW.unsettled, 3);
});

test("the validation page is current", () => {
  expect(readFileSync("docs/validation-three-d.md", "utf8")).toBe(page(readHeldOut()));
});

test("cases left out of the fit: nine in ten within 15 % and their own uncertainty, nine in ten within the band", () => {
  const { folds } = readHeldOut();
  expect(folds.map(({ name }) => name)).toEqual(names);
  const { inside, banded, shared } = standing(folds);
  for (const name of ["power", "drop"] as const) {
    expect(inside(name)).toBeGreaterThanOrEqual(0.9);
    expect(banded(name)).toBeGreaterThanOrEqual(0.9);
  }
  expect(shared()).toBeGreaterThanOrEqual(0.9);
});

test("an eighth of the cases left out at a time: as good as with a twentieth", () => {
  const { eighths } = readHeldOut();
  expect(eighths.map(({ name }) => name)).toEqual(names);
  const { inside, banded, shared } = standing(eighths);
  for (const name of ["power", "drop"] as const) {
    expect(inside(name)).toBeGreaterThanOrEqual(0.9);
    expect(banded(name)).toBeGreaterThanOrEqual(0.88);
  }
  expect(shared()).toBeGreaterThanOrEqual(0.88);
});

test("the whole law, as the ledger adds it up, is within a quarter and the case's own uncertainty of every case it was fitted to, and its band is no wider than 30 %", () => {
  for (const { request, flows, stored } of fitted.filter(({ stored }) => stored.family !== "fenestration")) {
    const loss = pathwayLoss(pathwayLaw(request, flows), flows);
    const allowed = ({ value, uncertainty }: typeof stored.power) => 0.25 * value + uncertainty;
    expect(Math.abs(loss.powerLoss - stored.power.value), stored.name).toBeLessThan(allowed(stored.power));
    expect(Math.abs(loss.pressureDrop - stored.drop.value), stored.name).toBeLessThan(allowed(stored.drop));
    const { band, outsideSet } = pathwayEstimate(request, flows, loss)!;
    expect(outsideSet, stored.name).toEqual([]);
    for (const [low, value, high] of [
      [band.pressureDrop[0], loss.pressureDrop, band.pressureDrop[1]],
      [band.powerLoss[0], loss.powerLoss, band.powerLoss[1]],
    ] as const) {
      expect(low).toBeLessThan(value);
      expect(high / value).toBeLessThanOrEqual(1.3 + 1e-9);
      expect(value / low).toBeLessThanOrEqual(1.3 + 1e-9);
    }
  }
});

test.each(PATHWAY_STAGES)("%s: the ledger's rows add up to the one number", (stage) => {
  const law = pathwayLaw(ask(stage), rest);
  const rows = ledger(law, rest);
  const loss = pathwayLoss(law, rest);
  expect(rows.reduce((sum, { powerLoss }) => sum + powerLoss, 0)).toBeCloseTo(loss.powerLoss, 9);
  const streams = streamsOf(stage, rest);
  const total = lossOf(branchDrops(law, rest), streams);
  expect(toMilliwatt(total.power)).toBeCloseTo(loss.powerLoss, 9);
  expect(toMmHg(total.drop)).toBeCloseTo(loss.pressureDrop, 9);
});

test("beyond the set the law says so, widens its band, and comes back to the relations alone", () => {
  const at = (values: Record<string, number>) => {
    const request = ask("extracardiac", values);
    const loss = pathwayLoss(pathwayLaw(request, rest), rest);
    return {
      loss,
      base: pathwayLoss(baseLaw(request, rest), rest),
      ...pathwayEstimate(request, rest, loss)!,
    };
  };
  const inside = at({});
  const beyond = at({ conduitDiameter: 8, pathwayNarrowing: 60 });
  expect(inside.outsideSet).toEqual([]);
  expect(beyond.outsideSet).toContain("pathwayDiameter");
  const width = ({ band, loss }: typeof inside) => band.powerLoss[1] / loss.powerLoss;
  expect(width(beyond)).toBeGreaterThan(width(inside));
  expect(width(beyond)).toBeGreaterThanOrEqual(Math.exp(LAW.outside.power) - 1e-9);
  expect(Math.abs(Math.log(beyond.loss.powerLoss / beyond.base.powerLoss))).toBeLessThan(0.2);
  expect(pathwayEstimate(ask("glenn"), rest, inside.loss)).toBeUndefined();
});

test("blood that does not run from both veins into both lungs gets the relations alone and is named", () => {
  const flows = { ...rest, svc: -1e-6 };
  const request = ask("extracardiac");
  const law = pathwayLaw(request, flows);
  expect(law.branches.ivc.every(({ factor }) => factor === 1)).toBe(true);
  expect(pathwayEstimate(request, flows, pathwayLoss(law, flows))!.outsideSet).toEqual(["flows"]);
});

test("the least change meets both drops, and leaves alone what is right already", () => {
  const base = { ivc: 30, svc: 20, lungs: 25 };
  for (const [lower, upper] of [
    [60, 50],
    [40, 52],
    [55, 45],
  ] as const) {
    const f = leastChange(base, 0.6, lower, upper);
    expect(f.ivc * base.ivc + f.lungs * base.lungs).toBeCloseTo(lower, 9);
    expect(f.svc * base.svc + f.lungs * base.lungs).toBeCloseTo(upper, 9);
  }
  expect(leastChange(base, 0.6, 55, 45)).toEqual({ ivc: 1, svc: 1, lungs: 1 });
});

test("both veins' parts to the left lung give it its flow, wherever the streams stand", () => {
  const streams = { lungs: 1, lower: 0.6, left: 0.4 };
  for (const position of [-0.2, 0, 0.3, 1, 1.2]) {
    const { ivc, svc } = partsAt(position, streams);
    expect(0.6 * ivc + 0.4 * svc).toBeCloseTo(0.4, 12);
    expect(Math.min(ivc, svc)).toBeGreaterThanOrEqual(0);
  }
  expect(positionOf(partsAt(0.3, streams), streams)).toBeCloseTo(0.3, 12);
  expect(crossable(streams)).toBeCloseTo(2 / 3, 12);
});

test("both veins' shares as told give the left lung exactly its flow, over offsets, splits and narrowings", () => {
  for (const stage of PATHWAY_STAGES)
    for (const cavalOffset of [-9, -3, 0, 4, 10])
      for (const [lower, left] of [
        [0.42, 0.7],
        [0.55, 0.3],
        [0.7, 0.45],
      ] as const)
        for (const pathwayNarrowing of stage === "atriopulmonary" ? [0] : [0, 50]) {
          const flows = {
            ivc: lower * flow,
            svc: (1 - lower) * flow,
            left: left * flow,
            right: (1 - left) * flow,
          };
          const request = ask(stage, { cavalOffset, pathwayNarrowing });
          const loss = pathwayLoss(pathwayLaw(request, flows), flows);
          const { ivc, svc } = pathwayEstimate(request, flows, loss)!.shares;
          expect((ivc.left * flows.ivc + svc.left * flows.svc) / flow).toBeCloseTo(left, 12);
          expect((ivc.right * flows.ivc + svc.right * flows.svc) / flow).toBeCloseTo(1 - left, 12);
        }
});

test("the lower stream loses more the more the lung beside it takes, and not where it lies towards the other one", () => {
  const lost = (left: number, cavalOffset: number) => {
    const flows = { ...rest, left: left * flow, right: (1 - left) * flow };
    const rows = baseLaw(ask("extracardiac", { cavalOffset }), flows).branches.ivc;
    return rows.find(({ element }) => element === "lowerMeeting")!.b;
  };
  expect(lost(0.6, 4)).toBeGreaterThan(1.5 * lost(0.4, 4));
  expect(lost(0.6, -7)).toBeLessThan(lost(0.4, -7));
});

test("covariances by distinct values are those of the definition", () => {
  const [together, alone, lengths] = [0.3, 0.4, [0.7, 1.3]];
  const points = [
    [0, 1],
    [0, 2],
    [1.5, 1],
    [-0.4, 0.3],
  ];
  const defined = (one: readonly number[], other: readonly number[]) => {
    const alike = one.map((value, k) => Math.exp(-0.5 * ((value - other[k]!) / lengths[k]!) ** 2));
    return together ** 2 * alike[0]! * alike[1]! + (alone ** 2 * (alike[0]! + alike[1]!)) / 2;
  };
  const { towards, among } = covariancesOf(points, { together, alone, lengths });
  const between = [0.3, 1.2];
  towards(between).forEach((value, j) => {
    expect(value).toBeCloseTo(defined(between, points[j]!), 14);
  });
  const rows = among();
  expect(rows.map(({ length }) => length)).toEqual([1, 2, 3, 4]);
  rows.forEach((row, i) => {
    for (const [j, value] of row.entries()) expect(value).toBeCloseTo(defined(points[i]!, points[j]!), 14);
  });
});

test("a Gaussian process passes through exact values, and far away knows nothing but its spread", () => {
  const spread = { together: 0.3, alone: 0.4, noise: 1e-4, lengths: [1, 1] };
  const samples = {
    points: [
      [0, 0],
      [1, 0],
      [0, 2],
    ],
    values: [0.1, -0.2, 0.3],
    errors: [0, 0, 0],
  };
  const process = processOf(samples, spread);
  samples.points.forEach((point, i) => {
    expect(process.mean(point)).toBeCloseTo(samples.values[i]!, 4);
    expect(process.estimate(point).deviation).toBeLessThan(0.001);
  });
  expect(process.mean([40, 40])).toBeCloseTo(0, 12);
  expect(process.estimate([40, 40]).deviation).toBeCloseTo(0.5, 6);
  expect(cholesky([Float64Array.of(1, 2), Float64Array.of(2, 1)])).toBeUndefined();
});
