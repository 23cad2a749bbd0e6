import { expect, test } from "vitest";
import type { Frame } from "../../src/chain/frame.ts";
import { planSweep } from "../../src/chain/running-sweep.ts";
import { formatNumber, hasMessage, t } from "../../src/i18n/index.ts";
import { readBreathing } from "../../src/scenes/breathing/breathing-reading.ts";
import { readCalf } from "../../src/scenes/calf/calf-reading.ts";
import { readCircuit } from "../../src/scenes/circuit/circuit-reading.ts";
import { readExchange } from "../../src/scenes/exchange/exchange-reading.ts";
import { readExercise } from "../../src/scenes/exercise/exercise-reading.ts";
import { readGrowth } from "../../src/scenes/growth/growth-reading.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { solveExchange } from "../../src/sim/exchange/index.ts";
import type { CirculationRequest } from "../../src/sim/parameters/request.ts";
import { type SceneName, START } from "../../src/state/scene-state.ts";

const READERS = {
  circuit: readCircuit,
  breathing: readBreathing,
  calf: readCalf,
  exchange: readExchange,
  growth: readGrowth,
  exercise: readExercise,
} as const;
const SCENES = Object.keys(READERS) as (keyof typeof READERS)[];
const readScene = (frame: Frame) => READERS[frame.state.scene as keyof typeof READERS](frame);

const requestOf = (change: Partial<CirculationRequest>): CirculationRequest => ({
  ...START.request,
  ...change,
});
const frameOf = (scene: SceneName, ...requests: CirculationRequest[]): Frame => {
  const plan = planSweep({ ...START, scene });
  return {
    state: { ...START, scene, request: requests[0] ?? START.request },
    panes: requests.map((request) => {
      const circulation = solve(request);
      return {
        circulation,
        exchange: scene === "exchange" ? solveExchange(circulation) : null,
      } as Frame["panes"][number];
    }),
    time: 0,
    pace: 1,
    degraded: [],
    still: false,
    sweep: plan && {
      ...plan,
      curves: plan.curves.map((curve) => ({
        ...curve,
        points: curve.points.map((point, i) =>
          i === 0 || i === curve.points.length - 1 ? { ...point, circulation: solve(point.request) } : point,
        ),
      })),
    },
  };
};

test.each(SCENES)("%s is described in complete sentences without a gap", (scene) => {
  const reading = readScene(frameOf(scene, START.request))!;
  expect(hasMessage(reading.key)).toBe(true);
  for (const value of Object.values(reading.args)) expect(value).not.toBeNaN();
  const text = t(reading.key, reading.args);
  expect(text).not.toMatch(/undefined|NaN|\[|\{/);
  expect(text).toMatch(/\.$/);
});

test("nothing is described before anything is solved", () => {
  for (const scene of SCENES) {
    const frame = { ...frameOf("pathway"), state: { ...START, scene }, sweep: null };
    expect(readScene(frame)).toBeNull();
  }
});

test("two states side by side are described with the step in pressure for liver, gut and kidneys", () => {
  const frame = frameOf("circuit", requestOf({ stage: "glenn" }), requestOf({ stage: "extracardiac" }));
  const reading = readScene(frame)!;
  const [before, after] = frame.panes.map(({ circulation }) => circulation!.pressures.hepaticVein);
  expect(reading.args.step).toBeCloseTo(after! - before!, 12);
  expect(t(reading.key, reading.args)).toContain(`+${formatNumber(after! - before!, 1)}`);
});

test("a heart with two ventricles is read out with the names and numbers of its plates", () => {
  const frame = frameOf("circuit", requestOf({ stage: "two-ventricle" }));
  const { pathway, atrium } = frame.panes[0]!.circulation!.pressures;
  const two = readScene(frame)!;
  expect(t(two.key, two.args)).toContain(
    `${t("further.place.mainPulmonaryArtery").toLowerCase()} ${formatNumber(pathway, 1)}, left atrium ${formatNumber(atrium, 1)}`,
  );
  const one = readScene(frameOf("circuit", START.request))!;
  expect(t(one.key, one.args)).toMatch(/\w+ artery [\d.]+, atrium [\d.]+/);
});

test("a calf at work is described with its contractions, one at rest without", () => {
  const rest = readScene(frameOf("calf", START.request))!;
  expect(rest.key).toBe("further.reading.calfRest");
  const walking = readScene(frameOf("calf", requestOf({ set: { metabolicEquivalents: 3 } })))!;
  expect(walking.args.perMinute).toBeGreaterThan(30);
  expect(walking.args.flow).toBeGreaterThan(rest.args.flow as number);
});
