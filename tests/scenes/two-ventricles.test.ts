// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { anatomyOf, lungsOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { sheetsOf } from "../../src/scenes/anatomy/hanging-valve.ts";
import { standingAt } from "../../src/scenes/anatomy/standing.ts";
import { chestFrame, onPlane } from "../../src/scenes/circuit/chest-plan.ts";
import { layVessels } from "../../src/scenes/circuit/dots.ts";
import { seenAlong, seenAt } from "../../src/scenes/circuit/hidden.ts";
import { twoVentricleVessels } from "../../src/scenes/circuit/two-ventricles/heart-courses.ts";
import {
  CONUS,
  LEFT_ATRIUM,
  LEFT_CAVITY,
  OUTFLOW,
  RIGHT_ATRIUM,
  RIGHT_CAVITY,
  VALVES,
  VENTRICLES,
} from "../../src/scenes/circuit/two-ventricles/heart-plan.ts";
import { greatVessels } from "../../src/scenes/circuit/two-ventricles/heart-vessels.ts";
import { planOf } from "../../src/scenes/circuit/two-ventricles/root.ts";
import { cuspsOf, hangingOf } from "../../src/scenes/circuit/two-ventricles/valve-drawing.ts";
import { openingsAt } from "../../src/scenes/circuit/two-ventricles/valve-openings.ts";
import type { Vessel } from "../../src/scenes/circuit/vessel.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import type { Point } from "../../src/sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { START } from "../../src/state/scene-state.ts";

const away = ([ax, ay]: Point, [bx, by]: Point) => Math.hypot(ax - bx, ay - by);
const vessels = twoVentricleVessels();
const named = (name: string): Vessel => vessels.find((each) => each.name === name)!;
const start = (name: string): Point => named(name).points[0]!;
const end = (name: string): Point => named(name).points.at(-1)!;
const ring = (name: (typeof VALVES)[number]["name"]): Point => {
  const [a, b] = planOf(VALVES, name).hinges;
  return onPlane([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
};
/** Plane units from a way to a place. */
const passes = (name: string, place: Point) => Math.min(...named(name).points.map((at) => away(at, place)));
/** mm from a place to the nearest point of an outline. */
const to = (outline: readonly Point[], place: Point) => Math.min(...outline.map((at) => away(at, place)));
const lowest = (outline: readonly Point[]): Point => outline.reduce((a, b) => (b[1] < a[1] ? b : a));
const farthest = (outline: readonly Point[]): Point => outline.reduce((a, b) => (b[0] > a[0] ? b : a));
const inside = (outline: readonly Point[], [x, y]: Point): boolean =>
  outline.reduce((odd, [ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!;
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !odd : odd;
  }, false);

/** All of a way but where it passes a valve lies in an outline. */
const crossesIn = (name: string, outline: readonly Point[]): boolean =>
  named(name).points.every((at) => to(outline.map(onPlane), at) < 8 || inside(outline.map(onPlane), at));

test("the left ventricle makes the left border and the apex, the right one lies before its septum to the right", () => {
  const apex = VENTRICLES.reduce((a, b) => (b[0] - b[1] > a[0] - a[1] ? b : a));
  expect(to(LEFT_CAVITY, apex)).toBeLessThan(to(RIGHT_CAVITY, apex));
  expect(to(LEFT_CAVITY, farthest(VENTRICLES))).toBeLessThan(12);
  const middle = (outline: readonly Point[]) => outline.reduce((sum, [x]) => sum + x, 0) / outline.length;
  expect(middle(RIGHT_CAVITY)).toBeLessThan(middle(LEFT_CAVITY) - 15);
});

test("the left ventricle's wall and the septum are some three times as thick as the right one's wall", () => {
  const free = to(VENTRICLES, lowest(RIGHT_CAVITY));
  const wall = to(VENTRICLES, farthest(LEFT_CAVITY));
  expect(wall / free).toBeGreaterThan(2.2);
  expect(wall / free).toBeLessThan(3.8);
  const septum = Math.min(
    ...RIGHT_CAVITY.filter(([x, y]) => x > 24 && y < -50 && y > -66).map((at) => to(LEFT_CAVITY, at)),
  );
  expect(septum).toBeGreaterThan(2 * free);
  // It bulges into the right one.
  const along = RIGHT_CAVITY.filter(([x, y]) => x > 24 && y < -36 && y > -66).map(([x]) => x);
  expect(Math.min(...along)).toBeLessThan(Math.min(along[0]!, along.at(-1)!) - 0.5);
});

test("where heart and lungs fill the picture the chest lies as at the Glenn stage", () => {
  const glenn = pathwayGeometry({ ...START.request, stage: "glenn" })!.chest;
  const chest = chestFrame("two-ventricle", true);
  lungsOf(chest).forEach(({ outline }, i) => {
    outline.forEach((at, k) => {
      expect(away(at, lungsOf(glenn)[i]!.outline[k]!)).toBeLessThan(0.3);
    });
  });
  for (const name of ["svc", "ivc", "left", "right"] as const)
    expect(away(chest[name].centre, glenn[name].centre)).toBeLessThan(0.3);
});

test("the pulmonary trunk leaves before and to the left of the aorta and crosses it", () => {
  const x = (name: "pulmonary" | "aortic") => ring(name)[0];
  expect(x("pulmonary")).toBeGreaterThan(x("aortic"));
  const order = vessels.map(({ name, behind }) => (behind ? `behind ${name}` : name));
  expect(order).toContain("lungTrunk");
  expect(order).toContain("behind rightPulmonaryArtery");
  expect(away(end("lungTrunk"), start("leftPulmonaryArtery"))).toBeLessThan(14);
  expect(away(end("lungTrunk"), start("rightArteryRoot"))).toBeLessThan(14);
  expect(away(end("rightArteryRoot"), start("rightPulmonaryArtery"))).toBeLessThan(8);
});

test("the pulmonary valve stands above and to the left of the aortic one by half a valve and more, and its trunk is half as long again as wide", () => {
  const [pulmonary, aortic] = (["pulmonary", "aortic"] as const).map((name) => planOf(VALVES, name).hinges);
  const middle = ([a, b]: readonly [Point, Point]): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const width = ([a, b]: readonly [Point, Point]) => away(a, b);
  const [[px, py], [ax, ay]] = [middle(pulmonary!), middle(aortic!)];
  expect(px - ax).toBeGreaterThan(width(aortic!));
  expect(py - ay).toBeGreaterThan(width(aortic!) / 2);
  for (const close of [false, true]) {
    const { trunk } = greatVessels(anatomyOf(chestFrame("two-ventricle", close)));
    const way = trunk.line.filter(([, y]) => y >= py);
    const long = way.slice(1).reduce((sum, at, i) => sum + away(at, way[i]!), 0);
    expect(long / trunk.from).toBeGreaterThan(1.4);
    expect(way.at(-1)![0]).toBeGreaterThan(way[0]![0] + 4);
  }
});

test("blood goes from both caval veins through the tricuspid valve to the apex, and out through the pulmonary valve", () => {
  for (const vein of ["Upper", "Lower"]) {
    expect(away(end(`from${vein}Vein`), ring("tricuspid"))).toBeLessThan(12);
    expect(away(start(`from${vein}Vein`), end(vein === "Upper" ? "svc" : "ivc"))).toBeLessThan(12);
  }
  expect(away(start("throughRightVentricle"), ring("tricuspid"))).toBeLessThan(12);
  expect(away(end("throughRightVentricle"), start("throughOutflow"))).toBeLessThan(14);
  expect(passes("throughOutflow", ring("pulmonary"))).toBeLessThan(14);
  expect(away(end("throughOutflow"), start("lungTrunk"))).toBeLessThan(14);
});

test("blood goes from the lungs through the mitral valve to the apex, and over the septum's crest behind the right outflow into the aorta", () => {
  expect(passes("throughAtrium", ring("mitral"))).toBeLessThan(12);
  expect(away(end("throughVentricle"), start("leftOutflow"))).toBeLessThan(8);
  expect(crossesIn("leftOutflow", OUTFLOW.flat())).toBe(true);
  expect(named("leftOutflow").points.some((at) => inside(RIGHT_CAVITY.map(onPlane), at))).toBe(true);
  expect(passes("arch", ring("aortic"))).toBeLessThan(12);
  expect(away(end("leftOutflow"), start("arch"))).toBeLessThan(12);
});

test("the left outflow's blood is not seen in the right one, and is seen again in the aorta", () => {
  const laid = layVessels(vessels);
  const seen = seenAlong(laid)[laid.findIndex(({ vessel: { name } }) => name === "leftOutflow")];
  const { points } = named("leftOutflow");
  expect(points.some((at) => inside(CONUS.map(onPlane), at))).toBe(true);
  expect(seenAt(seen, 0.5)).toBe(0);
  const arch = seenAlong(laid)[laid.findIndex(({ vessel: { name } }) => name === "arch")];
  expect(seenAt(arch, 0.4)).toBe(1);
});

test("veins of the right lung pass behind the right atrium, in which their blood isn't seen, and end in the left one", () => {
  for (const vein of ["", "Lower"])
    expect(inside(LEFT_ATRIUM.map(onPlane), end(`right${vein}PulmonaryVein`)), vein).toBe(true);
  const within = (at: Point) => inside(RIGHT_ATRIUM.map(onPlane), at);
  const shown = vessels
    .filter(({ points, behind }) => !behind && points.some(within))
    .map(({ name }) => name);
  expect(shown.sort()).toEqual(["fromLowerVein", "fromUpperVein", "ivc", "svc", "throughRightVentricle"]);
});

test("ways through a ventricle keep to its blood", () => {
  const placed = (outline: readonly Point[]) => outline.map(onPlane);
  for (const [name, cavity] of [
    ["throughRightVentricle", RIGHT_CAVITY],
    ["throughOutflow", RIGHT_CAVITY],
    ["throughVentricle", LEFT_CAVITY],
  ] as const)
    for (const at of named(name).points) expect(inside(placed(cavity), at), `${name} ${at}`).toBe(true);
});

test("leaflets meet along their free edges in a shut valve, and lie along the blood in an open one", () => {
  for (const plan of VALVES) {
    const hanging = hangingOf(plan);
    const tips = (open: number): readonly Point[] =>
      hanging
        ? sheetsOf(hanging, open).map(({ edge }) => edge[edge.length >> 1]!)
        : cuspsOf(plan, open)
            .slice(0, 2)
            .map(({ line }) => line.at(-1)!);
    const widest = (at: readonly Point[]) => Math.max(...at.flatMap((a) => at.map((b) => away(a, b))));
    expect(widest(tips(0)), plan.name).toBeLessThan(1.2);
    // Those that hang are seen one behind the other.
    expect(widest(tips(1)), plan.name).toBeGreaterThan((hanging ? 0.05 : 0.5) * away(...plan.hinges));
  }
});

test("cords of a leaflet go to both papillary muscles, each from its own side", () => {
  for (const plan of VALVES) {
    const hanging = hangingOf(plan);
    if (!hanging) continue;
    const [first, second] = hanging.heads;
    expect(away(first, second)).toBeGreaterThan(0.4 * away(...plan.hinges));
    for (const { near, held, edge } of sheetsOf(hanging, 0)) {
      if (!near) continue;
      const ends = [0.1, 0.9].map(
        (part) => [held(part), edge[Math.round(part * (edge.length - 1))]!] as const,
      );
      expect(ends[0]![0], plan.name).not.toBe(ends[1]![0]);
      for (const [head, at] of ends) {
        const [own, other] = plan.hinges.map((hinge) => away(hinge, at));
        expect(own! < other!, plan.name).toBe(head === 0);
      }
    }
  }
});

test("both halves of the heart keep one phase: they fill together, eject together, and no valve stands open against its neighbour", () => {
  const circulation = solve({ ...START.request, stage: "two-ventricle" });
  const { heartPeriod } = circulation.traces;
  const seen = Array.from({ length: 200 }, (_, i) => {
    const time = (i / 200) * heartPeriod;
    return openingsAt(circulation, time, false, standingAt(circulation, time, false));
  });
  for (const valve of ["tricuspid", "mitral", "pulmonary", "aortic"] as const)
    expect(
      seen.some((openings) => openings[valve] === 1),
      valve,
    ).toBe(true);
  for (const { tricuspid, mitral, pulmonary, aortic } of seen) {
    expect(Math.min(tricuspid, pulmonary)).toBe(0);
    expect(Math.min(mitral, aortic)).toBe(0);
    expect(Math.min(tricuspid, aortic)).toBe(0);
    expect(Math.min(mitral, pulmonary)).toBe(0);
  }
  const still = openingsAt(circulation, 0, true, standingAt(circulation, 0, true));
  expect(still).toEqual({ tricuspid: 1, mitral: 1, pulmonary: 0, aortic: 0 });
});

test("blood in the lungs is not seen through the heart, nor outside the lungs' vessels", () => {
  const laid = layVessels(vessels);
  const seen = seenAlong(laid);
  const heart = VENTRICLES.map(onPlane);
  const beds = laid.flatMap(({ vessel: { name, points, blood } }, i) =>
    /Bed\d*$/.test(name) && /^(right|left)(Vein)?Bed/.test(name)
      ? [{ name, points, blood, seen: seen[i] }]
      : [],
  );
  expect(beds).toHaveLength(32);
  for (const { name, points, seen } of beds)
    if (points.every((at) => inside(heart, at))) expect(Math.max(...seen!), name).toBe(0);
  const veiled = beds.filter(({ points }) => points.some((at) => inside(heart, at)));
  expect(veiled.length).toBeGreaterThan(0);
  for (const { name, seen } of veiled) expect(Math.min(...seen!), name).toBe(0);
  // An artery's blood and a vein's keep to their own trees.
  for (const { name, blood } of beds)
    expect(blood).toBe(/Vein/.test(name) ? "pulmonaryVein" : "pulmonaryArtery");
});
