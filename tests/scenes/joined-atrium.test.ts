// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { type Anatomy, anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { coursesOf } from "../../src/scenes/anatomy/courses.ts";
import { returning } from "../../src/scenes/anatomy/great-vessels.ts";
import { rootOutline, seatOf } from "../../src/scenes/anatomy/root-shape.ts";
import type { Course } from "../../src/scenes/anatomy/side-course.ts";
import { sideFlow } from "../../src/scenes/anatomy/side-streams.ts";
import "../../src/scenes/anatomy/stages/index.ts";
import { defectOf } from "../../src/scenes/anatomy/stages/paint-common-atrium.ts";
import { across, lengthwise, onSheet } from "../../src/scenes/anatomy/stages/tunnel-shape.ts";
import { meanOf } from "../../src/scenes/drawing/trace-clock.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { band } from "../../src/sim/geometry/centreline.ts";
import { outlineDistance } from "../../src/sim/geometry/distance.ts";
import type { Point } from "../../src/sim/geometry/geometry.ts";
import { CASES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";
import { apart, bodies, geometryOf } from "./chests.ts";

/** Whether the course's marks show at a place within the outline. */
const showsIn = (outline: readonly Point[], { x, y, seen }: Course): boolean => {
  const inside = outlineDistance(outline);
  return seen.some((shown, i) => shown === 1 && inside(x[i]!, y[i]!) < 0);
};

/** Whether they show within what the aorta covers. */
const showsOnAorta = ({ frame, before }: Anatomy, course: Course): boolean => {
  const { line, from, to } = before.find(({ name }) => name === "aorta")!;
  const up = line.filter(([, y], i) => i > 12 && y < frame.level + 22 * frame.heartScale);
  return showsIn(band(up, from, to), course);
};

test("at the Glenn stage blood from below goes through the septum's defect, behind the aorta and through the valve", () => {
  for (const body of bodies) {
    const anatomy = anatomyOf(geometryOf("glenn", body).chest);
    const { frame, heart } = anatomy;
    const crossing = coursesOf(frame).filter(
      ({ carries, flow, x }) =>
        carries === "lower" && flow === "ivc" && x.at(-1)! > frame.heart + 10 * heart.size,
    );
    expect(crossing.length).toBeGreaterThan(2);
    expect(crossing.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    for (const course of crossing) {
      expect(showsIn(defectOf(anatomy), course)).toBe(true);
      // The aorta is closed there.
      expect(showsOnAorta(anatomy, course)).toBe(false);
      // It is seen again on the other side, before the valve.
      const { x, y, seen } = course;
      const left = (i: number) => x[i]! > frame.heart + 26 * heart.size && y[i]! > heart.at(0, -7)[1];
      expect(seen.some((shown, i) => shown === 1 && left(i))).toBe(true);
    }
    // From the left wall of the vein to the right one.
    const starts = crossing.map(({ x }) => x[0]!);
    expect(Math.max(...starts) - Math.min(...starts)).toBeGreaterThan(0.55 * frame.ivc.width);
    // Some of it turns round beneath the roof before.
    const [top, middle] = [Math.max(...anatomy.heart.atrium.map(([, y]) => y)), anatomy.frame.level];
    const heights = crossing.map(({ x, y }) => Math.max(...y.filter((_, i) => x[i]! < frame.heart)));
    expect(Math.max(...heights)).toBeGreaterThan(middle + 0.4 * (top - middle));
  }
});

test("at the valve marks from the lungs and from below stand as what each brings, and within the ventricle as one", () => {
  const request = { ...START.request, stage: "glenn" as const };
  const circulation = solve(request);
  const { chest } = geometryOf("glenn");
  const { heart } = anatomyOf(chest);
  const { pulmonaryVein, ivc } = circulation.traces.flows;
  const brought = meanOf(circulation.traces, pulmonaryVein!) / meanOf(circulation.traces, ivc!);
  const side = sideFlow();
  const near = { valve: [0, 0, 0], apex: [0, 0, 0] };
  const unmixed: Record<string, number[]> = { valve: [], apex: [] };
  for (let moment = 0; moment < 40; moment++) {
    const streams = side.at(chest, circulation, 0.37 * moment, 1)!;
    const { marks, shown, rich } = streams;
    for (const [i, seen] of shown.entries())
      for (const [place, along] of [
        ["valve", 0],
        ["apex", 27],
      ] as const) {
        const mark = [marks.position[2 * i]!, marks.position[2 * i + 1]!] as const;
        if (seen <= 0.3 || apart(mark, heart.at(along, -7)) >= 8 * heart.size) continue;
        near[place][rich[i]!]!++;
        if (rich[i] !== 2) unmixed[place]!.push(streams.unmixed[i]!);
      }
  }
  const [lower, lungs] = near.valve as [number, number, number];
  expect(lungs / lower / brought).toBeGreaterThan(0.8);
  expect(lungs / lower / brought).toBeLessThan(1.25);
  // On the way each mark's colour goes over into the mixture's.
  const mean = (parts: readonly number[]) => parts.reduce((sum, part) => sum + part, 0) / parts.length;
  expect(mean(unmixed.valve!)).toBeGreaterThan(0.4);
  expect(mean(unmixed.valve!)).toBeLessThan(0.8);
  expect(Math.max(...unmixed.apex!)).toBeLessThan(0.1);
  expect(near.apex[2]).toBeGreaterThan(2 * (near.apex[0]! + near.apex[1]!));
});

test("blood from the right lung passes behind the aorta", () => {
  for (const stage of ["glenn", "lateral-tunnel"] as const) {
    const anatomy = anatomyOf(geometryOf(stage).chest);
    const rich = coursesOf(anatomy.frame).filter(
      ({ carries, flow }) => carries === "rich" && flow === "right",
    );
    expect(rich.some((course) => showsOnAorta(anatomy, course))).toBe(false);
  }
});

test("the aorta is closed before an atrium in which blood crosses: its own marks show in it, and none of the others on it or on its opened root", () => {
  const anatomy = anatomyOf(geometryOf("glenn").chest);
  const { frame, heart } = anatomy;
  const [inAtrium, inRoot] = [heart.atrium, rootOutline(seatOf(anatomy))].map(outlineDistance);
  const courses = coursesOf(frame);
  const { x, y, seen } = courses.find(({ flow, carries }) => flow === "aorta" && carries === "arterial")!;
  const before = [...x.keys()].filter((i) => inAtrium!(x[i]!, y[i]!) < 0 && inRoot!(x[i]!, y[i]!) > 1);
  expect(before.length).toBeGreaterThan(3);
  for (const i of before) expect(seen[i]).toBe(1);
  for (const course of courses.filter(({ pooled }) => pooled)) {
    expect(showsOnAorta(anatomy, course)).toBe(false);
    for (const [i, shown] of course.seen.entries())
      if (inRoot!(course.x[i]!, course.y[i]!) < 0) expect(shown).toBe(0);
  }
});

describe.each(["glenn", "lateral-tunnel"] as const)("a common atrium (%s)", (stage) => {
  test("the right pulmonary veins pass behind its right part and open into its left", () => {
    for (const body of bodies) {
      const { frame, behind, heart } = anatomyOf(geometryOf(stage, body).chest);
      const inAtrium = outlineDistance(frame.atrium);
      const edge = frame.graft
        ? Math.max(...lengthwise(onSheet(frame.graft, frame.scale), 1).map(([x]) => x))
        : 0;
      for (const { line } of returning({ behind })) {
        const [x, y] = line.at(-1)!;
        expect(inAtrium(x, y)).toBeLessThan(-2 * heart.size);
        expect(x).toBeGreaterThan(edge);
        expect(line[0]![0]).toBeLessThan(Math.min(0, ...frame.atrium.map(([at]) => at)) - 2 * frame.scale);
      }
    }
  });

  test("blood from all four comes to the valve, each from its own mouth", () => {
    const { frame, heart, behind } = anatomyOf(geometryOf(stage).chest);
    const valve = heart.at(0, -7);
    const arriving = coursesOf(frame).filter(
      ({ x, y, carries }) =>
        carries === "rich" && [...x.keys()].some((i) => apart([x[i]!, y[i]!], valve) < 5 * heart.size),
    );
    const mouths = behind.filter(({ holds }) => holds === "pulmonaryVein").map(({ line }) => line.at(-1)!);
    expect(arriving).toHaveLength(4);
    for (const mouth of mouths)
      expect(
        arriving.filter(({ x, y }) => [...x.keys()].some((i) => apart([x[i]!, y[i]!], mouth) < 0.01)),
      ).toHaveLength(1);
    for (const side of ["left", "right"] as const)
      expect(
        arriving.filter(({ flow }) => flow === side).reduce((sum, { share }) => sum + share, 0),
      ).toBeCloseTo(1, 9);
  });
});

test("a tunnel's baffle stands on the back wall as the stream's own wall, and the atrium goes on beyond it to the aorta", () => {
  for (const body of bodies) {
    const { frame, before } = anatomyOf(geometryOf("lateral-tunnel", body).chest);
    const { graft, scale } = frame;
    const sheet = onSheet(graft!, scale);
    const [foot, outside] = [lengthwise(sheet, -1), lengthwise(sheet, 1)];
    const [wall, side] = [across(graft!, -1), across(graft!, 1)];
    // Its ends lie at the mouths of the great veins, its foot higher than its cut edge.
    const [low, high] = [side[0]![1], side.at(-1)![1]];
    for (const line of [foot, lengthwise(sheet, 0)]) {
      expect(line[0]![1]).toBeLessThan(low + 0.12 * (high - low));
      expect(line.at(-1)![1]).toBeGreaterThan(low + 0.85 * (high - low));
      expect(line.at(-1)![1]).toBeLessThan(high + 0.1 * scale);
    }
    const middle = foot.length >> 1;
    expect(foot[middle]![0]).toBeGreaterThan(wall[middle]![0] + 5 * scale);
    expect(foot[middle]![0]).toBeLessThan(side[middle]![0] - 4 * scale);
    expect(outside[middle]![0]).toBeGreaterThan(side[middle]![0] + 5 * scale);
    expect(outside[middle]![0]).toBeLessThan(side[middle]![0] + 8 * scale);
    const { line, from } = before.find(({ name }) => name === "aorta")!;
    const level = line.filter(([, y]) => Math.abs(y - side[middle]![1]) < 4 * scale).map(([x]) => x);
    expect(Math.min(...level) - from / 2).toBeGreaterThan(side[middle]![0] + 5 * scale);
  }
});

test("the chest knows the hole in a pathway's wall where it is open", () => {
  for (const stage of ["lateral-tunnel", "atriopulmonary"] as const) {
    expect(geometryOf(stage, CASES.caseA, { fenestrationDiameter: 0 }).chest.hole).toBeUndefined();
    expect(geometryOf(stage, CASES.caseA, { fenestrationDiameter: 4 }).chest.hole).toMatchObject({
      name: "fenestration",
      width: 4,
    });
  }
});
