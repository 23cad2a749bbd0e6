/** Heart, lungs and the veins around: quiet shapes whose size follows the model's volumes. */
import { Container, Graphics } from "pixi.js";
import { present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { PathwayGeometry, Point } from "../../sim/geometry/geometry.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import { bloodColour, CHAMBER_BLOOD, groundColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

export interface BackdropLayer {
  readonly view: Container;
  set(geometry: PathwayGeometry, circulation: Circulation | null, theme: Theme): void;
  /** `time` in s of blood time; a still shows mean volumes. */
  move(circulation: Circulation | null, time: number, still: boolean): void;
}

/** Outline -> the volume trace that it follows. */
const FOLLOWS: Readonly<Record<string, string>> = {
  leftLung: "lungLeft",
  rightLung: "lungRight",
  atrium: "atrium",
  ventricle: "ventricle",
};

/** How lungs are filled, and how much of its blood's colour the heart shows. */
export const LUNG = {
  dark: { color: "#2b2440", alpha: 0.42 },
  light: { color: "#f3dedb", alpha: 0.75 },
} as const;

export function backdropLayer(): BackdropLayer {
  const view = new Container();
  let shapes: { name: string; graphics: Graphics }[] = [];
  return {
    view,
    set(geometry, circulation, theme) {
      for (const { graphics } of shapes) graphics.destroy();
      shapes = geometry.backdrop.map(({ name, outline }) => {
        const graphics = new Graphics();
        draw(graphics, name, outline, circulation, theme);
        const [x, y] = centroid(outline);
        graphics.pivot.set(x, y);
        graphics.position.set(x, y);
        view.addChild(graphics);
        return { name, graphics };
      });
    },
    move(circulation, time, still) {
      for (const { name, graphics } of shapes) {
        const volume = circulation?.traces.volumes[FOLLOWS[name] ?? ""];
        const size = volume && !still ? valueAt(present(circulation).traces, volume, time) / mean(volume) : 1;
        // A volume seen as a silhouette: its width goes with the cube root.
        graphics.scale.set(Math.cbrt(Math.max(0.1, size)));
      }
    },
  };
}

function draw(
  ink: Graphics,
  name: string,
  outline: readonly Point[],
  circulation: Circulation | null,
  theme: Theme,
): void {
  const { colour } = theme;
  const dark = theme.name === "dark";
  const points = outline.flat();
  const { arterial, ivc, svc } = circulation?.saturations ?? { arterial: 75, ivc: 60, svc: 60 };
  const blood = (saturation: number, alpha: number) =>
    ink.poly(points).fill({ color: bloodColour(colour, saturation), alpha });
  if (name.endsWith("Lung")) {
    ink.poly(points).fill(LUNG[theme.name]);
    ink.poly(points, true).stroke({ width: 0.5, color: colour.backdropEdge, alpha: 0.9, join: "round" });
  } else if (name.endsWith("Vein")) {
    ink.poly(points).fill({ color: colour.lumen, alpha: 0.9 });
    blood(name.includes("Head") ? svc : ivc, dark ? 0.12 : 0.08);
    // A band's outline runs up one side and back down the other: its ends stay open.
    for (const side of [points.slice(0, points.length / 2), points.slice(points.length / 2)]) {
      ink.poly(side, false).stroke({ width: 1.6, color: colour.wall, alpha: 0.8, join: "round" });
    }
  } else {
    const muscle = name === "ventricle";
    ink.poly(points).fill({ color: colour.backdrop, alpha: 0.92 });
    ink.poly(points).fill({ color: groundColour(colour, arterial), alpha: CHAMBER_BLOOD[theme.name] });
    ink.poly(points, true).stroke({
      width: muscle ? 4 : 1.4,
      color: mix(groundColour(colour, arterial), colour.wall, dark ? 0.3 : 0.25),
      alpha: 0.95,
      alignment: 0.5,
      join: "round",
    });
  }
}

const centroid = (outline: readonly Point[]): Point => [
  outline.reduce((sum, [x]) => sum + x, 0) / outline.length,
  outline.reduce((sum, [, y]) => sum + y, 0) / outline.length,
];

const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;
