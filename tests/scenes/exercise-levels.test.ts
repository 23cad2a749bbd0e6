import { expect, test, vi } from "vitest";
import { EFFORTS } from "../../src/chain/running-sweep.ts";
import { levelsOff, veinsToLungs } from "../../src/scenes/exercise/exercise-reading.ts";
import { meanPeak, PEAK } from "../../src/scenes/exercise/exercise-scene.ts";
import type { Circulation } from "../../src/sim/circulation/answer.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

vi.mock("pixi.js", () => ({}));

const over = (stage: Circulation["request"]["stage"]) =>
  EFFORTS.map((metabolicEquivalents) =>
    solve({ ...START.request, stage, set: { ...START.request.set, metabolicEquivalents } }),
  );

test("heavy effort raises the veins' pressure no further after completion, since the veins have given what they can", () => {
  const states = over("extracardiac");
  expect(levelsOff(states)).toBe(true);
  expect(states.at(-1)!.pressures.atrium).toBeLessThan(states.at(-3)!.pressures.atrium);
  expect(veinsToLungs(states.at(-1)!) - veinsToLungs(states.at(-3)!)).toBeLessThan(0.5);
});

test("a curve that goes on rising, or is hardly solved yet, levels off nowhere", () => {
  expect(levelsOff(over("two-ventricle"))).toBe(false);
  expect(levelsOff(over("extracardiac").slice(0, 4))).toBe(false);
});

test("a curve is broken where it passes the mean of the peaks that were measured, after completion alone", () => {
  const of = (stage: Circulation["request"]["stage"]) =>
    meanPeak(over(stage).map((circulation, i) => [EFFORTS[i]!, circulation] as const));
  const at = of("extracardiac")!;
  const use = solve({
    ...START.request,
    stage: "extracardiac",
    set: { ...START.request.set, metabolicEquivalents: at },
  }).extras.oxygenUsePerKilogram!;
  expect(Math.abs(use - PEAK.mean)).toBeLessThan(0.15);
  expect(of("two-ventricle")).toBeUndefined();
});
