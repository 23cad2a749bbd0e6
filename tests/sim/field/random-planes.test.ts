import { expect, test } from "vitest";
import { planeFaults } from "../../../src/sim/field/plane-faults.ts";
import { settle } from "../../../src/sim/field/settle.ts";
import { randomPlane } from "./random-plane.ts";

const count = process.env.LUNGWARD_LONG === "1" ? 1000 : 24;

test(`${count} random planes stay finite or stop with a reason`, () => {
  let solved = 0;
  for (let seed = 1; seed <= count; seed++) {
    const geometry = randomPlane(seed);
    const depth = seed % 2 === 0 ? "round" : "uniform";
    const narrowest = Math.min(...geometry.openings.map(({ width }) => width));
    const cell = narrowest / 6;
    if (planeFaults(geometry, { cell, depth }, () => undefined).length > 0) continue;
    const choice = {
      cell,
      depth: depth as "round" | "uniform",
      maxSeconds: 1,
      tolerance: 1e-4,
      mostUpdates: 2e6,
    };
    const { moment, reason, lattice } = settle(geometry, 1060, 3.5e-3, 6, choice);
    if (reason) continue;
    solved++;
    expect(Number.isFinite(moment.dissipation), `plane ${seed}`).toBe(true);
    for (const { flow, pressure } of moment.openings)
      expect(Number.isFinite(flow) && Number.isFinite(pressure), `plane ${seed}`).toBe(true);
    // Finite is not enough: blood far faster than any slit that these shapes leave can make it would be noise.
    expect(lattice.fastest, `plane ${seed}`).toBeLessThan(40);
  }
  expect(solved).toBeGreaterThan(0.8 * count);
}, 3_600_000);
