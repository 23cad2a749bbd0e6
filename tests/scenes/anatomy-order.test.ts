import { expect, test } from "vitest";
import { vesselsOf } from "../../src/scenes/circuit/anatomy.ts";
import { chestFrame } from "../../src/scenes/circuit/chest-plan.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { hasPlane, STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

const order = (stage: (typeof STAGES)[number]) => {
  const names = vesselsOf(stage, false).map(({ name }) => name);
  return (name: string) => {
    expect(names).toContain(name);
    return names.indexOf(name);
  };
};
const xAt = (stage: (typeof STAGES)[number], name: string, y: number) =>
  vesselsOf(stage, false)
    .find((each) => each.name === name)!
    .points.reduce((best, point) => (Math.abs(point[1] - y) < Math.abs(best[1] - y) ? point : best))[0];

test.each(STAGES)("%s: the ascending aorta lies before the pulmonary arteries", (stage) => {
  const at = order(stage);
  // With two ventricles the left one goes on from the trunk, which lies before the aorta.
  if (stage !== "two-ventricle") expect(at("arch")).toBeGreaterThan(at("leftPulmonaryArtery"));
  expect(at("arch")).toBeGreaterThan(at("rightPulmonaryArtery"));
});

test("the portal vein passes before the inferior vena cava and ends where the liver's artery does", () => {
  const at = order("extracardiac");
  expect(at("portal")).toBeGreaterThan(at("lowerIvc"));
  const end = (name: string) =>
    vesselsOf("extracardiac", false)
      .find((each) => each.name === name)!
      .points.at(-1)!;
  const [[px, py], [ax, ay]] = [end("portal"), end("liverArtery")];
  expect(Math.hypot(px - ax, py - ay)).toBeLessThan(15);
});

test("in each leg the artery lies outside the vein, and it crosses before it in the pelvis", () => {
  const at = order("extracardiac");
  expect(xAt("extracardiac", "rightLegArtery", 1076)).toBeLessThan(xAt("extracardiac", "rightLegVein", 1076));
  expect(xAt("extracardiac", "leftLegArtery", 1076)).toBeGreaterThan(
    xAt("extracardiac", "leftLegVein", 1076),
  );
  expect(at("rightLegArtery")).toBeGreaterThan(at("leftLegVein"));
});

test.each(STAGES)("%s: blood goes through atrium and ventricle to the aorta", (stage) => {
  const vessels = vesselsOf(stage, false);
  const [filling, ejecting, arch] = ["throughAtrium", "throughVentricle", "arch"].map(
    (name) => vessels.find((each) => each.name === name)!,
  );
  expect([filling!.flow, ejecting!.flow]).toEqual(["atrioventricularValve", "aorta"]);
  const [end, start, out, root] = [
    filling!.points.at(-1)!,
    ejecting!.points[0]!,
    // With two ventricles the left one's outflow passes behind the right one's.
    (vessels.find(({ name }) => name === "leftOutflow") ?? ejecting!).points.at(-1)!,
    arch!.points[0]!,
  ];
  expect(Math.hypot(end[0] - start[0], end[1] - start[1])).toBeLessThan(20);
  expect(Math.hypot(out[0] - root[0], out[1] - root[1])).toBeLessThan(20);
});

test.each(STAGES)("%s: a graft is drawn where one is sewn in, as wide as its lumen", (stage) => {
  const kind = { extracardiac: "conduit", "lateral-tunnel": "patch" }[stage as string];
  expect(chestFrame(stage).graft?.kind).toBe(kind);
  if (!hasPlane(stage)) return;
  const geometry = pathwayGeometry({ ...START.request, stage })!;
  const { graft } = geometry.chest;
  expect(graft?.kind).toBe(kind);
  if (!graft) return;
  expect(graft.widths).toHaveLength(graft.line.length);
  expect(graft.line[0]![1]).toBeLessThan(graft.line.at(-1)![1] - 20);
  expect(Math.min(...graft.widths)).toBeGreaterThan(8);
});
