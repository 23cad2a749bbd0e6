import { expect, test } from "vitest";
import { coarseFirst, createSweep, followSweep, planSweep } from "../../src/chain/running-sweep.ts";
import type { Circulation } from "../../src/sim/circulation/answer/answer.ts";
import { bodyAt, CASES, type CirculationRequest } from "../../src/sim/parameters/request.ts";
import { type SceneState, START } from "../../src/state/scene-state.ts";

const growth: SceneState = { ...START, scene: "growth", beside: [{ set: { conduitDiameter: 14 } }] };
const exercise: SceneState = { ...START, scene: "exercise" };
/** An answer that holds its request and converges unless asked not to. */
const answered = (request: CirculationRequest, converged = true) =>
  ({ request, run: { converged } }) as unknown as Circulation;
const turns = async (n: number) => {
  for (let i = 0; i < n; i++) await Promise.resolve();
};

test("a growing body's conduit keeps its fabric's length, within the range that the setting has", () => {
  const lengths = (conduitLength: number) =>
    planSweep({ ...growth, request: { ...growth.request, set: { conduitLength } } })!.curves[0]!.points.map(
      ({ request }) => Number(request.set.conduitLength),
    );
  expect(lengths(60).at(-1)).toBeGreaterThan(lengths(60)[0]!);
  expect(lengths(60).at(-1)).toBeLessThan(65);
  expect(Math.max(...lengths(90))).toBe(90);
});

test("the growing body begins and ends as the two demo bodies and the conduit stays as asked", () => {
  expect(bodyAt(5)).toEqual(CASES.caseA);
  expect(bodyAt(19).bsa).toBeCloseTo(CASES.caseB.bsa, 12);
  const plan = planSweep(growth)!;
  expect(plan.curves.map(({ name }) => name)).toEqual(["0", "1"]);
  expect(new Set(plan.curves[1]!.points.map(({ request }) => request.set.conduitDiameter))).toEqual(
    new Set([14]),
  );
});

test("exercise is compared with two ventricles at the same efforts, once", () => {
  const plan = planSweep(exercise)!;
  expect(plan.curves.map(({ name }) => name)).toEqual(["0", "reference"]);
  expect(plan.curves[1]!.points[3]!.request).toMatchObject({
    stage: "two-ventricle",
    set: { metabolicEquivalents: 4 },
  });
  const both = planSweep({ ...exercise, beside: [{ stage: "two-ventricle" }] })!;
  expect(both.curves.map(({ name }) => name)).toEqual(["0", "1"]);
  expect(planSweep(START)).toBeNull();
});

test("every point is visited once, ends first", () => {
  for (const count of [0, 1, 2, 3, 8, 13]) {
    const order = coarseFirst(count);
    expect([...order].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
  }
  expect(coarseFirst(8).slice(0, 3)).toEqual([0, 7, 4]);
});

test("answers fill the curves one at a time until the sweep is complete", async () => {
  let open = 0;
  let most = 0;
  const { sweep } = createSweep(planSweep(exercise)!, async (request) => {
    most = Math.max(most, ++open);
    await Promise.resolve();
    open--;
    return answered(request);
  });
  await turns(200);
  expect(most).toBe(1);
  expect(sweep.value.progress).toBe(1);
  for (const curve of sweep.value.curves)
    for (const point of curve.points) expect(point.circulation!.request).toEqual(point.request);
});

test("a state that does not converge leaves a gap and the sweep continues", async () => {
  const { sweep } = createSweep(planSweep(exercise)!, async (request) =>
    answered(request, request.set.metabolicEquivalents !== 3),
  );
  await turns(200);
  expect(sweep.value.progress).toBe(1);
  expect(sweep.value.curves[0]!.points.map(({ circulation }) => circulation !== null)).toEqual([
    true,
    true,
    false,
    true,
    true,
    true,
    true,
    true,
  ]);
});

test("a cancelled sweep asks no more, and a new scene state starts its own", async () => {
  const asked: CirculationRequest[] = [];
  const link = followSweep(async (request) => {
    asked.push(request);
    return answered(request);
  });
  link.follow(exercise);
  await turns(6);
  link.follow({ ...exercise, view: { ...exercise.view, labels: false } });
  const before = asked.length;
  expect(before).toBeLessThan(16);
  link.follow(START);
  await turns(50);
  expect(asked).toHaveLength(before);
  expect(link.current()).toBeNull();
  link.follow(growth);
  await turns(200);
  expect(link.current()!.progress).toBe(1);
});

test("several lanes keep as many questions open, answer each point once, and end once", async () => {
  let open = 0;
  let most = 0;
  let asked = 0;
  let ends = 0;
  const plan = planSweep(exercise)!;
  const { sweep, cancel, cancelled } = createSweep(
    plan,
    async (request) => {
      asked++;
      most = Math.max(most, ++open);
      await turns(3);
      open--;
      return answered(request);
    },
    { lanes: 3, onEnd: () => ends++ },
  );
  await turns(400);
  expect(most).toBe(3);
  expect(asked).toBe(plan.curves.reduce((sum, { points }) => sum + points.length, 0));
  expect(sweep.value.progress).toBe(1);
  cancel();
  expect(ends).toBe(1);
  expect(cancelled.value).toBe(false);
});

test("cancelled on its way it says so, ends once, and keeps what was answered", async () => {
  let ends = 0;
  const running = createSweep(
    planSweep(exercise)!,
    async (request) => {
      await turns(3);
      return answered(request);
    },
    { lanes: 2, onEnd: () => ends++ },
  );
  await turns(12);
  running.cancel();
  running.cancel();
  const { progress } = running.sweep.value;
  await turns(200);
  expect(running.cancelled.value).toBe(true);
  expect(ends).toBe(1);
  // Two lanes, an answer within six turns: two of sixteen points each in twelve.
  expect(progress).toBe(4 / 16);
  expect(running.sweep.value.progress).toBe(progress);
});

test("a point whose worker dies leaves a gap", async () => {
  const { sweep } = createSweep(planSweep(exercise)!, async (request) => {
    if (request.set.metabolicEquivalents === 8) throw new Error("the solver stopped");
    return answered(request);
  });
  await turns(200);
  expect(sweep.value.progress).toBe(1);
  expect(sweep.value.curves[0]!.points.at(-1)!.circulation).toBeNull();
});
