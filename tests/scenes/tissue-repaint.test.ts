import { expect, test, vi } from "vitest";
import { figuresAt } from "../../src/scenes/exchange/day.ts";
import { paintCapillary } from "../../src/scenes/exchange/paint-capillary.ts";
import { paintTissue } from "../../src/scenes/exchange/paint-tissue.ts";
import { isSmall, tissuePicture } from "../../src/scenes/exchange/tissue-drawing.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import type { Circulation } from "../../src/sim/circulation/answer/answer.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { solveExchange } from "../../src/sim/exchange/index.ts";
import { START } from "../../src/state/scene-state.ts";

const { anything } = vi.hoisted(() => {
  // Another file of this process may have read the drawing with a stand-in of its own.
  vi.resetModules();
  // Whatever is asked of it is there, does nothing and gives itself; as a number it is 0.
  const anything: object = new Proxy(class {}, {
    get: (target, name) =>
      name === Symbol.iterator
        ? [][Symbol.iterator].bind([])
        : name === Symbol.toPrimitive
          ? () => 0
          : (Reflect.get(target, name) ?? anything),
    apply: () => anything,
    construct: () => anything,
  });
  return { anything };
});
vi.mock("pixi.js", () => ({
  Container: anything,
  DOMAdapter: anything,
  Graphics: anything,
  Particle: anything,
  ParticleContainer: anything,
  Rectangle: anything,
  Sprite: anything,
  Texture: anything,
}));
vi.mock("../../src/scenes/exchange/paint-tissue.ts", { spy: true });
vi.mock("../../src/scenes/exchange/paint-capillary.ts", { spy: true });

const painted = () => [vi.mocked(paintTissue).mock.calls.length, vi.mocked(paintCapillary).mock.calls.length];

test("another circulation paints its capillary anew, and nothing of the tissue around it", () => {
  const rest = solve(START.request);
  const figures = figuresAt(solveExchange(rest), 3);
  const [picture, box, theme] = [tissuePicture(), { x: 0, y: 0, width: 600, height: 500 }, darkTheme(String)];
  const draw = (circulation: Circulation, width = box.width) =>
    picture.draw({ circulation, figures, drop: 14, full: 50, time: 1, type: 13 }, { ...box, width }, theme);
  draw(rest);
  expect(painted()).toEqual([1, 1]);
  draw(rest);
  expect(painted()).toEqual([1, 1]);
  draw({ ...rest });
  expect(painted()).toEqual([1, 2]);
  draw({ ...rest }, 300);
  expect(painted()).toEqual([2, 3]);
});

test("bars keep their numbers on a screen, and go with them on a phone", () => {
  const screen = { scale: 0.64, type: 15 };
  expect(isSmall(screen.scale, screen.type)).toBe(false);
  expect(isSmall(screen.scale, 2 * screen.type)).toBe(true);
  expect(isSmall(0.36, 13)).toBe(true);
});
