import { expect, test } from "vitest";
import { BLOOD_DENSITY, bloodViscosity } from "../../../src/sim/body/blood.ts";
import { buildField } from "../../../src/sim/flow-field/index.ts";
import { pathwayGeometry } from "../../../src/sim/geometry/pathways/index.ts";
import { CASES } from "../../../src/sim/parameters/request.ts";

const long = process.env.LUNGWARD_LONG === "1";

test("Exercise: at a Reynolds number of 3,000 in the conduit, flow that beats stays finite and no faster than what drives it", () => {
  const body = CASES.caseA;
  const geometry = pathwayGeometry({
    kind: "circulation",
    stage: "extracardiac",
    body,
    volumeRule: "hold-output",
    set: {},
  })!;
  const viscosity = bloodViscosity(body.haemoglobin);
  const diameter = geometry.openings.find(({ name }) => name === "ivc")!.width * 1e-3;
  const speed = (3000 * viscosity) / (BLOOD_DENSITY * diameter);
  // mL/s; the beat swings by half, the upper vein brings half as much
  const flow = speed * (Math.PI / 4) * diameter ** 2 * 1e6;
  const field = buildField(
    geometry,
    { density: BLOOD_DENSITY, viscosity: viscosity * 1e3 },
    { cellsAcross: long ? 12 : 8, depth: "round" },
  );
  field.setBoundary({
    period: 0.4,
    inflow: {
      ivc: Float32Array.of(flow, 1.5 * flow, flow, 0.5 * flow),
      svc: Float32Array.of(0.5 * flow),
    },
    split: { left: 0.45, right: 0.55 },
    outflow: {},
  });
  for (let beat = 0; beat < (long ? 20 : 1); beat++) {
    field.advanceSeconds(0.4);
    const { u, v, readings } = field.read();
    const fastest = Math.sqrt(u.reduce((most, x, k) => Math.max(most, x ** 2 + v[k]! ** 2), 0));
    const fromMmHg = (133.322 * 2) / BLOOD_DENSITY;
    const totals = readings.openings.map(({ totalPressure }) => totalPressure);
    const driven = Math.sqrt(fromMmHg * (Math.max(...totals) - Math.min(...totals)));
    expect(Number.isFinite(readings.powerLoss)).toBe(true);
    expect(fastest, `beat ${beat}`).toBeLessThan(1.5 * Math.hypot(driven, 2.25 * speed));
    expect(Math.abs(readings.massBalancePercent)).toBeLessThan(3);
  }
}, 900_000);
