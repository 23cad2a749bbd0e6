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
  washOutSeconds,
} from "../../../src/sim/tracers/index.ts";

/** s until 90 % of a pulse of half a second has left, by tracers in a developed field with the same inflow for all. */
function washOut(stage: PathwayStage): number {
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
  while (washOutSeconds(curve) === undefined && elapsed < 30) {
    session.advanceSeconds(1 / 30);
    const next = session.read();
    advance(cloud, plane, { from: field, to: next, blend: 0.5, seconds: 1 / 30, supply }, random);
    field = next;
    elapsed += 1 / 30;
    recordWashOut(curve, cloud, elapsed);
  }
  session.release();
  return washOutSeconds(curve) ?? elapsed;
}

test("dye leaves the atriopulmonary chamber last (de Leval 1988: it swirls there)", () => {
  const [chamber, tunnel, conduit] = PATHWAY_STAGES.map(washOut) as [number, number, number];
  expect(chamber).toBeGreaterThan(1.5 * tunnel);
  expect(chamber).toBeGreaterThan(1.5 * conduit);
}, 120_000);
