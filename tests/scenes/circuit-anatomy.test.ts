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
      for (const spot of bed.between![0]) expect(passes(artery, spot)).toBeLessThan(8);
      for (const spot of bed.between![1]) expect(passes(vein, spot)).toBeLessThan(8);
      expect(apart(endOf(vein), startOf(of(`${side}BrachiocephalicVein`)))).toBeLessThan(6);
      for (const each of [artery, bed, vein]) expect(each.flow).toBe("upper");
    }
  });

  test("each stream's beds share all of it, and no more", () => {
    for (const [stream, whole] of [
      ["upper", 1],
      ["splanchnic", 1],
      ["legs", 1],
    ] as const) {
      const fed = vessels.filter(({ bed, flow, blood }) => bed && flow === stream && blood === "arterial");
      expect(fed.reduce((sum, { share = 1 }) => sum + share, 0)).toBeCloseTo(whole, 9);
    }
  });

  test("the aorta runs on to its fork, left of the inferior vena cava, whose veins meet lower", () => {
    const [aorta, fork] = [of("descending"), of("aorticFork")];
    for (const y of [560, 680, 820]) {
      const cava = of(y < 700 ? "lowerIvc" : "infrarenalCava");
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

  test("the bowel's vein runs to the right of its artery, between vena cava and aorta, all the way to the pancreas", () => {
    const [artery, vein, aorta, cava] = [of("gutArtery"), of("gutVein"), of("descending"), of("lowerIvc")];
    for (const y of [700, 730, 760, 780]) {
      expect(xAt(vein, y)).toBeLessThan(xAt(artery, y) - (vein.width + artery.width) / 2);
      expect(xAt(vein, y)).toBeLessThan(xAt(aorta, y) - aorta.width / 2);
    }
    for (const y of [690, 720]) expect(xAt(vein, y)).toBeGreaterThan(xAt(cava, y));
    const order = (name: string) => vessels.findIndex((each) => each.name === name);
    expect(order("gutSplenicVein")).toBeGreaterThan(order("gutArtery"));
    expect(order("liverArtery")).toBeGreaterThan(order("portal"));
  });

  test("bowel, spleen, thighs, calves and feet have beds all along from an artery to a vein", () => {
    const beds = vessels.filter(({ name }) => /^gut.*Bed|(Thigh|Calf|Foot)Bed$/.test(name));
    expect(beds.length).toBeGreaterThan(12);
    for (const bed of beds) {
      const [from, to] = bed.between!;
      const near = (wanted: string, spot: Spot) =>
        Math.min(
          ...vessels
            .filter((each) => !each.bed && each.flow === bed.flow && each.blood === wanted)
            .map((each) => passes(each, spot)),
        );
      // A foot's own vessels end in it, beyond which its bed spreads.
      const reach = bed.name.includes("Foot") ? 40 : 14;
      for (const spot of from) expect(near("arterial", spot), `${bed.name} ${spot}`).toBeLessThan(reach);
      if (!bed.name.includes("Foot"))
        for (const spot of to) expect(near(bed.becomes!, spot), `${bed.name} ${spot}`).toBeLessThan(reach);
    }
  });

  test("a leg's artery and vein run from the groin to the foot, the vein inside", () => {
    for (const [side, inside] of [
      ["right", 1],
      ["left", -1],
    ] as const) {
      const at = (name: string, y: number) => xAt(of(`${side}Leg${name}`), y);
      for (const y of [1200, 1300, 1400])
        expect(inside * (at("FemoralVein", y) - at("FemoralArtery", y))).toBeGreaterThan(0);
      for (const y of [1600, 1800, 1950])
        expect(inside * (at("TibialVein", y) - at("TibialArtery", y))).toBeGreaterThan(0);
      expect(endOf(of(`${side}LegTibialArtery`))[1]).toBeGreaterThan(2000);
      expect(apart(startOf(of(`${side}LegTibialArtery`)), endOf(of(`${side}LegFemoralArtery`)))).toBeLessThan(
        12,
      );
      expect(apart(endOf(of(`${side}LegTibialVein`)), startOf(of(`${side}LegFemoralVein`)))).toBeLessThan(12);
    }
  });

  test("the liver's capillaries lie in the liver, from portal vein or artery to hepatic veins", () => {
    const liver = PAINTED.find(({ name }) => name === "liver")!.points;
    const fields = vessels.filter(({ name, between }) => between && name.startsWith("liver"));
    expect(new Set(fields.map(({ blood }) => blood))).toEqual(new Set(["portal", "arterial"]));
    const near = (pattern: RegExp, spot: Spot) =>
      Math.min(
        ...vessels.filter((each) => !each.bed && pattern.test(each.name)).map((each) => passes(each, spot)),
      );
    for (const { name, between, blood } of fields) {
      const [from, to] = between!;
      for (const spot of [...from, ...to])
        expect(shapeDistance({ polygon: { points: liver } })(...spot), `${name} ${spot}`).toBeLessThan(0);
      for (const spot of from)
        expect(
          near(blood === "portal" ? /^(portal|liver.*Portal)/ : /^liver.*Artery/, spot),
          name,
        ).toBeLessThan(18);
      for (const spot of to) expect(near(/^hepatic/, spot), name).toBeLessThan(18);
    }
  });

  test("portal and hepatic branches end apart, with nothing but capillaries between them", () => {
    const branches = vessels.filter(({ bed, name }) => !bed && /^liver.*Portal|^hepatic/.test(name));
    const isPortal = ({ blood }: Vessel) => blood === "portal";
    for (const branch of branches) {
      const tip = isPortal(branch) ? endOf(branch) : startOf(branch);
      for (const other of branches.filter((each) => isPortal(each) !== isPortal(branch)))
        expect(passes(other, tip), `${branch.name} to ${other.name}`).toBeGreaterThan(12);
    }
  });

  test("a carotid artery and a jugular vein on both sides of the neck, the vein outside", () => {
    expect(xAt(of("rightJugular"), 100)).toBeLessThan(xAt(of("rightCarotid"), 100));
    expect(xAt(of("leftJugular"), 100)).toBeGreaterThan(xAt(of("leftCarotid"), 100));
  });
});
