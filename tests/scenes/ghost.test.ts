// @vitest-environment happy-dom
import { expect, it } from "vitest";
import { ghostLayer } from "../../src/scenes/layers/ghost.ts";
import { lightTheme } from "../../src/scenes/theme/theme.ts";
import { present } from "../../src/sim/checked/present.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { START } from "../../src/state/scene-state.ts";

const theme = lightTheme((key) => key);
const shape = (conduitDiameter: number) =>
  present(pathwayGeometry({ ...START.request, set: { conduitDiameter } }));

it("the wall before a change is drawn where it was, and not at all where it has not moved", () => {
  const ghost = ghostLayer();
  const [wide, narrow] = [shape(24), shape(12)];
  ghost.draw(wide, narrow, 4, theme);
  const { bounds } = ghost.view;
  expect(bounds.width).toBeGreaterThan(30);
  const [left, , right] = wide.bounds;
  expect(bounds.minX).toBeGreaterThan(left - 15);
  expect(bounds.maxX).toBeLessThan(right + 15);
  ghost.draw(shape(12), narrow, 4, theme);
  expect(ghost.view.bounds.width).toBe(0);
  ghost.draw(null, narrow, 4, theme);
  expect(ghost.view.bounds.width).toBe(0);
});
