import { expect, test } from "vitest";
import { vesselsOf } from "../../src/scenes/circuit/anatomy.ts";
import { layVessels } from "../../src/scenes/circuit/dots.ts";
import { onVessel } from "../../src/scenes/circuit/on-vessel.ts";

const laid = layVessels(vesselsOf("two-ventricle", false));
const fit = { scale: 0.5, x: 100, y: 20 };
const plateAt = (x: number, y: number) => ({
  x: fit.x + x * fit.scale,
  y: fit.y + y * fit.scale,
  width: 60,
  height: 30,
});

test("a plate over a vein differs from one beside the body", () => {
  expect(onVessel(laid, fit, plateAt(400, 640))).toBe(true);
  expect(onVessel(laid, fit, plateAt(-100, 640))).toBe(false);
});
