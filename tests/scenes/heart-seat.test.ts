// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { coursesOf } from "../../src/scenes/anatomy/courses.ts";
import { inRoot } from "../../src/scenes/anatomy/heart-shape.ts";
import "../../src/scenes/anatomy/stages/index.ts";
import { band } from "../../src/sim/geometry/centreline.ts";
import { outlineDistance } from "../../src/sim/geometry/distance.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { START } from "../../src/state/scene-state.ts";

const STAGES = ["glenn", "lateral-tunnel", "atriopulmonary", "extracardiac"] as const;
const chestOf = (stage: (typeof STAGES)[number]) =>
  anatomyOf(pathwayGeometry({ ...START.request, stage })!.chest);

test.each(STAGES)(
  "the pulmonary stump shows no blood, and its foot lies on the heart's base beside the aortic root (%s)",
  (stage) => {
    const { heart, frame } = chestOf(stage);
    const inStump = outlineDistance(band(heart.trunk.line, heart.trunk.from, heart.trunk.to));
    const inHeart = outlineDistance(heart.ventricle);
    const through = coursesOf(frame).filter(({ flow }) => flow === "atrioventricularValve");
    for (const { x, y, seen } of through)
      for (const [i, shown] of seen.entries())
        if (shown > 0) expect(inStump(x[i]!, y[i]!)).toBeGreaterThan(0);
    const [foot, top] = [heart.trunk.line[0]!, heart.trunk.line.at(-1)!];
    expect(inHeart(...foot)).toBeLessThan(1.5 * heart.size);
    expect(inHeart(...top)).toBeGreaterThan(6 * heart.size);
    expect(foot[0]).toBeGreaterThan(heart.at(...inRoot(0, 0))[0]);
  },
);

test.each(STAGES)(
  "both atria lie in the pericardium, and each pulmonary vein comes through it (%s)",
  (stage) => {
    const { heart, frame, pericardium, behind } = chestOf(stage);
    const inSac = outlineDistance(pericardium);
    for (const point of heart.atrium) expect(inSac(...point)).toBeLessThan(0);
    if (frame.chamber) expect(inSac(-frame.chamber[0], 0)).toBeLessThan(0);
    for (const { name, line } of behind.filter(({ holds }) => holds === "pulmonaryVein")) {
      expect(inSac(...line[0]!), name).toBeGreaterThan(0);
      expect(inSac(...line.at(-1)!), name).toBeLessThan(0);
    }
  },
);
