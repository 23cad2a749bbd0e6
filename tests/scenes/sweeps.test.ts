// @vitest-environment happy-dom
import { expect, test } from "vitest";
import type { Frame } from "../../src/chain/frame.ts";
import { planSweep, type Sweep } from "../../src/chain/running-sweep.ts";
import { t } from "../../src/i18n/index.ts";
import { readExercise } from "../../src/scenes/exercise/exercise-reading.ts";
import { readGrowth } from "../../src/scenes/growth/growth-reading.ts";
import { bodyScale } from "../../src/scenes/growth/row.ts";
import { DARK, LIGHT } from "../../src/scenes/theme/colour.ts";
import { lookOf } from "../../src/scenes/theme/curve-look.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { pathwaySizes } from "../../src/sim/geometry/pathways/sizes.ts";
import { START } from "../../src/state/scene-state.ts";

const answered = (plan: Sweep): Sweep => ({
  ...plan,
  progress: 1,
  curves: plan.curves.map((curve) => ({
    ...curve,
    points: curve.points.map((point, i) =>
      i === 0 || i === curve.points.length - 1 ? { ...point, circulation: solve(point.request) } : point,
    ),
  })),
});
const frameOf = (scene: "growth" | "exercise", sweep: Sweep | null): Frame => ({
  state: { ...START, scene },
  panes: [],
  time: 0,
  pace: 1,
  degraded: [],
  still: false,
  sweep,
});

test("growth is described from the computed ends: the grown body spends more power on the same tube", () => {
  const reading = readGrowth(frameOf("growth", answered(planSweep({ ...START, scene: "growth" })!)))!;
  expect(parseFloat(String(reading.args.powerTo))).toBeGreaterThan(
    parseFloat(String(reading.args.powerFrom)),
  );
  const sentence = t(reading.key, reading.args);
  expect(sentence).toMatch(/18\.0 millimetres .* 0\.72 to 1\.70/);
  // Drop and power at both ends, each with its band.
  expect(sentence.match(/, between [\d.]+ and [\d.]+/g)).toHaveLength(4);
});

test("exercise is described from the computed ends, and two ventricles reach more output (physiology values, acceptance 8)", () => {
  const reading = readExercise(frameOf("exercise", answered(planSweep({ ...START, scene: "exercise" })!)))!;
  expect(reading.args.pathwayTo).toBeGreaterThan(reading.args.pathwayFrom as number);
  expect(reading.args.referenceTo).toBeGreaterThan(reading.args.outputTo as number);
  expect(t(reading.key, reading.args)).toContain("with two ventricles");
});

test("before completion growth tells of no tube, and exercise of the veins whose blood goes to the lungs", () => {
  const glenn = { ...START, request: { ...START.request, stage: "glenn" as const } };
  const growth = readGrowth(frameOf("growth", answered(planSweep({ ...glenn, scene: "growth" })!)))!;
  expect(t(growth.key, growth.args)).toContain("no tube");
  const sweep = answered(planSweep({ ...glenn, scene: "exercise" })!);
  const exercise = readExercise(frameOf("exercise", sweep))!;
  expect(exercise.args.pathwayFrom).toBe(sweep.curves[0]!.points[0]!.circulation!.pressures.svc);
});

test("nothing is described before the ends are answered", () => {
  expect(readGrowth(frameOf("growth", planSweep({ ...START, scene: "growth" })))).toBeNull();
  expect(readExercise(frameOf("exercise", null))).toBeNull();
});

test("U7 curves differ in dash pattern as well as in colour", () => {
  for (const palette of [DARK, LIGHT]) {
    const looks = ["0", "1", "2", "reference"].map((name) => lookOf(name, palette));
    expect(new Set(looks.map(({ colour }) => colour)).size).toBe(4);
    expect(new Set(looks.map(({ dash }) => String(dash))).size).toBe(4);
  }
});

test("the tube in the bodies keeps its width while the body's own veins grow", () => {
  const sizes = planSweep({ ...START, scene: "growth" })!.curves[0]!.points.map(({ request }) =>
    pathwaySizes(request),
  );
  expect(new Set(sizes.map(({ trunk }) => trunk)).size).toBe(1);
  expect(sizes.at(-1)!.ivc).toBeGreaterThan(1.2 * sizes[0]!.ivc);
  expect(sizes.at(-1)!.svc).toBeGreaterThan(1.2 * sizes[0]!.svc);
});

test("a body of four times the surface is drawn twice as large", () => {
  expect(bodyScale(1.6, 0.4)).toBe(2);
});

test("an effort that no one could keep up ends the curve, and the words say so", () => {
  const plan = answered(planSweep({ ...START, scene: "exercise" })!);
  const [curve, ...others] = plan.curves;
  const points = curve!.points.map((point, i, { length }) =>
    i === length - 1
      ? { ...point, circulation: null }
      : { ...point, circulation: curve!.points[0]!.circulation },
  );
  const cut = { ...plan, curves: [{ ...curve!, points }, ...others] };
  const reading = readExercise(frameOf("exercise", cut))!;
  expect(reading.args.to).toBe(7);
  expect(t(reading.key, reading.args)).toContain("no body could keep up");
  expect(readExercise(frameOf("exercise", { ...cut, progress: 0.9 }))).toBeNull();
});
