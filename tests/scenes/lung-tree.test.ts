import { expect, test, vi } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { paintLung } from "../../src/scenes/anatomy/paint-lung.ts";
import type { Ink } from "../../src/scenes/anatomy/painted-sheet.ts";
import { hollow, roundOf } from "../../src/scenes/anatomy/tones.ts";
import { chestFrame } from "../../src/scenes/circuit/chest-plan.ts";
import { rgb } from "../../src/scenes/theme/colour.ts";
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

test("arteries of the lung begin in the look of the vessel that feeds them and turn into their blood's", () => {
  const [lung] = anatomyOf(chestFrame("extracardiac")).lungs;
  const [arteries, veins] = [roundOf(70, THEME), roundOf(97, THEME)];
  const strokes = strokesOf((ink) => paintLung(ink, lung, { arteries, veins }, 1, THEME));
  const far = (a: string, b: string) => Math.hypot(...rgb(a).map((part, i) => part - rgb(b)[i]!));
  const nearest = Math.min(
    ...strokes.filter((each) => each.startsWith("#")).map((each) => far(each, hollow(THEME).wall)),
  );
  expect(nearest).toBeLessThan(0.09);
  expect(far(arteries.wall, hollow(THEME).wall)).toBeGreaterThan(0.2);
  expect(strokes.filter((each) => each === arteries.wall).length).toBeGreaterThan(20);
});
