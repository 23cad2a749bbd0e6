import { expect, test } from "vitest";
import { planeDistance } from "../../../src/sim/geometry/distance.ts";
import type { FlowGeometry } from "../../../src/sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../../src/sim/geometry/pathways/index.ts";
import { CASES } from "../../../src/sim/parameters/request.ts";
import { seededRandom } from "../../../src/sim/random.ts";
import {
  advance,
  beginDye,
  entrance,
  fill,
  recordWashOut,
  resettle,
  TracerCloud,
  tracerPlane,
  type WashOut,
} from "../../../src/sim/tracers/index.ts";
import { ORIGINS } from "../../../src/sim/tracers/tracers.ts";
import { fieldOf, shapeOf } from "./made-plane.ts";

const conduit = (fenestrationDiameter = 4) =>
  pathwayGeometry({
    kind: "circulation",
    stage: "extracardiac",
    body: CASES.caseA,
    volumeRule: "hold-output",
    set: { fenestrationDiameter },
  })!;

const channel: FlowGeometry = {
  open: [
    {
      tube: {
        points: [
          [0, 0],
          [60, 0],
        ],
        width: 12,
      },
    },
  ],
  solid: [],
  openings: [
    { name: "ivc", centre: [0, 0], normal: [-1, 0], width: 12, velocity: 0 },
    { name: "left", centre: [60, 0], normal: [1, 0], width: 12, pressure: 0 },
  ],
};
const supply = { inflow: { ivc: 20, svc: 10, left: -15, right: -15 }, hepaticShare: 0.4 };

test("no tracer leaves the lumen in 10,000 frames of a wind that blows through the walls", () => {
  const geometry = conduit();
  const shape = shapeOf(geometry, geometry.bounds, 0.6);
  const plane = tracerPlane(shape, geometry.openings);
  const cloud = new TracerCloud(60);
  const random = seededRandom(7);
  const wind = Array.from({ length: 8 }, (_, i) => {
    const angle = (i * Math.PI) / 4;
    return fieldOf(shape, (x, y) => [
      0.5 * Math.cos(angle) + 0.02 * y * 0.3,
      0.5 * Math.sin(angle) - 0.02 * x * 0.3,
    ]);
  });
  fill(cloud, plane, 60, supply, random);
  const distance = planeDistance(geometry, 1.8);
  let furthest = -Infinity;
  for (let frame = 0; frame < 10_000; frame++) {
    const from = wind[(frame >> 4) & 7]!;
    const to = wind[((frame >> 4) + 1) & 7]!;
    advance(cloud, plane, { from, to, blend: (frame & 15) / 16, seconds: 1 / 60, supply }, random);
    for (let n = 0; n < cloud.count; n++) {
      furthest = Math.max(furthest, distance(cloud.position[2 * n]!, cloud.position[2 * n + 1]!));
    }
  }
  // mm: never on the far side, not even by the bend of a sharp corner between two cells
  expect(furthest).toBeLessThan(0.12);
});

test("a tracer in solid rotation comes back to its radius after ten turns", () => {
  const disc: FlowGeometry = { open: [{ disc: { centre: [0, 0], radius: 20 } }], solid: [], openings: [] };
  const shape = shapeOf(disc, [-20, -20, 20, 20], 0.5);
  const plane = tracerPlane(shape, []);
  const cloud = new TracerCloud(200);
  const random = seededRandom(1);
  // One turn a second.
  const spin = fieldOf(shape, (x, y) => [-2 * Math.PI * y * 1e-3, 2 * Math.PI * x * 1e-3]);
  fill(cloud, plane, 200, { inflow: {}, hepaticShare: 0 }, random);
  const before = cloud.position.slice();
  for (let frame = 0; frame < 600; frame++) {
    advance(cloud, plane, { from: spin, to: spin, blend: 0, seconds: 1 / 60, supply }, random);
  }
  for (let n = 0; n < 200; n++) {
    const radius = Math.hypot(before[2 * n]!, before[2 * n + 1]!);
    if (radius < 2 || radius > 18) continue;
    expect(Math.hypot(cloud.position[2 * n]!, cloud.position[2 * n + 1]!) / radius).toBeCloseTo(1, 1);
    expect(cloud.speed[n]).toBeCloseTo(2 * Math.PI * radius * 1e-3, 2);
  }
});

test("what enters is drawn in proportion to flow and nothing enters where blood leaves", () => {
  const geometry = conduit();
  const plane = tracerPlane(shapeOf(geometry, geometry.bounds, 1), geometry.openings);
  const random = seededRandom(3);
  const met: Record<string, number> = {};
  for (let i = 0; i < 9000; i++) {
    const name = geometry.openings[entrance(plane, supply, random)]!.name;
    met[name] = (met[name] ?? 0) + 1;
  }
  expect(Object.keys(met).sort()).toEqual(["ivc", "svc"]);
  expect(met.ivc! / met.svc!).toBeGreaterThan(1.85);
  expect(met.ivc! / met.svc!).toBeLessThan(2.15);
  expect(entrance(plane, { inflow: { left: -1 }, hepaticShare: 0 }, random)).toBe(-1);
});

/** A parabola through the channel, 0.1 m/s in its middle. */
function running(
  count: number,
  seconds: number,
  watch?: (cloud: TracerCloud, elapsed: number) => void,
  dye = 0,
) {
  const shape = shapeOf(channel, [0, -6, 60, 6], 0.5);
  const plane = tracerPlane(shape, channel.openings);
  const cloud = new TracerCloud(count);
  const random = seededRandom(11);
  const flow = fieldOf(shape, (_, y) => [0.1 * (1 - (y / 6) ** 2), 0]);
  fill(cloud, plane, count, supply, random);
  const curve: WashOut | undefined = dye > 0 ? beginDye(cloud, dye) : undefined;
  for (let frame = 1; frame <= seconds * 60; frame++) {
    advance(cloud, plane, { from: flow, to: flow, blend: 0, seconds: 1 / 60, supply }, random);
    if (curve) recordWashOut(curve, cloud, frame / 60);
    watch?.(cloud, frame / 60);
  }
  return { cloud, curve };
}

test("the number of tracers stays, every origin keeps its share of the lower vein's flow, liver blood runs at the sides", () => {
  const { cloud } = running(4000, 8);
  expect(Math.abs(cloud.count / 4000 - 1)).toBeLessThan(0.02);
  const liver = ORIGINS.indexOf("liver");
  let liverFlow = 0;
  let flow = 0;
  let liverAside = 0;
  let legsAside = 0;
  let livers = 0;
  for (let n = 0; n < cloud.count; n++) {
    if (cloud.age[n]! > 4) continue;
    const aside = Math.abs(cloud.position[2 * n + 1]!);
    flow += cloud.speed[n]!;
    if (cloud.origin[n] === liver) {
      liverFlow += cloud.speed[n]!;
      liverAside += aside;
      livers++;
    } else legsAside = Math.max(legsAside, aside);
  }
  expect(liverFlow / flow).toBeGreaterThan(0.34);
  expect(liverFlow / flow).toBeLessThan(0.46);
  expect(liverAside / livers).toBeGreaterThan(legsAside);
});

test("a tracer's age is the time since it entered", () => {
  const { cloud } = running(2000, 4);
  let checked = 0;
  for (let n = 0; n < cloud.count; n++) {
    const y = cloud.position[2 * n + 1]!;
    const run = cloud.position[2 * n]!;
    const velocity = 100 * (1 - (y / 6) ** 2);
    if (Math.abs(y) > 4 || run > velocity * cloud.age[n]! + 2) continue;
    expect(run / velocity).toBeCloseTo(cloud.age[n]!, 1);
    checked++;
  }
  expect(checked).toBeGreaterThan(500);
});

test("a dye pulse begins to leave after the fastest transit and is 90 % out when a parabola says so", () => {
  const { curve } = running(6000, 8, undefined, 0.1);
  const first = curve!.time[curve!.left.findIndex((left) => left < 0.999)]!;
  // 60 mm at 100 mm/s
  expect(first).toBeGreaterThan(0.55);
  expect(first).toBeLessThan(0.75);
  // Of a flux-weighted pulse in a plane parabola, half has left when z = sqrt(1 - 0.6/t) passes (3z - z3)/2 = 0.5: t = 0.682 s.
  const half = curve!.time[curve!.left.findIndex((left) => left <= 0.5)]!;
  expect(half).toBeGreaterThan(0.63);
  expect(half).toBeLessThan(0.85);
  // 90 %: z = 0.7320 -> t = 1.29 s.
  expect(curve!.seconds[0]!).toBeGreaterThan(1.1);
  expect(curve!.seconds[0]!).toBeLessThan(1.6);
  expect(curve!.left.at(-1)!).toBeLessThan(0.05);
});

test("trails are behind, newest first, and collapse where a tracer enters", () => {
  const { cloud } = running(500, 1);
  const length = cloud.trailLength;
  for (let n = 0; n < cloud.count; n++) {
    const at = (k: number) => cloud.trail[2 * (n * length + k)]!;
    expect(cloud.position[2 * n]! + 1e-3).toBeGreaterThanOrEqual(at(0));
    for (let k = 1; k < length; k++) expect(at(k - 1) + 1e-3).toBeGreaterThanOrEqual(at(k));
    if (cloud.age[n]! > 0.9) expect(cloud.position[2 * n]! - at(length - 1)).toBeGreaterThan(0);
  }
});

test("after the walls have moved every tracer is in the blood again", () => {
  const wide = conduit();
  const random = seededRandom(5);
  const cloud = new TracerCloud(3000);
  fill(cloud, tracerPlane(shapeOf(wide, wide.bounds, 0.6), wide.openings), 3000, supply, random);
  const narrow = pathwayGeometry({
    kind: "circulation",
    stage: "extracardiac",
    body: CASES.caseA,
    volumeRule: "hold-output",
    set: { conduitDiameter: 10, leftBranchStenosis: 50 },
  })!;
  resettle(cloud, tracerPlane(shapeOf(narrow, narrow.bounds, 0.6), narrow.openings), random);
  const distance = planeDistance(narrow, 0);
  for (let n = 0; n < cloud.count; n++) {
    expect(distance(cloud.position[2 * n]!, cloud.position[2 * n + 1]!)).toBeLessThan(0.05);
  }
});

test("the same seed gives the same picture", () => {
  expect(running(300, 1).cloud.position).toEqual(running(300, 1).cloud.position);
});

test("a gap that leaves brings none in: blood enters as full of tracers as the plane was filled", () => {
  const shape = shapeOf(channel, [0, -6, 60, 6], 0.5);
  const plane = tracerPlane(shape, channel.openings);
  const cloud = new TracerCloud(2500);
  const random = seededRandom(5);
  const flow = fieldOf(shape, (_, y) => [0.1 * (1 - (y / 6) ** 2), 0]);
  fill(cloud, plane, 2000, supply, random);
  const near = (from: number, to: number) => {
    let count = 0;
    for (let n = 0; n < cloud.count; n++) {
      const x = cloud.position[2 * n]!;
      if (x >= from && x < to) count++;
    }
    return count;
  };
  const full = near(0, 15);
  const first = (from: number, to: number) => {
    const seen = cloud.position.subarray(0, cloud.count).filter((x, i) => i % 2 === 0 && x >= from && x < to);
    return seen.length / near(from, to);
  };
  // The last third is emptied into the middle one.
  for (let n = 0; n < cloud.count; n++) if (cloud.position[2 * n]! > 40) cloud.position[2 * n]! -= 20;
  for (let frame = 0; frame < 15; frame++)
    advance(cloud, plane, { from: flow, to: flow, blend: 0, seconds: 1 / 60, supply }, random);
  expect(near(0, 15) / full).toBeGreaterThan(0.75);
  expect(near(0, 15) / full).toBeLessThan(1.2);
  // A picture with room for half of them shows half of those that have just come.
  expect(first(0, 10)).toBeGreaterThan(0.35);
  for (let frame = 0; frame < 600; frame++)
    advance(cloud, plane, { from: flow, to: flow, blend: 0, seconds: 1 / 60, supply }, random);
  expect(cloud.count / 2000).toBeGreaterThan(0.95);
  expect(cloud.count / 2000).toBeLessThan(1.08);
});

test("an opening that sucks blood out lets no tracer in, whatever its mean flow", () => {
  const shape = shapeOf(channel, [0, -6, 60, 6], 0.5);
  const plane = tracerPlane(shape, channel.openings);
  const cloud = new TracerCloud(1100);
  const random = seededRandom(6);
  const back = fieldOf(shape, (_, y) => [-0.1 * (1 - (y / 6) ** 2), 0]);
  fill(cloud, plane, 1000, supply, random);
  cloud.age.fill(9);
  for (let frame = 0; frame < 6; frame++)
    advance(cloud, plane, { from: back, to: back, blend: 0, seconds: 1 / 60, supply }, random);
  const young = Array.from({ length: cloud.count }, (_, n) => n).filter((n) => cloud.age[n]! < 1);
  expect(young.length).toBeGreaterThan(10);
  expect(Math.min(...young.map((n) => cloud.position[2 * n]!))).toBeGreaterThan(40);
});
