import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { inscribedBalls } from "../../scripts/three-d/balls.ts";
import { solidBody } from "../../scripts/three-d/body.ts";
import { allCases } from "../../scripts/three-d/cases.ts";
import { flowsOf, jobOf, requestOf } from "../../scripts/three-d/jobs.ts";
import { checkRequest } from "../../src/sim/circulation/check-request.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";

const cases = allCases();
const set = JSON.parse(readFileSync("docs/validation/three-d.json", "utf8"));

describe("the cases of the reference set", () => {
  test("have a name each, balanced flows and a flow solver slow enough", () => {
    expect(new Set(cases.map(({ name }) => name)).size).toBe(cases.length);
    for (const one of cases) {
      const flows: Record<string, number> = flowsOf(one);
      const out = flows.left! + flows.right! + (flows.fenestration ?? 0);
      expect(out).toBeCloseTo(flows.ivc! + flows.svc!, 9);
      expect(jobOf(one).keys.peak).toBeLessThanOrEqual(0.08);
    }
  });
  test("ask for what the command would take", () => {
    for (const one of cases) expect(checkRequest(requestOf(one)), one.name).not.toHaveProperty("faults");
  });
});

describe("a body", () => {
  test("of a straight tube is round", () => {
    const [n, step, half] = [121, 0.1, 4];
    const value = Float32Array.from({ length: n * n }, (_, at) => Math.abs((at % n) - 60.3) * step - half);
    const balls = inscribedBalls({ nx: n, ny: n, step, x0: 0, y0: 0, value });
    for (const i of [25, 40, 60, 75, 90]) {
      const off = (i - 60.3) * step;
      // a ball is centred on a place of the grid, up to half a step off the axis
      expect(Math.abs(balls.value[60 * n + i]! - half ** 2 + off ** 2)).toBeLessThan(half * step);
    }
  });
  test("has a round section of the opening's width at every opening", () => {
    const { open, openings } = pathwayGeometry(
      requestOf(cases.find(({ name }) => name === "ec-fenestration")!),
    )!;
    const body = solidBody(open, openings);
    const { nx, step, x0, y0, value } = body.sheet;
    for (const { centre, normal, width } of body.openings) {
      let area = 0;
      const fine = width / 400;
      for (let s = -0.6 * width; s <= 0.6 * width; s += fine) {
        const x = (centre[0] - s * normal[1] - x0) / step;
        const y = (centre[1] + s * normal[0] - y0) / step;
        const [u, v, at] = [x % 1, y % 1, Math.floor(y) * nx + Math.floor(x)];
        const below = (1 - u) * value[at]! + u * value[at + 1]!;
        const above = (1 - u) * value[at + nx]! + u * value[at + nx + 1]!;
        area += 2 * Math.sqrt(Math.max(0, (1 - v) * below + v * above)) * fine;
      }
      expect(Math.abs(area / ((Math.PI / 4) * width ** 2) - 1)).toBeLessThan(0.005);
    }
  });
});

describe("docs/validation/three-d.json", () => {
  test("has the cases as they are in the list", () => {
    const known = new Map(cases.map((one) => [one.name, one]));
    expect(set.cases.length).toBeGreaterThanOrEqual(60);
    for (const { name, stage, body, set: sizes, index } of set.cases) {
      const one = known.get(name)!;
      expect({ name, stage, body, sizes, index }).toEqual({
        name,
        stage: one.stage,
        body: one.body,
        sizes: one.set,
        index: one.index,
      });
    }
  });
  test("gives each an uncertainty, below a seventh but where the start decides, and shares that add up", () => {
    for (const { name, power, drop, dissipated, shares, starts } of set.cases) {
      for (const { value, uncertainty } of [power, drop]) {
        expect(uncertainty / value, name).toBeGreaterThan(0);
        expect(uncertainty / value, name).toBeLessThan(starts ? 0.2 : 0.14);
      }
      expect(dissipated, name).toBeLessThan(power.value);
      for (const { left, right, fenestration = 0 } of [shares.ivc, shares.svc])
        expect(left + right + fenestration, name).toBeCloseTo(1, 2);
    }
  });
  test("agrees with the Hagen-Poiseuille law in the pipe, more closely with a finer grid", () => {
    const errors = set.pipe.grids.map(({ power }: { power: number }) =>
      Math.abs(power / set.pipe.exact.power - 1),
    );
    expect(errors.at(-1)).toBeLessThan(0.015);
    expect(errors.at(-1)).toBeLessThan(errors[0] / 2);
  });
});
