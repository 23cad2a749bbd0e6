import { expect, test, vi } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { paintLung } from "../../src/scenes/anatomy/paint-lung.ts";
import type { Ink } from "../../src/scenes/anatomy/painted-sheet.ts";
import { roundOf } from "../../src/scenes/anatomy/tones.ts";
import { chestFrame } from "../../src/scenes/circuit/chest-plan.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";

// Only the painting on a canvas is asked for here; pixi itself would ask for a page.
vi.mock("pixi.js", () => ({}));

const THEME = darkTheme(String);

/** Colours in which strokes are drawn, in turn. */
function strokesOf(draw: (ink: Ink) => void): readonly string[] {
  const strokes: string[] = [];
  const ink: object = new Proxy(
    { strokeStyle: "" },
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
  draw(ink as Ink);
  return strokes;
}

test("arteries of the lung carry their blood's colour from the hilum on, where the veins' trunks lie before them", () => {
  const [lung] = anatomyOf(chestFrame("extracardiac")).lungs;
  const [arteries, veins] = [roundOf(70, THEME), roundOf(97, THEME)];
  const strokes = strokesOf((ink) => paintLung(ink, lung, { arteries, veins }, 1, THEME));
  const count = (colour: string) => strokes.filter((each) => each === colour).length;
  expect(count(arteries.wall)).toBe(lung.arteries.nodes.filter(({ parent }) => parent >= 0).length);
  const all = lung.veins.nodes.filter(({ parent }) => parent >= 0).length;
  const trunks = strokes.slice(strokes.lastIndexOf(arteries.light)).filter((each) => each === veins.wall);
  expect(trunks.length).toBeGreaterThan(4);
  expect(trunks.length).toBeLessThan(all / 2);
  expect(count(veins.wall)).toBe(all + trunks.length);
});
