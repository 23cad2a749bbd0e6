// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { coursesOf } from "../../src/scenes/anatomy/courses.ts";
import { sideFlow } from "../../src/scenes/anatomy/side-streams.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { pathwaySizes } from "../../src/sim/geometry/pathways/sizes.ts";
import { START } from "../../src/state/scene-state.ts";

const request = { ...START.request, stage: "glenn" } as const;
const geometry = pathwayGeometry(request)!;
const circulation = solve(request);
const { outline } = anatomyOf(geometry.chest).parts.find(({ name }) => name === "lowerVein")!;

test("at the Glenn stage the lower vein is drawn from below into the atrium, at its own width", () => {
  const atrium = geometry.chest.atrium;
  const lowest = Math.min(...atrium.map(([, y]) => y));
  const ys = outline.map(([, y]) => y);
  expect(Math.min(...ys)).toBeLessThan(lowest - 15);
  expect(Math.max(...ys)).toBeGreaterThan(lowest);
  const [a, b] = [outline[0]!, outline.at(-1)!];
  expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeCloseTo(pathwaySizes(request).ivc, 6);
});

const inVein = ([x, y]: readonly [number, number]): boolean =>
  x > Math.min(...outline.map(([at]) => at)) &&
  x < Math.max(...outline.map(([at]) => at)) &&
  y > Math.min(...outline.map(([, at]) => at));

test("its blood comes from liver and legs, and moves up by the computed flow into the atrium", () => {
  const course = coursesOf(geometry.chest).find(({ carries }) => carries === "lower")!;
  expect(course.flow).toBe("ivc");
  const streams = sideFlow().at(geometry.chest, circulation, 0, 1)!;
  const { position, count, origin } = streams.marks;
  const at = (i: number) => [position[2 * i]!, position[2 * i + 1]!] as const;
  const [low, high] = [course.y[0]!, course.y.at(-1)!];
  const marks = Array.from({ length: count }, (_, i) => i).filter(
    (i) => streams.rich[i] === 0 && inVein(at(i)) && at(i)[1] > low + 2 && at(i)[1] < high - 1,
  );
  expect(new Set(marks.map((i) => origin[i]))).toEqual(new Set([1, 2]));
  const shown = (from: number, to: number) => {
    const some = marks.filter((i) => {
      const part = (at(i)[1] - low) / (high - low);
      return part > from && part < to;
    });
    return some.reduce((sum, i) => sum + streams.shown[i]!, 0) / some.length;
  };
  // Among them those of the hepatic veins fade out where it takes over.
  expect(shown(0.15, 0.6)).toBeGreaterThan(0.75);
  // No denser than the other veins beyond the pathway: half a mark for each mm2 of a 5-year-old's lumen.
  const { scale, ivc } = geometry.chest;
  expect(marks.length).toBeLessThan((0.8 * ivc.width * (high - low)) / scale ** 2);
});

test("no other stage has such a vein", () => {
  const courses = coursesOf(pathwayGeometry(START.request)!.chest);
  expect(courses.some(({ carries }) => carries === "lower")).toBe(false);
});
