import { expect, test, vi } from "vitest";
import { EFFORTS } from "../../src/chain/running-sweep.ts";
import { veinsToLungs } from "../../src/scenes/exercise/exercise-reading.ts";
import { meanPeak, PEAK } from "../../src/scenes/exercise/exercise-scene.ts";
import type { Circulation } from "../../src/sim/circulation/answer/answer.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

vi.mock("pixi.js", () => ({}));

const over = (stage: Circulation["request"]["stage"]) =>
  EFFORTS.map((metabolicEquivalents) =>
    solve({ ...START.request, stage, set: { ...START.request.set, metabolicEquivalents } }),
  );

test("after completion the veins' pressure rises with each step of effort, by as much to the peak as is measured", () => {
  const veins = over("extracardiac").map(veinsToLungs);
  for (let i = 1; i < veins.length; i++) expect(veins[i]! - veins[i - 1]!).toBeGreaterThan(0.2);
  // 13.6 to 23.0 +- 5.5 mmHg in adults (Colman, Heart 2021;107:983).
  expect(veins.at(-1)! - veins[0]!).toBeGreaterThan(9.4 - 5.5);
  expect(veins.at(-1)! - veins[0]!).toBeLessThan(9.4 + 5.5);
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
