// @vitest-environment happy-dom
import { differenceCiede2000, lch65, wcagContrast } from "culori";
import { describe, expect, it } from "vitest";
import { paintTube } from "../../../src/scenes/anatomy/paint-tube.ts";
import type { Ink } from "../../../src/scenes/anatomy/painted-sheet.ts";
import { hollow, opened, roundOf } from "../../../src/scenes/anatomy/tones.ts";
import { rgb } from "../../../src/scenes/theme/colour.ts";
import { darkTheme, lightTheme } from "../../../src/scenes/theme/theme.ts";

const difference = differenceCiede2000();
const SATURATIONS = Array.from({ length: 22 }, (_, i) => 55 + 2 * i);

interface Filled {
  readonly colour: string;
  readonly area: number;
}

/** What a straight vessel is filled with, one over the other, and how large each of these is. */
function filled(tones: Parameters<typeof paintTube>[2]): readonly Filled[] {
  const fills: Filled[] = [];
  let points: [number, number][] = [];
  const ink = {
    fillStyle: "",
    beginPath() {
      points = [];
    },
    moveTo: (x: number, y: number) => points.push([x, y]),
    lineTo: (x: number, y: number) => points.push([x, y]),
    closePath() {},
    fill() {
      const area = points.reduce((sum, [x, y], i) => {
        const [nextX, nextY] = points[(i + 1) % points.length]!;
        return sum + (x * nextY - nextX * y) / 2;
      }, 0);
      fills.push({ colour: this.fillStyle, area: Math.abs(area) });
    },
  };
  paintTube(
    ink as unknown as Ink,
    {
      name: "vein",
      line: [
        [0, 0],
        [10, 0],
        [20, 0],
      ],
      from: 8,
      to: 8,
    },
    tones,
    1,
  );
  return fills;
}

/** Mean colour of what is seen of its blood, wall left out. */
function middleTone(tones: Parameters<typeof paintTube>[2]): string {
  const blood = filled(tones).slice(tones.cut?.length ?? 1);
  const seen = blood.map(({ colour, area }, i) => ({ colour, area: area - (blood[i + 1]?.area ?? 0) }));
  const all = seen.reduce((sum, { area }) => sum + area, 0);
  const parts = [0, 1, 2].map((k) =>
    seen.reduce((sum, { colour, area }) => sum + (rgb(colour)[k]! * area) / all, 0),
  );
  return `#${parts
    .map((part) =>
      Math.round(255 * part)
        .toString(16)
        .padStart(2, "0"),
    )
    .join("")}`;
}

const apart = (a: number, b: number) => Math.abs(((a - b + 540) % 360) - 180);

describe.each([darkTheme(String), lightTheme(String)])("vessels on the $name stage", (theme) => {
  const bar = (saturation: number) => roundOf(saturation, theme).body;
  const tones = { closed: roundOf, opened: hollow };

  it("a closed vessel's middle tone is the bar's colour for its blood", () => {
    for (const saturation of SATURATIONS)
      expect(
        difference(middleTone(roundOf(saturation, theme)), bar(saturation)),
        `${saturation}`,
      ).toBeLessThan(6);
  });

  it("a closed vessel's tones leave the bar's hue and depth no further than its shading needs", () => {
    for (const saturation of SATURATIONS) {
      const { edge, light } = roundOf(saturation, theme);
      for (const tone of [edge, light]) {
        expect(difference(tone, bar(saturation)), `${saturation}`).toBeLessThan(20);
        expect(apart(lch65(tone)!.h!, lch65(bar(saturation))!.h!), `${saturation}`).toBeLessThan(16);
      }
    }
  });

  it("an opened vessel has the bar's hue, paler or deeper", () => {
    for (const saturation of SATURATIONS) {
      const tone = middleTone(hollow(saturation, theme));
      expect(apart(lch65(tone)!.h!, lch65(bar(saturation))!.h!), `${saturation}`).toBeLessThan(12);
      expect(lch65(tone)!.c!, `${saturation}`).toBeGreaterThan(0.25 * lch65(bar(saturation))!.c!);
    }
  });

  it.each(Object.keys(tones) as (keyof typeof tones)[])("%s vessels differ as the bar does", (kind) => {
    const tone = (saturation: number) => middleTone(tones[kind](saturation, theme));
    for (const [a, b] of [
      [58, 78],
      [66, 84],
      [76, 90],
      [84, 97],
    ] as const) {
      expect(difference(tone(a), tone(b)), `${a} and ${b}`).toBeGreaterThan(3.5);
      if (kind === "closed")
        expect(difference(tone(a), bar(a)), `${a}`).toBeLessThan(difference(tone(a), bar(b)));
    }
  });

  it("marks of every origin stand out 3:1 in an opened vessel, whatever its blood", () => {
    const { origin, dye, clot } = theme.colour;
    for (const saturation of SATURATIONS) {
      const { body, light } = opened(roundOf(saturation, theme), theme);
      for (const mark of [...origin, dye, clot])
        for (const ground of [body, light])
          expect(wcagContrast(mark, ground), `${mark} at ${saturation}`).toBeGreaterThanOrEqual(3);
    }
  });
});
