/** Where facing streams change sides: what they lose there, and how open their shares are. */
import { expect, test } from "vitest";
import { pathwaySizes } from "../../../src/sim/geometry/pathways/sizes.ts";
import { lowerPart } from "../../../src/sim/hydraulics/facing-streams.ts";
import { featuresOf, streamsOf } from "../../../src/sim/hydraulics/loss-law/features.ts";
import {
  awayFrom,
  excessAt,
  nearness,
  PARTING,
  sideAt,
} from "../../../src/sim/hydraulics/loss-law/parting.ts";
import { beyond, rangesOf } from "../../../src/sim/hydraulics/loss-law/range.ts";
import { pathwayEstimate } from "../../../src/sim/hydraulics/pathway-estimate.ts";
import { baseLaw } from "../../../src/sim/hydraulics/pathway-network.ts";
import { CASES } from "../../../src/sim/parameters/request.ts";

const ask = (set: Record<string, number>, stage: "extracardiac" | "lateral-tunnel" = "extracardiac") =>
  ({ kind: "circulation", stage, body: CASES.caseA, volumeRule: "hold-output", set }) as const;
const flow = (0.72 * 3e-3) / 60;
const rest = { ivc: 0.55 * flow, svc: 0.45 * flow, left: 0.45 * flow, right: 0.55 * flow };
const openOf = (cavalOffset: number) => {
  const [low, high] = pathwayEstimate(ask({ cavalOffset }), rest, { pressureDrop: 1, powerLoss: 1 })!.shares
    .ivc.band;
  return high - low;
};

test("a narrowing's jet costs the upper stream what it hits of it, and nothing where it passes", () => {
  const upper = (set: Record<string, number>) =>
    baseLaw(ask(set), rest).branches.svc.find(({ element }) => element === "upperMeeting")!.b;
  const added = (cavalOffset: number) =>
    upper({ cavalOffset, pathwayNarrowing: 50 }) - upper({ cavalOffset, pathwayNarrowing: 0 });
  expect(added(0)).toBeGreaterThan(0);
  expect(added(-14)).toBeLessThan(0.1 * added(0));
});

test("near the place of parting a share is more open than beside it, as repeats from other starts are", () => {
  expect(openOf(-2.4)).toBeGreaterThan(2 * openOf(7));
});

test("a jet moves the place of parting to the left; at the place the sides are even", () => {
  const place = PARTING.place + 2 * PARTING.byJet;
  expect(awayFrom(place, 2, PARTING)).toBeCloseTo(0, 12);
  expect(sideAt(awayFrom(place, 2, PARTING), PARTING)).toBeCloseTo(0, 12);
  expect(sideAt(awayFrom(place, 0, PARTING), PARTING)).toBeGreaterThan(0.5);
  expect(nearness(0)).toBe(1);
  expect(excessAt(1, { lower: 0.6, left: 0.3 })).toBeCloseTo(0.3, 12);
});

test("a lower stream whose lumen narrows brings less than two heads, never less than one", () => {
  const part = (set: Record<string, number>, stage: "extracardiac" | "lateral-tunnel") =>
    lowerPart(pathwaySizes(ask(set, stage)));
  expect(part({ conduitDiameter: 18 }, "extracardiac")).toBe(1);
  const tunnel = part({ tunnelDiameter: 24 }, "lateral-tunnel");
  expect(tunnel).toBeLessThan(0.9);
  expect(tunnel).toBeGreaterThan(0.5);
});

test("what lies beyond a pathway's cases is named; a pathway without cases lies beyond in everything", () => {
  const point = (conduitDiameter: number) => {
    const sizes = pathwaySizes(ask({ conduitDiameter }));
    return featuresOf(sizes, streamsOf(sizes.stage, rest), { density: 1060, viscosity: 3.3e-3 });
  };
  const ranges = rangesOf([point(16), point(20)]);
  expect(beyond(ranges, point(18))).toEqual([]);
  expect(beyond(ranges, point(24))).toEqual(["cavalOffset", "pathwayEnd", "pathwayDiameter"]);
  expect(beyond(undefined, point(18)).length).toBe(12);
});
