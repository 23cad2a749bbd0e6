/** When the chest is painted anew around walls that a hand has moved. */
import { expect, test } from "vitest";
import { restingWalls } from "../../src/scenes/pathway/resting-walls.ts";
import { buildField } from "../../src/sim/flow-field/index.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { START } from "../../src/state/scene-state.ts";

/** s between two drawings */
const FRAME = 0.05;

const geometry = pathwayGeometry(START.request)!;
/** Other walls: another record of them is another pathway to the page. */
const moved = { ...geometry };
const session = buildField(geometry, { density: 1060, viscosity: 3.3 }, { cellsAcross: 6, depth: "round" });
const [shape, next] = [session.shape(), session.shape()];
session.release();

/** Which of so many drawings in a row say that the walls rest. */
const rests = (walls: ReturnType<typeof restingWalls>, pane: object, count: number, still = false) =>
  Array.from({ length: count }, () => walls.rest({ geometry, shape, ...pane }, still, FRAME));

test("walls rest once blood has been drawn between them, and not before a hand has", () => {
  const walls = restingWalls();
  rests(walls, {}, 10);
  expect(rests(walls, { geometry: moved }, 10)).not.toContain(true);
  // The new flow's own drawing comes first.
  expect(rests(walls, { geometry: moved, shape: next }, 3)).toEqual([false, true, true]);
});

test("a flow that comes while a hand still moves the walls does not count as theirs", () => {
  const walls = restingWalls();
  rests(walls, {}, 10);
  rests(walls, { geometry: moved }, 1);
  rests(walls, { geometry: moved, shape: next }, 1);
  expect(rests(walls, { geometry: { ...moved }, shape: next }, 10)).not.toContain(true);
});

test("without blood they rest a second later, and in a picture that stands still as soon as the hand does", () => {
  const walls = restingWalls();
  rests(walls, {}, 10);
  const waited = rests(walls, { geometry: moved }, 40);
  expect(waited.indexOf(true) * FRAME).toBeCloseTo(1, 1);
  expect(rests(walls, {}, 10, true).indexOf(true) * FRAME).toBeCloseTo(0.2, 1);
});
