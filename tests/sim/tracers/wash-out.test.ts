import { expect, test } from "vitest";
import { buildField } from "../../../src/sim/flow-field/index.ts";
import { pathwayGeometry } from "../../../src/sim/geometry/pathways/index.ts";
import { CASES, PATHWAY_STAGES, type PathwayStage } from "../../../src/sim/parameters/request.ts";
import { seededRandom } from "../../../src/sim/random.ts";
import {
  advance,
  beginDye,
  fill,
  recordWashOut,
  TracerCloud,
  tracerPlane,
  type WashOutSpread,
  washOutSpread,
} from "../../../src/sim/tracers/index.ts";

/** Wash-out of pulses of half a second, by tracers in a developed field with the same inflow for all. */
function washOut(stage: PathwayStage): WashOutSpread {
  const geometry = pathwayGeometry({
    kind: "circulation",
    stage,
    body: CASES.caseA,
    volumeRule: "hold-output",
    set: {},
  })!;
  const session = buildField(geometry, { density: 1060, viscosity: 3.3 }, { cellsAcross: 8, depth: "round" });
  session.setBoundary({
    period: 0.5,
    inflow: { ivc: Float32Array.of(19), svc: Float32Array.of(16) },
    split: { left: 0.45, right: 0.55 },
    outflow: {},
  });
  session.advanceSeconds(3);
  const plane = tracerPlane(session.shape(), geometry.openings);
  const random = seededRandom(2);
  const cloud = new TracerCloud(1500);
  const supply = { inflow: { ivc: 19, svc: 16 }, hepaticShare: 0.5 };
  let field = session.read();
  fill(cloud, plane, 1500, supply, random);
  const curve = beginDye(cloud, 0.5);
  let elapsed = 0;
  while (!washOutSpread(curve) && elapsed < 60) {
    session.advanceSeconds(1 / 30);
    const next = session.read();
    advance(cloud, plane, { from: field, to: next, blend: 0.5, seconds: 1 / 30, supply }, random);
    field = next;
    elapsed += 1 / 30;
    recordWashOut(curve, cloud, elapsed);
  }
  session.release();
  return washOutSpread(curve)!;
}

test("dye leaves the atriopulmonary chamber last (de Leval 1988: it swirls there)", () => {
  const [chamber, tunnel, conduit] = PATHWAY_STAGES.map(washOut);
  for (const { mean, band } of [chamber!, tunnel!, conduit!]) {
    expect(band[0]).toBeLessThan(mean);
    expect(band[1]).toBeGreaterThan(mean);
  }
  expect(chamber!.mean).toBeGreaterThan(1.5 * tunnel!.mean);
  expect(chamber!.mean).toBeGreaterThan(1.5 * conduit!.mean);
}, 240_000);

test("the spread is that of ten pulses in a row, each by its own start, and waits for the last of them", () => {
  const cloud = new TracerCloud(1);
  const curve = beginDye(cloud, 0.5);
  expect(curve.seconds).toHaveLength(10);
  cloud.entered.fill(100);
  cloud.inside.fill(100);
  // The slowest pulse, the fourth, is out 3 s after it began, the others 1 s after.
  const out = (pulse: number) => 0.5 * (pulse - 1) + (pulse === 4 ? 3 : 1);
  for (let n = 1; n <= 140; n++) {
    const elapsed = 0.05 * n + 1e-9;
    for (let pulse = 1; pulse <= 10; pulse++) cloud.inside[pulse] = elapsed < out(pulse) ? 11 : 10;
    recordWashOut(curve, cloud, elapsed);
    if (elapsed < 5.5) expect(washOutSpread(curve)).toBeUndefined();
  }
  const { mean, band } = washOutSpread(curve)!;
  // Looked at every 0.05 s.
  for (const [found, exact] of [
    [mean, 1.2],
    [band[0], 1],
    [band[1], 3],
  ] as const) {
    expect(found).toBeGreaterThan(exact - 1e-6);
    expect(found).toBeLessThan(exact + 0.11);
  }
  expect(curve.seconds[3]).toBe(band[1]);
});

test("a new pulse begins a new spread", () => {
  const cloud = new TracerCloud(4);
  cloud.pulse.set([1, 2, 9, 10]);
  cloud.inside.fill(1);
  const curve = beginDye(cloud, 0.5);
  expect([...cloud.pulse]).toEqual([0, 0, 0, 0]);
  expect(cloud.inside.some((count) => count > 0)).toBe(false);
  expect(washOutSpread(curve)).toBeUndefined();
});
