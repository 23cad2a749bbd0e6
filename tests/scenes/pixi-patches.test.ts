// @vitest-environment happy-dom
import { Ticker } from "pixi.js";
import { afterEach, expect, test, vi } from "vitest";
import { freeOld } from "../../src/scenes/pixi-patches.ts";

afterEach(() => vi.unstubAllGlobals());

test("the drawing library asks for no screen frame of its own, and looks for what is old after a drawing", async () => {
  const asked = vi.fn();
  vi.stubGlobal("requestAnimationFrame", asked);
  const look = vi.fn();
  Ticker.system.add(look);
  expect(asked).not.toHaveBeenCalled();
  expect(look).not.toHaveBeenCalled();
  await vi.waitFor(() => {
    freeOld();
    expect(look).toHaveBeenCalled();
  });
  Ticker.system.remove(look);
});
