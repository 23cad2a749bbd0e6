import { expect, test } from "vitest";
import type { Pane } from "../../src/chain/frame.ts";
import { legValves } from "../../src/chain/leg-valves.ts";
import { sceneNeeds } from "../../src/chain/scene-needs.ts";
import type { Circulation } from "../../src/sim/circulation/answer/answer.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { solveExchange } from "../../src/sim/exchange/index.ts";
import { START } from "../../src/state/scene-state.ts";

const resting = solve(START.request);
const walking = solve({ ...START.request, set: { metabolicEquivalents: 3 } });
const pane = { circulation: walking } as Pane;
const withFlow = (circulation: Circulation, change: (flow: Float64Array) => Float64Array): Circulation => ({
  ...circulation,
  traces: {
    ...circulation.traces,
    flows: { ...circulation.traces.flows, legs: change(circulation.traces.flows.legs!) },
  },
});

test("over a repeat as much blood enters the leg veins as leaves them, by the model's own traces", () => {
  const mean = (values: Float64Array) => values.slice(1).reduce((a, b) => a + b, 0) / (values.length - 1);
  const { legs, legBed } = walking.traces.flows;
  expect(mean(legs!) / mean(legBed!)).toBeCloseTo(1, 3);
});

test("the valve opens wider for a strong flow and shuts when blood would run back", () => {
  const valves = legValves();
  const open = valves.follow(walking, 0.5)!;
  expect(open.out).toBe(1);
  const at = (part: number) =>
    legValves().follow(
      withFlow(walking, (flow) => flow.map((value) => part * value)),
      0.5,
    )!.out;
  const [weak, weaker] = [at(0.03), at(0.015)];
  expect(weak).toBeLessThan(1);
  expect(weaker).toBeLessThan(weak);
  expect(weaker).toBeGreaterThan(0);
  const backward = legValves().follow(
    withFlow(walking, (flow) => flow.map((value) => -Math.abs(value))),
    0.5,
  )!;
  expect(backward.out).toBe(0);
});

test("leaflets follow the clock in small steps to where one long look finds them", () => {
  const one = legValves();
  let stepped = one.follow(walking, 0)!;
  for (let t = 1 / 60; t < 1.5; t += 1 / 60) stepped = one.follow(walking, t)!;
  const last = Math.floor(1.5 * 60 - 1e-9) / 60;
  const looked = legValves().follow(walking, last)!;
  // In 1.5 s the leaflets swing more than once; steps of a sixtieth and pieces of 0.01 s integrate alike to a hundredth.
  expect(Math.abs(stepped.out - looked.out)).toBeLessThan(0.01);
});

test("each scene gets what it needs and no more, once that has been fetched", async () => {
  const needs = sceneNeeds(async () => resting);
  expect(needs.complete("pathway", 0, pane, 1)).toBe(pane);
  expect(needs.complete("calf", 0, pane, 1).legValves).toBeNull();
  expect(needs.complete("exchange", 0, pane, 1).exchange).toBeNull();
  await needs.ready("pathway");
  expect(needs.complete("calf", 0, pane, 1).legValves).toBeNull();
  await needs.ready("calf");
  expect(needs.complete("calf", 0, pane, 1).legValves).toEqual(legValves().follow(walking, 1));
  expect(needs.complete("exchange", 0, pane, 1).exchange).toBeNull();
  await needs.ready("exchange", [walking]);
  expect(needs.complete("exchange", 0, pane, 1).exchange).toEqual(
    solveExchange(walking, { firstDays: resting }),
  );
  expect(needs.complete("exchange", 0, { ...pane, circulation: null }, 1).exchange).toBeNull();
  needs.follow({ ...START, scene: "growth" });
  expect(needs.sweep()!.over).toBe("bsa");
  needs.release();
  expect(needs.sweep()).toBeNull();
});
