// @vitest-environment happy-dom
import { Container } from "pixi.js";
import { expect, test } from "vitest";
import { breathEnds, domeAt, endsOf } from "../../src/scenes/breathing/breath-end.ts";
import { descentAt, PIECES, sink, sunkAt } from "../../src/scenes/circuit/sinking.ts";
import { heightAt } from "../../src/scenes/layers/path-line.ts";
import { lightTheme } from "../../src/scenes/theme/theme.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

const breathing = (breathing: string) => solve({ ...START.request, set: { breathing } });

test.each(["spontaneous", "deep", "ventilator"])(
  "%s: both ends of the breath are apart, a deep one's more",
  (kind) => {
    const { out, in: full } = endsOf(breathing(kind))!;
    expect(full - out).toBeGreaterThan(0.05);
    const deep = endsOf(breathing("deep"))!;
    expect(deep.in - deep.out).toBeGreaterThanOrEqual(full - out);
  },
);

test.each(["held", "valsalva"])("%s: nothing moves, so no other end is drawn", (kind) => {
  expect(endsOf(breathing(kind))).toBeNull();
  const ends = breathEnds();
  ends.set(breathing(kind), lightTheme(String));
  expect(ends.view.visible).toBe(false);
});

test("at the end of expiration the dome stands higher than at that of inspiration, all along its line", () => {
  const { out, in: full } = endsOf(breathing("spontaneous"))!;
  const [small, large] = [domeAt(out), domeAt(full)].map((line) => line.flat()) as [number[], number[]];
  for (let x = 300; x <= 760; x += 20) expect(heightAt(large, x)).toBeGreaterThan(heightAt(small, x) + 10);
});

test("what of the belly and of the liver lies beside the arms goes down too, the arms do not", () => {
  expect(sunkAt([250, 624], 12)).toBe(12);
  expect(sunkAt([150, 464], 12)).toBe(0);
});

test("what lies in the chest goes down with the dome: all of its way on the diaphragm, part of it at the heart's base, none at the neck and in the arms", () => {
  const fall = descentAt(1.12);
  expect(fall).toBeGreaterThan(12);
  expect(sunkAt([500, 120], fall)).toBe(0);
  expect(sunkAt([180, 480], fall)).toBe(0);
  expect(sunkAt([468, 520], fall)).toBeCloseTo(fall, 9);
  const base = sunkAt([560, 300], fall);
  expect(base / fall).toBeGreaterThan(0.5);
  expect(base / fall).toBeLessThan(0.7);
  // No step anywhere, and nothing passes what lies below it.
  for (let y = 0; y < 700; y++) {
    const [upper, lower] = [sunkAt([500, y], fall), sunkAt([500, y + 1], fall)];
    expect(Math.abs(lower - upper)).toBeLessThan(0.2);
    expect(lower).toBeGreaterThanOrEqual(upper);
  }
});

test("a piece of the picture goes exactly where its blood goes", () => {
  const fall = -9;
  PIECES.forEach(({ from, to }, i) => {
    const view = new Container();
    sink(view, i, fall);
    for (const y of [Math.max(0, from), Math.min(700, to) - 1e-6])
      expect(y * view.scale.y + view.position.y - y).toBeCloseTo(sunkAt([500, y], fall), 6);
  });
});
