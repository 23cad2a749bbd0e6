import { describe, expect, it } from "vitest";
import { jetSpeed } from "../../../src/chain/pane-jet.ts";
import { solve } from "../../../src/sim/circulation/solve.ts";
import { pathwayGeometry } from "../../../src/sim/geometry/pathways/index.ts";
import { seededRandom } from "../../../src/sim/random.ts";
import { farWall, freeJet, type Hole, TracerCloud } from "../../../src/sim/tracers/index.ts";
import { START } from "../../../src/state/scene-state.ts";

const hole: Hole = { centre: [10, 5], normal: [1, 0], stream: 3, reach: 40 };
const source = new TracerCloud(1, 3, 0.045);

/** A jet fed evenly for `seconds`, so many tracers a second. */
function fed(rate: number, speed: number, seconds = 0.6, at: Hole = hole) {
  const random = seededRandom(11);
  const jet = freeJet(6000, 3, 0.045, random);
  jet.lay(at);
  const step = 0.01;
  for (let time = 0; time < seconds; time += step) {
    jet.advance(step);
    for (let n = 0; n < rate * step; n++)
      jet.take(source, 0, (random() - 0.5) * at.stream, speed, random() * step);
  }
  return jet;
}

/** Tracers between two distances from the hole: how many, how far apart across, how fast. */
function slice({ tracers }: ReturnType<typeof freeJet>, from: number, to: number) {
  const inside = Array.from({ length: tracers.count }, (_, n) => n).filter((n) => {
    const x = tracers.position[2 * n]! - hole.centre[0];
    return x >= from && x < to;
  });
  const across = inside.map((n) => tracers.position[2 * n + 1]! - hole.centre[1]);
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    count: inside.length,
    wide: Math.sqrt(mean(across.map((y) => y * y))),
    fast: Math.max(...inside.map((n) => tracers.speed[n]!)),
  };
}

describe("the jet beyond the fenestration", () => {
  it("goes straight on from the hole, widens with the way and slows down as a free jet does", () => {
    const jet = fed(8000, 1.2);
    const near = slice(jet, 1, 3);
    const far = slice(jet, 30, 38);
    expect(near.fast).toBeGreaterThan(0.9);
    expect(near.fast).toBeLessThanOrEqual(1.2);
    expect(far.wide / near.wide).toBeGreaterThan(1.7);
    expect(far.wide / near.wide).toBeLessThan(4);
    // Momentum: speed times width stays.
    const ratio = near.fast / far.fast;
    const wider = Math.hypot(1.77, 0.094 * 34) / Math.hypot(1.77, 0.094 * 2);
    expect(ratio / wider).toBeGreaterThan(0.85);
    expect(ratio / wider).toBeLessThan(1.2);
    for (let n = 0; n < jet.tracers.count; n++) {
      expect(jet.tracers.position[2 * n]!).toBeGreaterThanOrEqual(hole.centre[0]);
      expect(jet.tracers.position[2 * n]!).toBeLessThan(hole.centre[0] + hole.reach);
    }
  });

  it("holds tracers in proportion to what leaves, and none that has not", () => {
    const few = fed(2000, 1).tracers.count;
    const many = fed(6000, 1).tracers.count;
    expect(many / few).toBeGreaterThan(2.7);
    expect(many / few).toBeLessThan(3.3);
    expect(fed(0, 1).tracers.count).toBe(0);
  });

  it("mixes into the surrounding blood, and ends at the far wall", () => {
    const { tracers, undiluted } = fed(4000, 1);
    for (let n = 0; n < tracers.count; n++) {
      const x = tracers.position[2 * n]! - hole.centre[0];
      expect(undiluted[n]!).toBeLessThanOrEqual(1);
      expect(undiluted[n]!).toBeGreaterThanOrEqual(0);
      if (x < 2) expect(undiluted[n]!).toBeGreaterThan(0.9);
      if (x > 38) expect(undiluted[n]!).toBeLessThan(0.1);
    }
  });

  it("does not move when no time passes, and ends with the hole", () => {
    const jet = fed(3000, 1);
    const before = jet.tracers.position.slice();
    jet.advance(0);
    expect(jet.tracers.position).toEqual(before);
    jet.lay(null);
    expect(jet.tracers.count).toBe(0);
  });

  it("ends where the chamber before it does", () => {
    const square = [
      [20, -10],
      [60, -10],
      [60, 20],
      [20, 20],
    ] as const;
    expect(farWall(square, [10, 5], [1, 0])).toBe(50);
    expect(farWall(square, [10, 5], [-1, 0])).toBeUndefined();
  });

  it("leaves at the orifice law's own speed: the pressure across the hole as height of motion", () => {
    const request = { ...START.request, set: { fenestrationDiameter: 4 } };
    const circulation = solve(request);
    const speed = jetSpeed(pathwayGeometry(request)!, circulation);
    const row = circulation.pathway.ledger.find(({ element }) => element === "fenestration")!;
    // Creeping flow's share of the drop (some per cent) makes no speed.
    const bernoulli = Math.sqrt((2 * row.pressureDrop * 133.322) / 1060);
    expect(speed / bernoulli).toBeGreaterThan(0.94);
    expect(speed / bernoulli).toBeLessThanOrEqual(1.005);
  });
});
