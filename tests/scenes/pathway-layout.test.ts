import { describe, expect, it } from "vitest";
import { frame, readable } from "../../src/scenes/layers/grade-frame.ts";
import {
  inBoxes,
  keyPlace,
  layout,
  onPlane,
  onScreen,
  project,
} from "../../src/scenes/pathway/pathway-layout.ts";
import type { Box } from "../../src/scenes/scene.ts";
import { sizes } from "../../src/scenes/theme/type.ts";

const SCREENS: readonly (readonly [string, number, number, number])[] = [
  ["4K hall", 3840, 2160, 24],
  ["projector", 1920, 1080, 24],
  ["old projector", 1024, 768, 24],
  ["laptop", 1280, 800, 13],
  ["kiosk", 1080, 1920, 24],
  ["phone", 390, 844, 13],
  ["phone on its side", 844, 390, 13],
];

const inside = (inner: Box, outer: Box): boolean =>
  inner.x >= outer.x - 0.5 &&
  inner.y >= outer.y - 0.5 &&
  inner.x + inner.width <= outer.x + outer.width + 0.5 &&
  inner.y + inner.height <= outer.y + outer.height + 0.5;

const apart = (a: Box, b: Box): boolean =>
  a.x + a.width <= b.x + 0.5 ||
  b.x + b.width <= a.x + 0.5 ||
  a.y + a.height <= b.y + 0.5 ||
  b.y + b.height <= a.y + 0.5;

describe.each(SCREENS)("the pathway scene's layout for a %s (%i x %i)", (_, width, height, floor) => {
  const clear = { x: 0, y: 0, width, height };
  const type = sizes(height, floor);

  it.each([1, 2, 3])("keeps %i panes, grade line and key inside and apart", (count) => {
    const at = keyPlace(clear, count, type);
    const key = { x: at.x, y: at.y, width: at.width, height: type.axis * 3 };
    const { planes, grade } = layout(clear, count, true, key, type);
    expect(planes).toHaveLength(count);
    const boxes = [...planes, grade!, ...(at.inline ? [key] : [])];
    for (const box of boxes) expect(inside(box, clear)).toBe(true);
    for (let i = 0; i < boxes.length; i++) {
      for (let j = i + 1; j < boxes.length; j++) expect(apart(boxes[i]!, boxes[j]!)).toBe(true);
    }
    expect(grade!.height).toBeGreaterThanOrEqual(type.axis * 7);
  });

  it("U14 sets no type under its floor, and figures no smaller than labels", () => {
    expect(Math.min(type.axis, type.label, type.figure)).toBeGreaterThanOrEqual(floor);
    expect(type.axis / height).toBeGreaterThanOrEqual(0.015);
    expect(type.figure).toBeGreaterThanOrEqual(type.label);
  });
});

describe("the projection", () => {
  it("fits bounds into a box, centred, and turns back", () => {
    const box = { x: 100, y: 50, width: 800, height: 400 };
    const projection = project(box, [-60, -80, 40, 70]);
    const middle = onScreen(projection, [-10, -5]);
    expect(middle[0]).toBeCloseTo(500);
    expect(middle[1]).toBeCloseTo(250);
    const [x, y] = onScreen(projection, [12, 34]);
    const [px, py] = onPlane(projection, x, y);
    expect(px).toBeCloseTo(12);
    expect(py).toBeCloseTo(34);
    expect(onScreen(projection, [0, 70])[1]).toBeCloseTo(50);
  });
});

it("three pathways on a phone leave a grade line under its key of three lines", () => {
  const [clear, type] = [{ x: 0, y: 0, width: 390, height: 440 }, sizes(390, 13)];
  const { grade } = layout(clear, 3, true, { x: 0, y: 0, width: 370, height: 50 }, type);
  const key = { width: 0, height: 3 * 1.3 * type.label };
  expect(readable(frame(grade!, key, type), type)).toBe(true);
});

it("three pathways stand two above one where that leaves them largest", () => {
  const rows = (width: number, height: number) =>
    new Set(inBoxes({ x: 0, y: 0, width, height }, 3, 10).map(({ y }) => y)).size;
  expect(rows(690, 1200)).toBe(3);
  expect(rows(700, 800)).toBe(2);
  expect(rows(640, 480)).toBe(2);
  expect(rows(1600, 500)).toBe(1);
  const [one, other, third] = inBoxes({ x: 0, y: 0, width: 640, height: 480 }, 3, 10);
  expect(one!.width).toBeGreaterThan(640 / 3);
  expect(third!.x + third!.width / 2).toBeCloseTo(320);
  expect([other!.width, third!.width]).toEqual([one!.width, one!.width]);
});

it("no key lies over a body that fills the width", () => {
  const type = sizes(800, 14);
  expect(keyPlace({ x: 0, y: 0, width: 640, height: 700 }, 1, type).inline).toBe(true);
  expect(keyPlace({ x: 0, y: 0, width: 880, height: 645 }, 1, sizes(645, 13)).inline).toBe(false);
  expect(keyPlace({ x: 0, y: 0, width: 1500, height: 900 }, 1, sizes(900, 13)).inline).toBe(false);
});
