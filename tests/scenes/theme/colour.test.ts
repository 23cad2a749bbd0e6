import {
  type Rgb as CuloriRgb,
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  lab65,
  parse,
  wcagContrast,
} from "culori";
import {
  interpolateBlues,
  interpolateCividis,
  interpolateOranges,
  interpolatePurples,
} from "d3-scale-chromatic";
import { describe, expect, it } from "vitest";
import { DARK, LIGHT } from "../../../src/scenes/theme/colour.ts";
import { LEGIBLE, MAPS, type MapName, mapColour } from "../../../src/scenes/theme/maps.ts";

const difference = differenceCiede2000();
const lightness = (colour: string | CuloriRgb): number => lab65(colour)!.l;
const solid = ([r, g, b]: readonly [number, number, number]): CuloriRgb => ({ mode: "rgb", r, g, b });
// Machado, Oliveira & Fernandes 2009, severity 1.
const deficiencies = {
  protan: filterDeficiencyProt(1),
  deutan: filterDeficiencyDeuter(1),
  tritan: filterDeficiencyTrit(1),
};
const stages = { dark: DARK, light: LIGHT };

describe.each(Object.entries(stages))("colours on the %s stage", (name, palette) => {
  const pairs = [
    ["upper and liver", palette.origin[0], palette.origin[1]],
    ["upper and legs", palette.origin[0], palette.origin[2]],
    ["liver and legs", palette.origin[1], palette.origin[2]],
    ["oxygen-poor and oxygen-rich", palette.poor, palette.rich],
  ] as const;

  it.each(pairs)("U7 %s stay apart to every eye and in grey", (_, a, b) => {
    expect(difference(a, b)).toBeGreaterThanOrEqual(15);
    for (const see of Object.values(deficiencies)) {
      expect(difference(see(parse(a)!), see(parse(b)!))).toBeGreaterThanOrEqual(10);
    }
    expect(Math.abs(lightness(a) - lightness(b))).toBeGreaterThanOrEqual(15);
  });

  it("U7 blood poor and rich in oxygen differ by 20 or more in lightness", () => {
    expect(Math.abs(lightness(palette.poor) - lightness(palette.rich))).toBeGreaterThanOrEqual(20);
  });

  it("U6 text stands 4.5:1 from its plate, and all that carries meaning 3:1 from what it can lie on", () => {
    for (const ink of [palette.ink, palette.inkSoft, palette.caution, palette.pressure]) {
      for (const ground of [palette.plate, palette.stage, palette.stageDeep, palette.backdrop]) {
        expect(wcagContrast(ink, ground)).toBeGreaterThanOrEqual(4.5);
      }
    }
    const marks = [
      ...palette.origin,
      palette.poor,
      palette.rich,
      palette.dye,
      palette.clot,
      palette.wallEdge,
      palette.accent,
    ];
    for (const mark of marks) expect(wcagContrast(mark, palette.lumen)).toBeGreaterThanOrEqual(3);
    for (const line of [
      palette.pressure,
      palette.totalPressure,
      palette.wallEdge,
      palette.accent,
      palette.hair,
    ]) {
      expect(wcagContrast(line, palette.stage)).toBeGreaterThanOrEqual(3);
    }
    expect(wcagContrast(palette.onAccent, palette.accent)).toBeGreaterThanOrEqual(4.5);
  });

  it.each(["speed", "age"] as const)(
    "U6 tracers coloured by %s stand 3:1 from the lumen over their whole scale",
    (map) => {
      const [from, to] = LEGIBLE[name as "dark" | "light"];
      for (let i = 0; i <= 20; i++) {
        const colour = solid(mapColour(map, from + ((to - from) * i) / 20));
        expect(wcagContrast(colour, palette.lumen)).toBeGreaterThanOrEqual(3);
      }
    },
  );
});

describe("maps of measured fields", () => {
  // The published schemes as the scale package gives them; one-hue ones run light to dark there.
  const published: Record<MapName, (place: number) => string> = {
    speed: interpolateCividis,
    pressure: (place) => interpolateBlues(1 - place),
    loss: (place) => interpolateOranges(1 - place),
    age: (place) => interpolatePurples(1 - place),
  };

  it.each(Object.keys(MAPS) as MapName[])(
    "U22 %s: lightness rises throughout and steps are even to 10 %",
    (map) => {
      const knots = MAPS[map].map(solid);
      const steps = knots.slice(1).map((knot, i) => difference(knots[i]!, knot));
      const mean = steps.reduce((sum, step) => sum + step, 0) / steps.length;
      for (const step of steps) expect(Math.abs(step / mean - 1)).toBeLessThanOrEqual(0.1);
      for (let i = 1; i < knots.length; i++)
        expect(lightness(knots[i]!)).toBeGreaterThan(lightness(knots[i - 1]!));
    },
  );

  it.each(Object.keys(MAPS) as MapName[])("U22 %s: every colour lies on the published scheme", (map) => {
    const scheme = Array.from({ length: 1001 }, (_, i) => parse(published[map](i / 1000))!);
    for (const knot of MAPS[map]) {
      expect(Math.min(...scheme.map((colour) => difference(colour, solid(knot))))).toBeLessThan(0.5);
    }
  });
});
