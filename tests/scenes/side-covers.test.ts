import { describe, expect, test } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { coursesOf } from "../../src/scenes/anatomy/courses.ts";
import { seenUnder } from "../../src/scenes/anatomy/covers.ts";
import { beforeArtery } from "../../src/scenes/anatomy/hilum.ts";
import { sideFlow } from "../../src/scenes/anatomy/side-streams.ts";
import { distanceAt, drawnPlane } from "../../src/scenes/layers/drawn-plane.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { band } from "../../src/sim/geometry/centreline.ts";
import { outlineDistance } from "../../src/sim/geometry/distance.ts";
import type { Point } from "../../src/sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { START } from "../../src/state/scene-state.ts";

const circulation = solve(START.request);
const geometry = pathwayGeometry(START.request)!;

describe("what lies before a vessel hides its marks", () => {
  const plane = drawnPlane(geometry);
  const { chest } = geometry;
  const { marks, shown, rich } = sideFlow().at(chest, circulation, 0, 1, {
    pathway: (x, y) => distanceAt(plane, x, y),
  })!;
  const { before } = anatomyOf(chest);
  const places = (kind: number) =>
    Array.from(rich, (own, i) => (own === kind && shown[i]! > 0 ? i : -1))
      .filter((i) => i >= 0)
      .flatMap((i) => [
        [marks.position[2 * i]!, marks.position[2 * i + 1]!] as const,
        [marks.trail[4 * i]!, marks.trail[4 * i + 1]!] as const,
        [marks.trail[4 * i + 2]!, marks.trail[4 * i + 3]!] as const,
      ]);

  test("blood from the lungs shows neither marks nor trails on the pulmonary arteries", () => {
    const rest = places(1);
    expect(rest.length).toBeGreaterThan(150);
    const onArteries = rest.filter(([x, y]) => distanceAt(plane, x, y) < 0);
    const crossing = beforeArtery(anatomyOf(chest));
    expect(crossing.length).toBeGreaterThan(2);
    // But in the vein that crosses the right one's front, where the artery shows none of its own.
    const across = ([x, y]: Point) => crossing.some(({ at }) => Math.hypot(at[0] - x, at[1] - y) < 5);
    // No mark of the right lung's veins shows on the conduit's fabric, but for trails at its edge.
    const conduit = ([, y]: Point) => y < chest.graft!.line.at(-1)![1];
    expect(onArteries.filter((place) => !across(place) && !conduit(place))).toEqual([]);
    for (const place of onArteries.filter(conduit)) expect(distanceAt(plane, ...place)).toBeGreaterThan(-4);
    expect(onArteries.length).toBeGreaterThan(2);
    const seen = seenUnder(chest, plane);
    for (const { at } of crossing.filter(({ at }) => distanceAt(plane, ...at) < 0))
      expect(seen(...at)).toBe(0);
  });

  test("the arch's branches show theirs beyond its wall alone", () => {
    const aorta = before.at(-1)!;
    const arch = outlineDistance(band(aorta.line, aorta.from, aorta.to));
    const branches = coursesOf(chest).filter(({ flow }) => flow === "upper");
    expect(branches).toHaveLength(3);
    for (const { x, y, room, seen } of branches) {
      const within = Array.from(x, (_, i) => i).filter((i) => arch(x[i]!, y[i]!) < room[i]!);
      expect(within.length).toBeGreaterThan(0);
      for (const i of within) expect(seen[i]).toBe(0);
      expect(Math.max(...seen)).toBe(1);
    }
  });
});
