// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { hiatusOf } from "../../src/scenes/anatomy/paint-abdomen.ts";
import { chestFrame } from "../../src/scenes/circuit/chest-plan.ts";
import { band } from "../../src/sim/geometry/centreline.ts";
import { outlineDistance } from "../../src/sim/geometry/distance.ts";
import { hasPlane, STAGES } from "../../src/sim/parameters/request.ts";
import { bodies, geometryOf } from "./chests.ts";

const chests = [...bodies.map((body) => geometryOf("extracardiac", body).chest), chestFrame("extracardiac")];

test("beside a conduit the closed right atrium fills the room to the heart, and both stumps are sewn in its wall", () => {
  for (const frame of chests) {
    const { rightAtrium, heart, before } = anatomyOf(frame);
    const { outline, seams, appendage } = rightAtrium!;
    const { line, widths } = frame.graft!;
    const edges = line.map(([x], i) => x + widths[i]! / 2);
    // It comes out from under the conduit and reaches the groove beside the ventricle.
    expect(Math.min(...outline.map(([x]) => x))).toBeLessThan(Math.max(...edges));
    const inVentricle = outlineDistance(heart.ventricle);
    expect(Math.min(...outline.map((point) => inVentricle(...point)))).toBeLessThan(0);
    // As wide beside the conduit as half of that at least.
    const level = outline.filter(([, y]) => Math.abs(y - frame.level) < 6 * frame.heartScale);
    const seen = Math.max(...level.map(([x]) => x)) - Math.max(...edges);
    expect(seen).toBeGreaterThan(0.5 * Math.max(...widths));
    const inside = outlineDistance(outline);
    expect(seams).toHaveLength(2);
    for (const seam of seams) for (const [x, y] of seam) expect(inside(x, y)).toBeLessThan(0.5 * frame.scale);
    const aorta = before.at(-1)!;
    const inAorta = outlineDistance(band(aorta.line, aorta.from, aorta.to));
    expect(Math.min(...appendage.map((point) => inAorta(...point)))).toBeLessThan(0);
  }
});

test.each(STAGES.filter(hasPlane))(
  "%s: the diaphragm parts around the lower vein, behind it and before it",
  (stage) => {
    const anatomy = anatomyOf(geometryOf(stage).chest);
    const { tendon, rim, far } = hiatusOf(anatomy);
    const [x] = anatomy.frame.ivc.centre;
    const middle = rim.length >> 1;
    expect(far[middle]![1] - rim[middle]![1]).toBeGreaterThan(2 * anatomy.frame.scale);
    for (const end of [0, -1]) {
      expect(rim.at(end)).toEqual(far.at(end));
      expect(Math.abs(rim.at(end)![0] - x)).toBeGreaterThan(anatomy.frame.ivc.width / 2);
    }
    // Its line goes on from either side into the far rim.
    for (const point of far) expect(tendon).toContainEqual(point);
  },
);
