// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { wideningAt } from "../../src/scenes/breathing/arrows.ts";
import { doingAt } from "../../src/scenes/breathing/chest.ts";
import { isInLiver, widthBefore } from "../../src/scenes/breathing/in-liver.ts";
import { ribsOf } from "../../src/scenes/breathing/rib-cage.ts";
import { swingOf } from "../../src/scenes/breathing/swing.ts";
import { vesselsOf } from "../../src/scenes/circuit/anatomy.ts";
import { chestFrame } from "../../src/scenes/circuit/chest-plan.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

const { lungs } = anatomyOf(chestFrame("extracardiac"));
const sides = lungs.map((lung) => [lung.side, lung] as const);

/** Where a place in the wall goes. */
const swungOf = ([x, y]: readonly [number, number], sign: number, size: number): [number, number] => {
  const { a, b, tx, ty } = swingOf(sign, size);
  return [a * x + tx, b * x + y + ty];
};

test.each(sides)(
  "%s: each rib slopes down from the spine to its side, beside the lung, none over the next",
  (_, lung) => {
    const ribs = ribsOf(lung);
    expect(ribs.length).toBeGreaterThanOrEqual(8);
    for (const [i, { root, cut }] of ribs.entries()) {
      expect(cut[1]).toBeLessThan(root[1] - 8);
      const next = ribs[i + 1];
      if (next) expect(cut[1] - next.cut[1]).toBeGreaterThan(8.4);
    }
    const edge = Math.max(...lung.outline.map(([x]) => Math.abs(x - 10)));
    expect(Math.max(...ribs.map(({ cut }) => Math.abs(cut[0] - 10)))).toBeGreaterThan(edge);
  },
);

test.each(sides)(
  "%s: as the lung widens the rib's side rises and swings out, its head at the spine hardly",
  (side, lung) => {
    const sign = side === "right" ? -1 : 1;
    for (const { root, cut } of ribsOf(lung)) {
      const [x, y] = swungOf(cut, sign, 1.1);
      expect(sign * (x - cut[0])).toBeGreaterThan(1.5);
      expect(y - cut[1]).toBeGreaterThan(1.5);
      const [rx, ry] = swungOf(root, sign, 1.1);
      expect(Math.hypot(rx - root[0], ry - root[1])).toBeLessThan(0.6);
      expect(swungOf(cut, sign, 1)).toEqual(cut);
    }
  },
);

test.each(sides)(
  "%s: the wall follows the lung's side: no gap opens between them, none lies in the other",
  (side, lung) => {
    const sign = side === "right" ? -1 : 1;
    const [hx] = lung.hilum;
    const outermost = lung.outline.reduce((a, b) => (sign * b[0] > sign * a[0] ? b : a));
    const wider = 1.12;
    const lungMoves = (wider - 1) * Math.abs(outermost[0] - hx);
    const wallMoves = Math.abs(swungOf(outermost, sign, wider)[0] - outermost[0]);
    expect(Math.abs(wallMoves - lungMoves)).toBeLessThan(2);
  },
);

test("the chest widens while the words say that it breathes in, and narrows while it breathes out", () => {
  const circulation = solve(START.request);
  const { traces } = circulation;
  for (const part of [0.15, 0.25, 0.45, 0.55]) {
    const at = part * traces.period;
    const doing = doingAt(traces, "spontaneous", at);
    expect(wideningAt(circulation, at) > 0, `${part}`).toBe(doing === "in");
  }
  const shut = solve({ ...START.request, set: { breathing: "held" } });
  expect(Math.abs(wideningAt(shut, 1))).toBeLessThan(1e-6);
});

test("only where no vein of the liver goes on from another does it end thin", () => {
  const veins = vesselsOf("extracardiac", false).filter(isInLiver);
  const ends = veins.filter((vein) => widthBefore(vein, veins) === 0);
  expect(ends.length).toBeGreaterThan(3);
  const trunk = veins.find(({ name }) => name === "hepatic")!;
  expect(widthBefore(trunk, veins)).toBeGreaterThan(5);
  for (const vein of veins) expect(widthBefore(vein, veins)).toBeLessThan(vein.width);
});
