import { expect, test } from "vitest";
import { columnOf, cutAt, dashes, fitting, innerBox } from "../../src/scenes/drawing/plot.ts";
import { digitsOf, rangeOf, thinned } from "../../src/scenes/drawing/scale.ts";
import { fitInto, rowsOf, splitBox } from "../../src/scenes/drawing/split.ts";

test("an axis ends on round marks around all values", () => {
  const range = rangeOf([-0.4, 3.1, Number.NaN, 2]);
  expect(range.min).toBeLessThanOrEqual(-0.4);
  expect(range.max).toBeGreaterThanOrEqual(3.1);
  expect(range.marks).toEqual([-2, 0, 2, 4]);
  expect(rangeOf([0.31, 0.34]).marks.length).toBeGreaterThan(2);
});

test("equal or missing values still give an axis with a width", () => {
  for (const range of [rangeOf([5, 5], { least: 2 }), rangeOf([]), rangeOf([Number.NaN])])
    expect(range.max - range.min).toBeGreaterThan(0);
});

test("marks are written with the decimals that distinguish them", () => {
  expect(digitsOf({ min: 0, max: 1, marks: [0, 0.5, 1] })).toBe(1);
  expect(digitsOf({ min: 0, max: 20, marks: [0, 10, 20] })).toBe(0);
  expect(digitsOf({ min: 0, max: 1, marks: [0, 0.02, 0.04] })).toBe(2);
});

test("a dashed line draws the drawn share of its length and keeps the pattern across corners", () => {
  const pieces = dashes(
    [
      [0, 0],
      [100, 0],
      [100, 100],
    ],
    [6, 4],
  );
  const length = pieces.reduce(
    (sum, piece) =>
      sum +
      piece.slice(1).reduce((part, [x, y], i) => part + Math.hypot(x - piece[i]![0], y - piece[i]![1]), 0),
    0,
  );
  expect(length).toBeCloseTo(120, 6);
  expect(pieces).toHaveLength(20);
});

test("panes are in a row on a wide stage and one above another on a tall one, without overlap", () => {
  const wide = splitBox({ x: 0, y: 0, width: 1200, height: 600 }, 2, 20);
  expect(wide[1]!.x).toBe(wide[0]!.x + wide[0]!.width + 20);
  const tall = splitBox({ x: 0, y: 0, width: 390, height: 800 }, 2, 20);
  expect(tall[1]!.y).toBe(tall[0]!.y + tall[0]!.height + 20);
});

test("a whole plane is fitted and centred", () => {
  const fit = fitInto(
    { x: 10, y: 0, width: 300, height: 100 },
    { left: 0, top: 0, right: 100, bottom: 100 },
    50,
  );
  expect(fit).toEqual({ scale: 1, x: 110, y: 0 });
});

test("the drawing area stays inside its box", () => {
  const inner = innerBox({ x: 5, y: 7, width: 400, height: 200 }, 20, 1);
  expect(inner.x).toBeGreaterThan(5);
  expect(inner.y + inner.height).toBeLessThan(207 - 20);
});

test("a column keeps the plots that can be read at its height, by rank and in their own order; none where one would cover the others", () => {
  const plots = [
    { name: "a", rank: 2 },
    { name: "b", rank: 0 },
    { name: "c", rank: 1 },
  ];
  const kept = (height: number) =>
    fitting(plots, height, 10, ({ rank }) => rank)
      .map(({ name }) => name)
      .join("");
  expect(kept(200)).toBe("abc");
  expect(kept(140)).toBe("bc");
  expect(kept(70)).toBe("b");
  expect(kept(40)).toBe("");
  // Titles of two lines leave the curves less; only those of plots that stay count.
  const wordy = (names: string) =>
    fitting(
      plots,
      140,
      10,
      ({ rank }) => rank,
      ({ name }) => (names.includes(name) ? 2 : 1),
    ).length;
  expect(wordy("bc")).toBe(1);
  expect(wordy("a")).toBe(2);
});

test("a curve that is shown has at least three heights of type", () => {
  for (let height = 60; height < 900; height += 10)
    for (const lines of [1, 2, 3]) {
      const shown = fitting(
        [1, 2, 3, 4],
        height,
        10,
        (each) => each,
        () => lines,
      );
      const boxes = columnOf({ x: 0, y: 0, width: 300, height }, shown.length, 10);
      if (shown.length > 1)
        boxes.forEach((box, i) => {
          expect(innerBox(box, 10, i === shown.length - 1 ? 1 : 0, lines).height).toBeGreaterThanOrEqual(30);
        });
    }
});

test("the boxes of a column follow each other, and the last holds the foot", () => {
  const boxes = columnOf({ x: 5, y: 10, width: 100, height: 223 }, 2, 10);
  expect(boxes.map(({ y, height }) => [y, height])).toEqual([
    [10, 100],
    [110, 123],
  ]);
});

test("two lines under each mark take their room from the plot, and a column's last box gives it", () => {
  const box = { x: 0, y: 0, width: 200, height: 100 };
  const [none, one, two] = [0, 1, 2].map((lines) => innerBox(box, 10, lines).height);
  expect(none! - one!).toBeGreaterThan(20);
  expect(one! - two!).toBeGreaterThan(10);
  const [single, double] = [1, 2].map((lines) => columnOf({ ...box, height: 300 }, 2, 10, lines));
  const plotOf = (boxes: typeof single, lines: number) => innerBox(boxes![1]!, 10, lines).height;
  expect(plotOf(double, 2)).toBeCloseTo(innerBox(double![0]!, 10, 0).height, 0);
  expect(plotOf(single, 1)).toBeCloseTo(innerBox(single![0]!, 10, 0).height, 0);
});

test("a title of two lines takes its room from the plot", () => {
  const box = { x: 0, y: 0, width: 200, height: 100 };
  const [one, two] = [innerBox(box, 10, 1), innerBox(box, 10, 1, 2)];
  expect(two.y - one.y).toBeCloseTo(12);
  expect(one.height - two.height).toBeCloseTo(12);
});

test("marks that would run into each other are thinned, and zero stays", () => {
  const range = rangeOf([-5.8, 0], { count: 3 });
  expect(thinned(range, 300, 20)).toEqual(range.marks);
  const few = thinned(range, 40, 20);
  expect(few.length).toBeLessThan(range.marks.length);
  expect(few).toContain(0);
});

test("nothing but zeros still has an axis that begins at zero", () => {
  expect(rangeOf([0, 0], { zero: true, least: 4 }).min).toBe(0);
});

test("things set one after another go to a new line when they no longer fit, and none is lost", () => {
  expect(rowsOf([40, 40, 40], 100, 10)).toEqual([[0, 1], [2]]);
  expect(rowsOf([40, 300, 20, 20], 100, 10)).toEqual([[0], [1], [2, 3]]);
  expect(rowsOf([], 100, 10)).toEqual([]);
});

test("a curve is cut where it leaves what is reached, on the line between its points", () => {
  const points = (): [number, number][] => [
    [0, 0],
    [10, 20],
    [20, 40],
  ];
  const [whole, broken] = cutAt(points(), 15);
  expect(whole.at(-1)).toEqual([15, 30]);
  expect(broken).toEqual([
    [15, 30],
    [20, 40],
  ]);
  expect(cutAt(points(), Number.POSITIVE_INFINITY)).toEqual([points(), []]);
});
