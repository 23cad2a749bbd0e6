// @vitest-environment happy-dom
import { wcagContrast } from "culori";
import { describe, expect, it } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { tissue } from "../../src/scenes/anatomy/tones.ts";
import { DIM } from "../../src/scenes/circuit/circuit-pane.ts";
import { contextColour, contextLines } from "../../src/scenes/layers/context.ts";
import { drawnPlane, inBlood } from "../../src/scenes/layers/drawn-plane.ts";
import { veiled } from "../../src/scenes/layers/veil.ts";
import { bloodColour, CHAMBER_BLOOD, groundColour, mix } from "../../src/scenes/theme/colour.ts";
import { darkTheme, lightTheme } from "../../src/scenes/theme/theme.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { hasPlane, STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

const rest = { dark: "#16203c", light: "#ffffff" } as const;

describe.each([darkTheme(String), lightTheme(String)])("what the veil leaves in the $name theme", (theme) => {
  const { colour, name } = theme;
  const line = contextColour(theme);
  const heart = (saturation: number) =>
    mix(colour.backdrop, groundColour(colour, saturation), CHAMBER_BLOOD[name]);
  const grounds = [
    colour.stage,
    colour.stageDeep,
    rest[name],
    ...Object.values(tissue("lung", theme)).slice(0, 3),
    ...[70, 80, 90, 98].map(heart),
  ];

  it("outlines of heart, lungs and vessels have a contrast of 2:1 to every background that they have", () => {
    for (const ground of grounds)
      expect(wcagContrast(line, veiled(ground, theme)), ground).toBeGreaterThanOrEqual(2);
  });

  it("without them heart and lungs could not be distinguished from the background", () => {
    expect(wcagContrast(veiled(heart(90), theme), veiled(colour.stage, theme))).toBeLessThan(1.5);
    expect(wcagContrast(veiled(colour.backdropEdge, theme), veiled(colour.stage, theme))).toBeLessThan(2);
  });

  it("what is lit stands out more than they do", () => {
    const ground = veiled(colour.stage, theme);
    expect(wcagContrast(colour.accent, ground)).toBeGreaterThan(1.2 * wcagContrast(line, ground));
  });

  it("walls of vessels and chambers of the whole circulation have a contrast of 2:1 when they are dimmed", () => {
    for (const saturation of [55, 70, 85, 98])
      for (const share of [0.35, 0.45]) {
        const wall = mix(colour.wall, bloodColour(colour, saturation), share);
        expect(wcagContrast(mix(wall, colour.stage, DIM), colour.stage)).toBeGreaterThanOrEqual(2);
      }
  });
});

it.each(STAGES.filter(hasPlane))(
  "%s: outlines of heart and lungs are there, and none runs through blood",
  (stage) => {
    const geometry = pathwayGeometry({ ...START.request, stage })!;
    const plane = drawnPlane(geometry);
    const lines = contextLines(geometry, plane);
    for (const line of lines) for (const [x, y] of line) expect(inBlood(plane, x, y)).toBe(false);
    for (const { name, outline } of anatomyOf(geometry.chest).parts.filter(({ name }) =>
      /Lung|ventricle|aorta/.test(name),
    )) {
      const kept = outline.filter(([x, y]) =>
        lines.some((line) => line.some(([lx, ly]) => lx === x && ly === y)),
      );
      expect(kept.length / outline.length, name).toBeGreaterThan(0.3);
    }
  },
);
