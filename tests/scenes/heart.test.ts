// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { ATRIOVENTRICULAR, SEMILUNAR } from "../../src/scenes/anatomy/heart-shape.ts";
import { outlineDistance } from "../../src/sim/geometry/distance.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { hasPlane, STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

const middle = ({ from, to }: { readonly from: number; readonly to: number }) => (from + to) / 2;

describe.each(STAGES.filter(hasPlane))("the heart beside %s", (stage) => {
  const anatomy = anatomyOf(pathwayGeometry({ ...START.request, stage })!.chest);
  const { heart, behind } = anatomy;

  test("is a left ventricle's: its inlet towards the patient's left of its outlet, its apex to the left and down", () => {
    const [inlet, outlet, apex] = [
      heart.at(0, middle(ATRIOVENTRICULAR)),
      heart.at(0, middle(SEMILUNAR)),
      heart.at(42, 0),
    ];
    expect(inlet[0]).toBeGreaterThan(outlet[0]);
    expect(apex[0]).toBeGreaterThan(inlet[0]);
    expect(apex[1]).toBeLessThan(outlet[1]);
    const left = behind.filter(({ name }) => /^left.*PulmonaryVein$/.test(name));
    for (const { line } of left) expect(line.at(-1)![0]).toBeGreaterThan(outlet[0]);
  });

  test("shows its wall within the closed heart, as thick on both sides and thinner at the apex", () => {
    const inside = outlineDistance(heart.outside);
    for (const [x, y] of heart.outer) expect(inside(x, y)).toBeLessThan(0);
    const thick = heart.outer.map(([x, y], i) => {
      const [ix, iy] = heart.inner[i]!;
      return Math.hypot(x - ix, y - iy);
    });
    const at = (part: number) => thick[Math.round(part * (thick.length - 1))]!;
    expect(Math.abs(at(0.2) - at(0.8))).toBeLessThan(0.15 * at(0.2));
    expect(at(0.5)).toBeLessThan(0.8 * at(0.2));
    expect(at(0.5)).toBeGreaterThan(0.5 * at(0.2));
  });

  test("has one left border from the atrium's appendage to the apex, within the pericardium", () => {
    const [ventricle, appendage] = [outlineDistance(heart.ventricle), outlineDistance(heart.appendage)];
    expect(heart.appendage.some(([x, y]) => ventricle(x, y) < 0)).toBe(true);
    expect(heart.ventricle.some(([x, y]) => appendage(x, y) < 0)).toBe(true);
    const sac = outlineDistance(anatomy.pericardium);
    for (const [x, y] of [...heart.ventricle, ...heart.appendage]) expect(sac(x, y)).toBeLessThan(0);
  });
});
