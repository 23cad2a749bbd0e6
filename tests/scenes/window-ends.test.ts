/** A lung's artery from the window onto its blood into the lung: one vessel. */
import { expect, it } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { coursesOf } from "../../src/scenes/anatomy/courses.ts";
import { seenUnder } from "../../src/scenes/anatomy/covers.ts";
import { distanceAt, drawnPlane } from "../../src/scenes/layers/drawn-plane.ts";
import { lipOf, windowEnd } from "../../src/scenes/layers/window-ends.ts";
import { band } from "../../src/sim/geometry/centreline.ts";
import { outlineDistance } from "../../src/sim/geometry/distance.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import type { CirculationRequest } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

const STAGES = ["glenn", "atriopulmonary", "lateral-tunnel", "extracardiac"] as const;

it.each(STAGES)(
  "of %s its front closes within the lumen, and its stem lies under the window's edge",
  (stage) => {
    const request: CirculationRequest = { ...START.request, stage };
    const geometry = pathwayGeometry(request)!;
    const { chest, openings } = geometry;
    const plane = drawnPlane(geometry);
    for (const { side, arteries, hilum } of anatomyOf(chest).lungs) {
      const opening = openings.find(({ name }) => name === side)!;
      const end = windowEnd(opening, chest);
      const { centre, normal, width } = end;
      expect(Math.hypot(centre[0] - hilum[0], centre[1] - hilum[1])).toBeGreaterThan(0.7 * width);
      const ahead = lipOf(end).map(([x, y]) => (x - centre[0]) * normal[0] + (y - centre[1]) * normal[1]);
      // It begins farthest from the lung in the vessel's middle.
      expect(Math.min(...ahead)).toBeCloseTo(ahead[12]!, 6);
      for (const [x, y] of lipOf(end).slice(4, -4)) expect(distanceAt(plane, x, y)).toBeLessThan(0);
      const beneath = arteries.nodes.filter(
        ({ at: [x, y], width: own }) =>
          own > 0.95 * width && (x - centre[0]) * normal[0] + (y - centre[1]) * normal[1] < -0.3 * width,
      );
      expect(beneath.length).toBeGreaterThan(0);
      for (const { at } of beneath) expect(distanceAt(plane, ...at)).toBeLessThan(-0.3 * width);
    }
  },
);

it("blood of the liver goes up at both sides of that from the legs, as the plane takes it in", () => {
  const { chest } = pathwayGeometry(START.request)!;
  const [x, y] = chest.ivc.centre;
  const own = coursesOf(chest).filter((course) => Math.abs((course.x.at(-1) ?? 0) - x) < chest.ivc.width / 2);
  const ends = (carries: number) =>
    own
      .filter((course) => course.carries === carries && (course.y.at(-1) ?? 0) > y)
      .map((course) => course.x.at(-1)! - x);
  const liver = ends(1);
  expect(Math.min(...liver)).toBeLessThan(-0.2 * chest.ivc.width);
  expect(Math.max(...liver)).toBeGreaterThan(0.2 * chest.ivc.width);
  const legs = own.find((course) => course.carries === 2)!;
  expect(Math.abs(legs.x.at(-1)! - x)).toBeLessThan(0.05 * chest.ivc.width);
  expect(legs.room.at(-1)).toBeLessThan(0.3 * chest.ivc.width);
  expect(legs.seen[0]).toBeLessThan(0.1);
});

it.each(STAGES)("of %s blood is seen behind the aorta in a chamber alone", (stage) => {
  const { chest, ...geometry } = pathwayGeometry({ ...START.request, stage })!;
  const plane = drawnPlane({ ...geometry });
  const seen = seenUnder(chest, plane);
  const { line, from, to } = anatomyOf(chest).before.at(-1)!;
  const away = outlineDistance(band(line, from, to));
  let [behind, beside] = [0, 0];
  for (let x = plane.originX; x < chest.left.centre[0]; x += 0.7)
    for (let y = plane.originY; y < chest.svc.centre[1]; y += 0.7) {
      if (distanceAt(plane, x, y) >= 0) continue;
      if (away(x, y) < -1) {
        behind++;
        const [a, b] = chest.chamber ?? [1e-9, 1e-9];
        const size = Math.hypot(x / a, y / b);
        // Its samples are a millimetre apart.
        if (Math.abs(size - 1) > 0.05) expect(seen(x, y)).toBe(size < 1 ? 1 : 0);
      } else if (away(x, y) > 3 && x > -15 * chest.scale) {
        beside++;
        expect(seen(x, y)).toBe(1);
      }
    }
  expect(behind).toBeGreaterThan(50);
  expect(beside).toBeGreaterThan(500);
});
