import { describe, expect, test } from "vitest";
import { compute } from "../../../src/sim/compute/run-request.ts";

const tube = {
  kind: "field",
  fluid: { density: 1060, viscosity: 3.5 },
  open: [
    {
      tube: {
        points: [
          [0, -20],
          [0, 20],
        ],
        width: 10,
      },
    },
  ],
  solid: [],
  openings: [
    { name: "lower", centre: [0, -20], normal: [0, -1], width: 10, velocity: 0.05 },
    { name: "upper", centre: [0, 20], normal: [0, 1], width: 10, pressure: 2 },
  ],
  cellsAcross: 12,
};
const ask = (request: object) => compute(JSON.stringify(request), "json");

describe("Computing a field", () => {
  test("answers flows, pressures, loss, shares and the run under the contract's names", async () => {
    const { output, exit } = await ask(tube);
    expect(exit).toBe(0);
    const answer = JSON.parse(output);
    expect(Object.keys(answer)).toEqual([
      "openings",
      "loss",
      "shares",
      "reynolds",
      "recirculatingArea",
      "run",
    ]);
    expect(answer.openings[0].flow).toBeCloseTo(0.0005, 6);
    expect(answer.openings[1].flow).toBeCloseTo(-0.0005, 6);
    expect(answer.openings[1].pressure).toBeCloseTo(2, 3);
    expect(answer.shares.lower.upper).toBeCloseTo(1, 6);
    expect(answer.reynolds.lower).toBeCloseTo((1060 * 0.05 * 0.01) / 0.0035, 1);
    expect(Object.keys(answer.run)).toEqual([
      "cells",
      "steps",
      "steady",
      "wallSeconds",
      "cellUpdatesPerSecond",
    ]);
    expect(answer.run.steady).toBe(true);
  }, 60_000);

  test("an answer that is not yet steady says so", async () => {
    const { output, exit } = await ask({ ...tube, maxSeconds: 0.01 });
    expect(exit).toBe(0);
    expect(JSON.parse(output).run.steady).toBe(false);
  }, 60_000);

  test.each([
    [{ open: [] }, "open"],
    [{ fluid: { density: -1 } }, "fluid.density"],
    [{ colour: "red" }, "colour"],
    [{ openings: [{ ...tube.openings[0], centre: [40, 40] }, tube.openings[1]] }, "openings[0].centre"],
    [
      { openings: [tube.openings[0], { ...tube.openings[1], pressure: undefined, velocity: 0.1 }] },
      "openings",
    ],
    [{ openings: [{ ...tube.openings[0], pressure: 1 }, tube.openings[1]] }, "openings[0]"],
    [{ open: [{ tube: { points: [[0, 0]], width: 3 } }] }, "open[0].tube.points"],
    [
      {
        cellsAcross: 400,
        open: [
          {
            tube: {
              points: [
                [0, -4000],
                [4000, 4000],
              ],
              width: 10,
            },
          },
        ],
      },
      "cellsAcross",
    ],
  ])("refuses %o naming %s", async (change, path) => {
    const { output, errors, exit } = await ask({ ...tube, ...change });
    expect(exit).toBe(2);
    expect(output).toBe("");
    expect(errors.some((line) => line.startsWith(`${path}: found`))).toBe(true);
  });

  test("a published case is answered at the table's own points", async () => {
    const { output, exit } = await ask({ kind: "benchmark-field", case: "cavity", reynolds: 100, cells: 16 });
    expect(exit).toBe(0);
    const { u, y, v, x } = JSON.parse(output);
    expect(u).toHaveLength(17);
    expect(y[1]).toBe(0.9766);
    expect(v).toHaveLength(17);
    expect(x[1]).toBe(0.9688);
  }, 60_000);
});
