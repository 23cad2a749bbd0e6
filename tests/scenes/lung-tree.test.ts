import { expect, test, vi } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { paintLung } from "../../src/scenes/anatomy/paint-lung.ts";
import type { Ink } from "../../src/scenes/anatomy/painted-sheet.ts";
import { roundOf } from "../../src/scenes/anatomy/tones.ts";
import { chestFrame } from "../../src/scenes/circuit/chest-plan.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";

// Only the painting on a canvas is asked for here; pixi itself would ask for a page. A canvas of its own records on the same list.
const shared = vi.hoisted((): { ink: object | null } => {
  // Another file of this process may have read the drawing with a stand-in of its own.
  vi.resetModules();
  return { ink: null };
});
vi.mock("pixi.js", () => ({
  DOMAdapter: { get: () => ({ createCanvas: () => ({ getContext: () => shared.ink }) }) },
}));

const THEME = darkTheme(String);

/** Colours in which strokes are drawn, in turn. */
function strokesOf(draw: (ink: Ink) => void): readonly string[] {
  const strokes: string[] = [];
  const ink: object = new Proxy(
    { strokeStyle: "", a: 1, b: 0, width: 1, height: 1 },
    {
      get: (target, name) =>
        name === "stroke"
          ? () => strokes.push(target.strokeStyle)
          : name in target
            ? Reflect.get(target, name)
            : () => ink,
      set: (target, name, value) => Reflect.set(target, name, value),
    },
  );
  shared.ink = ink;
  draw(ink as Ink);
  return strokes;
}

test("arteries of the lung carry their blood's colour from the hilum on, between the lower vein behind and the upper one before them", () => {
  const [lung] = anatomyOf(chestFrame("extracardiac")).lungs;
  const [arteries, veins] = [roundOf(70, THEME), roundOf(97, THEME)];
  const strokes = strokesOf((ink) => paintLung(ink, lung, { arteries, veins }, 1, THEME));
  const count = (colour: string) => strokes.filter((each) => each === colour).length;
  expect(count(arteries.wall)).toBe(lung.arteries.nodes.filter(({ parent }) => parent >= 0).length);
  const all = lung.veins.nodes.filter(({ parent }) => parent >= 0).length;
  expect(count(veins.wall)).toBe(all);
  expect(strokes.indexOf(veins.wall)).toBeLessThan(strokes.indexOf(arteries.wall));
  expect(strokes.lastIndexOf(veins.wall)).toBeGreaterThan(strokes.lastIndexOf(arteries.light));
});
