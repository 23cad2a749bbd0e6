import { expect, test } from "vitest";
import { dragFactor, relaxationTime } from "../../../src/sim/clots/forces.ts";
import { ClotWorld } from "../../../src/sim/clots/index.ts";
import { planeDistance } from "../../../src/sim/geometry/distance.ts";
import type { FlowGeometry } from "../../../src/sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../../src/sim/geometry/pathways/index.ts";
import { wallOutlines } from "../../../src/sim/geometry/walls.ts";
import { CASES, PATHWAY_STAGES, type PathwayStage } from "../../../src/sim/parameters/request.ts";
import { seededRandom } from "../../../src/sim/random.ts";
import { fieldOf, shapeOf } from "../tracers/made-plane.ts";

const blood = { density: 1060, viscosity: 3.3e-3 };

const plane = (stage: PathwayStage) =>
  pathwayGeometry({
    kind: "circulation",
    stage,
    body: CASES.caseA,
    volumeRule: "hold-output",
    set: { fenestrationDiameter: 4 },
  })!;

/** Everything is drawn to the hole, faster than any fenestration does it. */
function suction(stage: PathwayStage) {
  const geometry = plane(stage);
  const shape = shapeOf(geometry, geometry.bounds, 0.6);
  const { centre, normal } = geometry.openings.find(({ name }) => name === "fenestration")!;
  const sink = [centre[0] + 3 * normal[0], centre[1] + 3 * normal[1]] as const;
  const field = fieldOf(shape, (x, y) => {
    const deltaX = sink[0] - x;
    const deltaY = sink[1] - y;
    const far = Math.hypot(deltaX, deltaY);
    const speed = Math.min(1.5, 12 / far);
    return [(speed * deltaX) / far, (speed * deltaY) / far];
  });
  return { geometry, around: { shape, from: field, to: field, blend: 0 }, centre, normal };
}

function drawn(stage: PathwayStage, diameter: number, seconds: number, starts: number) {
  const { geometry, around, centre, normal } = suction(stage);
  const world = new ClotWorld(geometry, blood);
  const distance = planeDistance(geometry, 3);
  const random = seededRandom(starts);
  const wall = wallOutlines(geometry, 0.35).flatMap(({ points, openings }) =>
    points.filter((_, i) => openings[i] === null),
  );
  for (let n = 0; n < starts; n++) {
    // Anywhere before the hole, wholly in blood.
    for (let attempt = 0; attempt < 500; attempt++) {
      const into = 3 + 12 * random();
      const up = 24 * (random() - 0.5);
      const x = centre[0] - into * normal[0] - up * normal[1];
      const y = centre[1] - into * normal[1] + up * normal[0];
      if (distance(x, y) > -0.55 * diameter) continue;
      world.place(diameter, x, y);
      break;
    }
  }
  let deepest = -Infinity;
  for (let t = 0; t < seconds; t += 1 / 60) {
    world.advance(around, 1 / 60);
    for (const clot of world.clots) {
      if (clot.place !== "pathway") continue;
      for (const [x, y] of wall)
        deepest = Math.max(deepest, clot.diameter / 2 - Math.hypot(x - clot.x, y - clot.y));
    }
  }
  return { clots: world.clots, deepest };
}

test.each(PATHWAY_STAGES)(
  "%s: a 5 mm clot never passes a 4 mm opening, however it is drawn to it",
  (stage) => {
    const { clots, deepest } = drawn(stage, 5, 4, 6);
    expect(clots.length).toBe(6);
    expect(clots.every(({ place }) => place === "pathway")).toBe(true);
    // mm into a wall: the engine's give, and the corners of a clot's polygon
    expect(deepest).toBeLessThan(0.2);
  },
);

test.each(PATHWAY_STAGES)("%s: a 2 mm clot can pass a 4 mm opening", (stage) => {
  const { clots } = drawn(stage, 2, 4, 3);
  expect(clots.some(({ place }) => place === "fenestration")).toBe(true);
});

test("a clot released below is carried up a channel at the blood's speed and leaves at its end", () => {
  const channel: FlowGeometry = {
    open: [
      {
        tube: {
          points: [
            [0, 0],
            [0, 80],
          ],
          width: 16,
        },
      },
    ],
    solid: [],
    openings: [
      { name: "ivc", centre: [0, 0], normal: [0, -1], width: 16, velocity: 0 },
      { name: "left", centre: [0, 80], normal: [0, 1], width: 16, pressure: 0 },
    ],
  };
  const shape = shapeOf(channel, [-8, 0, 8, 80], 0.5);
  const flow = fieldOf(shape, () => [0, 0.2]);
  const around = { shape, from: flow, to: flow, blend: 0 };
  const world = new ClotWorld(channel, blood);
  world.release(3, "ivc", seededRandom(4));
  expect(world.clots[0]!.y).toBeCloseTo(2.1, 1);
  world.advance(around, 0.2);
  const before = world.clots[0]!.y;
  world.advance(around, 0.1);
  expect(world.clots[0]!.y - before).toBeGreaterThan(18.5);
  expect(world.clots[0]!.y - before).toBeLessThan(20.5);
  world.advance(around, 0.2);
  expect(world.clots[0]!.place).toBe("left");
});

test("blood that flows back does not carry a clot out through a vein", () => {
  const { geometry, around } = suction("extracardiac");
  const back = fieldOf(around.shape, () => [0, -0.3]);
  const world = new ClotWorld(geometry, blood);
  world.release(3, "ivc", seededRandom(4));
  world.advance({ ...around, from: back, to: back }, 0.2);
  expect(world.clots[0]!.place).toBe("pathway");
  expect(world.clots[0]!.y).toBeGreaterThan(geometry.bounds[1] + 1);
});

test("a pressure that falls along the way pushes a resting clot down it", () => {
  const { geometry, around } = suction("atriopulmonary");
  const still = fieldOf(around.shape, () => [0, 0]);
  const { nx, ny, dx, originX } = around.shape;
  for (let k = 0; k < nx * ny; k++) still.pressure[k] = -0.02 * (originX + (k % nx) * dx);
  const world = new ClotWorld(geometry, blood);
  world.place(4, 0, 0);
  world.advance({ ...around, from: still, to: still }, 0.1);
  expect(world.clots[0]!.x).toBeGreaterThan(1);
});

test("drag follows Schiller & Naumann 1933: twice Stokes' at Reynolds 16, small clots follow at once", () => {
  const slip = (16 * blood.viscosity) / (blood.density * 2e-3);
  expect(dragFactor(slip, 2e-3, blood)).toBeCloseTo(2.01, 1);
  expect(dragFactor(0, 2e-3, blood)).toBe(1);
  expect(relaxationTime(0, 1e-3, blood)).toBeCloseTo((1.5 * 1060 * 1e-6) / (18 * 3.3e-3), 9);
});

test("the same release gives the same way", () => {
  const once = () => drawn("extracardiac", 3, 1, 3).clots.map(({ x, y }) => [x, y]);
  expect(once()).toEqual(once());
});
