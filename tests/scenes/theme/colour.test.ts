import { readdirSync, readFileSync } from "node:fs";
import {
  type Rgb as CuloriRgb,
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  lab65,
  lch65,
  parse,
  wcagContrast,
  wcagLuminance,
} from "culori";
import {
  interpolateBlues,
  interpolateCividis,
  interpolateOranges,
  interpolatePurples,
} from "d3-scale-chromatic";
import { describe, expect, it } from "vitest";
import { inside } from "../../../src/scenes/anatomy/tones.ts";
import { beside } from "../../../src/scenes/layers/tint.ts";
import { bloodColour, DARK, groundColour, LIGHT, markColour } from "../../../src/scenes/theme/colour.ts";
import { lookOf } from "../../../src/scenes/theme/curve-look.ts";
import { LEGIBLE, MAPS, type MapName, mapColour } from "../../../src/scenes/theme/maps.ts";
import { darkTheme, lightTheme } from "../../../src/scenes/theme/theme.ts";

const difference = differenceCiede2000();
const lightness = (colour: string | CuloriRgb): number => lab65(colour)!.l;
/** Share of white that a projector's room adds to everything it shows (users.md section 7). */
const FLARE = 0.1;
const flared = (a: string | CuloriRgb, b: string | CuloriRgb): number => {
  const [dark, light] = [wcagLuminance(a), wcagLuminance(b)].sort((x, y) => x - y) as [number, number];
  return (light + FLARE + 0.05) / (dark + FLARE + 0.05);
};
const solid = ([r, g, b]: readonly [number, number, number]): CuloriRgb => ({ mode: "rgb", r, g, b });
// Machado, Oliveira & Fernandes 2009, severity 1.
const deficiencies = {
  protan: filterDeficiencyProt(1),
  deutan: filterDeficiencyDeuter(1),
  tritan: filterDeficiencyTrit(1),
};
const stages = { dark: DARK, light: LIGHT };

describe.each(Object.entries(stages))("colours on the %s stage", (name, palette) => {
  const theme = name === "dark" ? darkTheme(String) : lightTheme(String);
  const paled = (hex: string) => beside(hex, theme);
  const pairs = [
    ["upper and liver", palette.origin[0], palette.origin[1]],
    ["upper and legs", palette.origin[0], palette.origin[2]],
    ["liver and legs", palette.origin[1], palette.origin[2]],
    ["oxygen-poor and oxygen-rich", palette.poor, palette.rich],
    ["marks of poor and rich blood on their grounds", markColour(palette, 60), markColour(palette, 97)],
    ["undyed and dyed blood from the liver", paled(palette.origin[1]), palette.dye],
    ["undyed and dyed blood from the legs", paled(palette.origin[2]), palette.dye],
    ["undyed and dyed blood from above", paled(palette.origin[0]), palette.dye],
  ] as const;

  it.each(pairs)("U7 %s stay apart to every eye and in grey", (_, a, b) => {
    expect(difference(a, b)).toBeGreaterThanOrEqual(15);
    for (const see of Object.values(deficiencies)) {
      expect(difference(see(parse(a)!), see(parse(b)!))).toBeGreaterThanOrEqual(10);
    }
    expect(Math.abs(lightness(a) - lightness(b))).toBeGreaterThanOrEqual(15);
  });

  // What one scene draws side by side with one shape: curves, drops, rings. Each has a dash or a label of its own besides.
  const neighbours = [
    ["calf: muscle's pressure and blood out", palette.pressure, palette.origin[2]],
    ["calf: blood out and blood in", palette.origin[2], palette.origin[1]],
    ["exchange: water out and lymph", palette.pressure, palette.origin[2]],
    ["exchange: lymph and overflow", palette.origin[2], palette.origin[1]],
    ["growth, exercise: first and second state", lookOf("0", palette).colour, lookOf("1", palette).colour],
    ["growth, exercise: first and third state", lookOf("0", palette).colour, lookOf("2", palette).colour],
    ["growth, exercise: second and third state", lookOf("1", palette).colour, lookOf("2", palette).colour],
    ["growth: tube and vein", palette.wallEdge, palette.poor],
    ["focus and wall", palette.accent, palette.wall],
    ["clot and blood", palette.clot, palette.poor],
  ] as const;

  it.each(neighbours)("U7 %s stay apart to every eye", (_, a, b) => {
    expect(difference(a, b)).toBeGreaterThanOrEqual(15);
    for (const see of Object.values(deficiencies))
      expect(difference(see(parse(a)!), see(parse(b)!))).toBeGreaterThanOrEqual(10);
  });

  it("blood of a vein reads as blue at every saturation that veins have, and mixed blood is between", () => {
    const hue = (saturation: number) => lch65(bloodColour(palette, saturation))!.h!;
    for (let saturation = 50; saturation <= 76; saturation++) {
      expect(hue(saturation)).toBeGreaterThan(270);
      expect(hue(saturation)).toBeLessThan(312);
    }
    const [vein, mixed, artery] = [70, 85, 97].map((each) => bloodColour(palette, each)) as [
      string,
      string,
      string,
    ];
    expect(difference(vein, mixed)).toBeGreaterThan(10);
    expect(difference(mixed, artery)).toBeGreaterThan(10);
  });

  it("U6 marks of blood have a contrast of 3:1 to their vessel, flare included", () => {
    for (let saturation = 50; saturation <= 100; saturation += 2) {
      const [mark, ground] = [markColour(palette, saturation), groundColour(palette, saturation)];
      expect(wcagContrast(mark, ground)).toBeGreaterThanOrEqual(3);
      expect(flared(mark, ground)).toBeGreaterThanOrEqual(3);
    }
  });

  it("U7 blood poor and rich in oxygen differ by 20 or more in lightness", () => {
    expect(Math.abs(lightness(palette.poor) - lightness(palette.rich))).toBeGreaterThanOrEqual(20);
  });

  it("U6 text has a contrast of 4.5:1 to its plate, and everything that carries meaning 3:1 to what can be behind it", () => {
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
    for (const mark of marks) {
      expect(wcagContrast(mark, palette.lumen)).toBeGreaterThanOrEqual(3);
      expect(flared(mark, palette.lumen)).toBeGreaterThanOrEqual(3);
    }
    for (const line of [
      palette.pressure,
      palette.totalPressure,
      palette.wallEdge,
      palette.accent,
      palette.hair,
    ]) {
      expect(wcagContrast(line, palette.stage)).toBeGreaterThanOrEqual(3);
      expect(flared(line, palette.stage)).toBeGreaterThanOrEqual(3);
    }
    // In a hall nothing is under 24 px: large text.
    for (const ink of [palette.ink, palette.inkSoft, palette.caution, palette.pressure])
      expect(flared(ink, palette.plate)).toBeGreaterThanOrEqual(3);
    expect(wcagContrast(palette.onAccent, palette.accent)).toBeGreaterThanOrEqual(4.5);
  });

  it("U6 the inside of an opened vessel leaves marks of every origin and of dye and clots a contrast of 3:1", () => {
    const { body, light } = inside({ name: name as "dark" | "light" });
    for (const mark of [...palette.origin, palette.poor, palette.rich, palette.dye, palette.clot])
      for (const ground of [body, light]) expect(wcagContrast(mark, ground)).toBeGreaterThanOrEqual(3);
    const [from, to] = LEGIBLE[name as "dark" | "light"];
    for (const map of ["speed", "age"] as const)
      for (let i = 0; i <= 20; i++)
        expect(
          wcagContrast(solid(mapColour(map, from + ((to - from) * i) / 20)), body),
        ).toBeGreaterThanOrEqual(2.9);
  });

  it.each(["speed", "age"] as const)(
    "U6 tracers coloured by %s have a contrast of 3:1 to the lumen over their whole scale",
    (map) => {
      const [from, to] = LEGIBLE[name as "dark" | "light"];
      for (let i = 0; i <= 20; i++) {
        const colour = solid(mapColour(map, from + ((to - from) * i) / 20));
        expect(wcagContrast(colour, palette.lumen)).toBeGreaterThanOrEqual(3);
        expect(flared(colour, palette.lumen)).toBeGreaterThanOrEqual(3);
      }
    },
  );
});

it("an origin keeps its hue from one stage to the other, and none is a white or grey that has no hue", () => {
  DARK.origin.forEach((colour, index) => {
    const [dark, light] = [lch65(colour)!, lch65(LIGHT.origin[index]!)!];
    for (const { c } of [dark, light]) expect(c).toBeGreaterThan(9);
    // No origin lies near 0 degrees, where hues would have to be compared around the circle.
    expect(Math.abs(dark.h! - light.h!)).toBeLessThanOrEqual(10);
  });
});

it("U22 no rainbow: the page's own files name none of the maps that are refused", () => {
  const named = readdirSync("src/scenes", { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .filter((name) =>
      /interpolate(Rainbow|Turbo|Sinebow)|\b(jet|turbo|hsv)\b|mode: "hs[lv]"/i.test(
        readFileSync(`src/scenes/${name}`, "utf8"),
      ),
    );
  expect(named).toEqual([]);
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
