import { expect, test } from "vitest";
import { pathwayLoss } from "../../../src/sim/hydraulics/ledger.ts";
import { FEATURES } from "../../../src/sim/hydraulics/loss-law/features.ts";
import { LAW } from "../../../src/sim/hydraulics/loss-law/law-set.ts";
import { pathwayEstimate } from "../../../src/sim/hydraulics/pathway-estimate.ts";
import { pathwayLaw } from "../../../src/sim/hydraulics/pathway-network.ts";
import { CASES, type PathwayStage } from "../../../src/sim/parameters/request.ts";

test("a pathway of which the 3D set has no case is outside it in everything, with the wide band", () => {
  const ranges = LAW.ranges as { [At in PathwayStage]?: (typeof LAW.ranges)[At] };
  const { extracardiac } = ranges;
  const request = {
    kind: "circulation",
    stage: "extracardiac",
    body: CASES.caseA,
    volumeRule: "hold-output",
    set: {},
  } as const;
  const flow = (0.72 * 3e-3) / 60;
  const flows = { ivc: 0.55 * flow, svc: 0.45 * flow, left: 0.45 * flow, right: 0.55 * flow };
  const loss = pathwayLoss(pathwayLaw(request, flows), flows);
  try {
    delete ranges.extracardiac;
    const estimate = pathwayEstimate(request, flows, loss)!;
    expect(estimate.outsideSet).toEqual(FEATURES);
    expect(Math.log(estimate.band.powerLoss[1] / loss.powerLoss)).toBeGreaterThan(LAW.outside.power - 1e-9);
  } finally {
    ranges.extracardiac = extracardiac!;
  }
});
