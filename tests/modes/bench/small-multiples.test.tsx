// @vitest-environment happy-dom
import { render } from "preact";
import { expect, test, vi } from "vitest";
import { curveOver, type SweepCurve } from "../../../src/chain/running-sweep.ts";
import { SmallMultiples } from "../../../src/modes/bench/small-multiples.tsx";
import { present } from "../../../src/sim/checked/present.ts";
import { solve } from "../../../src/sim/circulation/solve.ts";
import type { NumberParameter } from "../../../src/sim/parameters/parameter.ts";
import { findParameter } from "../../../src/sim/parameters/parameters.ts";
import { START } from "../../../src/state/scene-state.ts";

function shown(name: string, values: readonly number[], onChoose = (_: number) => {}) {
  const plan = curveOver("0", START.request, name, values);
  const curve: SweepCurve = {
    ...plan,
    points: plan.points.map((point) => ({ ...point, circulation: solve(point.request) })),
  };
  const host = document.createElement("div");
  render(
    <SmallMultiples
      curve={curve}
      parameter={present(findParameter(name)) as NumberParameter}
      here={present(values[0])}
      figure={({ pathway }) => ({ value: pathway.pressureDrop, band: pathway.band?.pressureDrop })}
      unit="mmHg"
      digits={2}
      onChoose={onChoose}
    />,
    host,
  );
  return host;
}

test("a parameter of the shape is shown as shapes at one scale, each with its number; a press takes its value", () => {
  const choose = vi.fn();
  const host = shown("conduitDiameter", [8, 16, 24], choose);
  const boxes = [...host.querySelectorAll("svg")].map((svg) => svg.getAttribute("viewBox"));
  expect(boxes).toHaveLength(3);
  expect(new Set(boxes).size).toBe(1);
  const paths = [...host.querySelectorAll("path")].map((path) => path.getAttribute("d"));
  expect(new Set(paths).size).toBe(3);
  const [narrow, , wide] = host.querySelectorAll("button");
  expect(narrow?.textContent).toContain("8.0");
  expect(narrow?.textContent).toMatch(/mmHg \(\d/);
  expect(narrow?.getAttribute("aria-pressed")).toBe("true");
  wide?.click();
  expect(choose).toHaveBeenCalledWith(24);
});

test("a parameter that moves no wall is left to its curve", () => {
  expect(shown("pulmonaryResistanceIndex", [1, 2, 3]).innerHTML).toBe("");
});
