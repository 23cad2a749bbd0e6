import { describe, expect, test } from "vitest";
import { vesselsOf } from "../../src/scenes/circuit/anatomy.ts";
import { PAINTED } from "../../src/scenes/circuit/outlines.ts";
import type { Vessel } from "../../src/scenes/circuit/vessel.ts";
import type { Spot } from "../../src/scenes/drawing/curve-drawing.ts";
import { shapeDistance } from "../../src/sim/geometry/distance.ts";
import { STAGES } from "../../src/sim/parameters/request.ts";

const find = (vessels: readonly Vessel[], name: string): Vessel => {
  const found = vessels.find((each) => each.name === name);
  expect(found, name).toBeDefined();
  return found!;
};
const startOf = ({ points }: Vessel): Spot => points[0]!;
const endOf = ({ points }: Vessel): Spot => points.at(-1)!;
const apart = ([ax, ay]: Spot, [bx, by]: Spot): number => Math.hypot(ax - bx, ay - by);
const xAt = ({ points }: Vessel, y: number): number => {
  const i = points.findIndex(([, py], k) => k > 0 && (py - y) * (points[k - 1]![1] - y) <= 0);
  const [[ax, ay], [bx, by]] = [points[i - 1]!, points[i]!];
  return ax + ((bx - ax) * (y - ay)) / (by - ay);
};
/** How near a vessel passes to a spot. */
const passes = ({ points }: Vessel, [x, y]: Spot): number =>
  Math.min(
    ...points.slice(1).map(([bx, by], k) => {
      const [ax, ay] = points[k]!;
      const along = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2);
      const part = Math.min(1, Math.max(0, along));
      return Math.hypot(x - ax - part * (bx - ax), y - ay - part * (by - ay));
    }),
  );

describe.each(STAGES)("the whole circulation: %s", (stage) => {
  const vessels = vesselsOf(stage, false);
  const of = (name: string) => find(vessels, name);

  test("arms: artery from the arch, bed in the hand, vein to the neck's, all of the upper body's stream", () => {
    for (const [side, Side, from] of [
      ["right", "Right", of("brachiocephalicArtery")],
      ["left", "Left", of("arch")],
    ] as const) {
      const [artery, bed, vein] = [
        of(`upperLimbArtery${Side}`),
        of(`${side}HandBed`),
        of(`upperLimbVein${Side}`),
      ];
      expect(passes(from, startOf(artery))).toBeLessThan(20);
      expect(apart(endOf(artery), startOf(bed))).toBeLessThan(6);
      expect(apart(endOf(bed), startOf(vein))).toBeLessThan(6);
      expect(apart(endOf(vein), startOf(of(`${side}BrachiocephalicVein`)))).toBeLessThan(6);
      for (const each of [artery, bed, vein]) expect(each.flow).toBe("upper");
    }
  });

  test("each stream's beds share all of it, and no more", () => {
    for (const [stream, whole] of [
      ["upper", 1],
      ["splanchnic", 1],
    ] as const) {
      const fed = vessels.filter(({ bed, flow, blood }) => bed && flow === stream && blood === "arterial");
      expect(fed.reduce((sum, { share = 1 }) => sum + share, 0)).toBeCloseTo(whole, 9);
    }
  });

  test("the aorta runs on to its fork, left of the inferior vena cava, whose veins meet lower", () => {
    const [aorta, fork, cava] = [of("descending"), of("aorticFork"), of("lowerIvc")];
    for (const y of [560, 680, 820]) {
      const edge = xAt(cava, y) + cava.width / 2;
      expect(xAt(aorta, y) - aorta.width / 2).toBeGreaterThan(edge);
    }
    expect(passes(aorta, startOf(fork))).toBeLessThan(4);
    expect(endOf(fork)[1]).toBeLessThan(endOf(of("rightLegVein"))[1]);
  });

  test("trunk to liver and spleen, then to the bowel, then to the kidneys leave the aorta in this order", () => {
    const heights = [
      "liverArtery",
      "gutArtery",
      "leftKidneyArtery",
      "rightKidneyArtery",
      "rightLegArtery",
    ].map((name) => startOf(of(name))[1]);
    expect(heights).toEqual([...heights].sort((a, b) => a - b));
    for (const name of ["liverArtery", "gutSplenicArtery", "gutArtery", "leftKidneyArtery"])
      expect(passes(of("descending"), startOf(of(name))), name).toBeLessThan(6);
  });

  test("the portal vein is made of the bowel's and the spleen's", () => {
    for (const name of ["gutVein", "gutSplenicVein"])
      expect(passes(of("portal"), endOf(of(name))), name).toBeLessThan(6);
    const [bowel = 1, spleen = 1, both = 0] = ["gutVein", "gutSplenicVein", "portal"].map(
      (name) => of(name).share,
    );
    expect(bowel + spleen).toBeCloseTo(both, 9);
  });

  test("each loop of bowel and each thigh has a bed from an artery's branch to a vein's", () => {
    const beds = vessels.filter(({ name }) => /^gutBed|ThighBed$/.test(name));
    expect(beds.length).toBeGreaterThan(7);
    for (const bed of beds) {
      const ends = (wanted: string) =>
        vessels.filter((each) => !each.bed && each.flow === bed.flow && each.blood === wanted);
      const fed = Math.min(...ends("arterial").map((each) => apart(endOf(each), startOf(bed))));
      const drained = Math.min(...ends("ivc").map((each) => apart(endOf(bed), startOf(each))));
      expect(fed, bed.name).toBeLessThan(6);
      expect(drained, bed.name).toBeLessThan(6);
    }
  });

  test("the liver's capillaries lie in the liver, from portal vein or artery to hepatic veins", () => {
    const liver = PAINTED.find(({ name }) => name === "liver")!.points;
    const fields = vessels.filter(({ between }) => between);
    expect(new Set(fields.map(({ blood }) => blood))).toEqual(new Set(["ivc", "arterial"]));
    const near = (pattern: RegExp, spot: Spot) =>
      Math.min(
        ...vessels.filter((each) => !each.bed && pattern.test(each.name)).map((each) => passes(each, spot)),
      );
    for (const { name, between, blood } of fields) {
      const [from, to] = between!;
      for (const spot of [...from, ...to])
        expect(shapeDistance({ polygon: { points: liver } })(...spot), `${name} ${spot}`).toBeLessThan(0);
      for (const spot of from)
        expect(near(blood === "ivc" ? /^(portal|liver.*Portal)/ : /^liver.*Artery/, spot), name).toBeLessThan(
          18,
        );
      for (const spot of to) expect(near(/^hepatic/, spot), name).toBeLessThan(18);
    }
  });

  test("a carotid artery and a jugular vein on both sides of the neck, the vein outside", () => {
    expect(xAt(of("rightJugular"), 100)).toBeLessThan(xAt(of("rightCarotid"), 100));
    expect(xAt(of("leftJugular"), 100)).toBeGreaterThan(xAt(of("leftCarotid"), 100));
  });
});
