/** A standing figure drawn: skin, clothes, hair and face with a soft round. */
import type { Graphics } from "pixi.js";
import type { Tissue } from "../anatomy/tones.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { curve, type Spot, traceCurve } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { softShape } from "./soft-shape.ts";
import { type StandingFigure, standingFigure } from "./standing-figure.ts";

export interface FigurePlace {
  /** CSS px: the middle of the feet, the ground, the body's height */
  readonly x: number;
  readonly ground: number;
  readonly height: number;
}

/** Part of a figure's height by which its light keeps from its edge. */
const ROUND = 0.012;

const cloth = (body: string, dark: string, light: string): Tissue => ({
  shade: mix(body, dark, 0.18),
  body,
  light: mix(body, light, 0.3),
  edge: mix(body, dark, 0.5),
});
/** Clothes and hair, on both stages. */
const WORN = {
  dark: {
    shirt: cloth("#2f7f86", "#04181c", "#9fe0e0"),
    shorts: cloth("#44547c", "#0a1020", "#a9b8e0"),
    shoes: cloth("#8b93a8", "#141a28", "#dfe4f0"),
    hair: cloth("#7a5a48", "#1c120c", "#b08a70"),
  },
  light: {
    shirt: cloth("#7fc0c0", "#0c4a50", "#ffffff"),
    shorts: cloth("#7486b4", "#1a2850", "#dfe6f8"),
    shoes: cloth("#d8dbe4", "#3a4258", "#ffffff"),
    hair: cloth("#7a5540", "#2a160c", "#b58a6c"),
  },
} as const;

/** @param lit the body of the state on the stage */
export function drawFigure(
  ink: Graphics,
  years: number,
  { x, ground, height }: FigurePlace,
  lit: boolean,
  theme: Theme,
): void {
  const { colour, name } = theme;
  const bare = legTissue("skin", theme);
  const skin: Tissue =
    name === "dark" ? { shade: "#8a6458", body: "#b58a78", light: "#d8b09c", edge: "#4a302a" } : bare;
  const figure = standingFigure(years);
  const at = ([px, py]: Spot): Spot => [x + height * px, ground - height * py];
  ink.ellipse(x, ground, 0.13 * height, 0.022 * height);
  if (lit) ink.fill({ color: colour.accent, alpha: 0.75 });
  else ink.fill({ color: colour.hair, alpha: 0.22 });
  for (const { of, outline } of figure.parts)
    softShape(ink, outline.map(at), of === "skin" ? skin : WORN[name][of], {
      round: of === "hair" ? 0 : ROUND * height,
      width: 1.2,
    });
  drawFace(ink, figure, at, height, { line: mix(skin.edge, "#1c0f0a", 0.5), blush: colour.rich });
}

function drawFace(
  ink: Graphics,
  { lines, eyes, cheeks }: StandingFigure,
  at: (spot: Spot) => Spot,
  height: number,
  { line: tone, blush }: { readonly line: string; readonly blush: string },
): void {
  for (const [cx, cy, radius] of cheeks)
    ink.circle(...at([cx, cy]), radius * height).fill({ color: blush, alpha: 0.16 });
  for (const line of lines) {
    traceCurve(ink, curve(line.map(at), 1));
    ink.stroke({ color: tone, width: Math.max(0.8, height * 0.0042), cap: "round" });
  }
  for (const [ex, ey, radius] of eyes) ink.circle(...at([ex, ey]), radius * height).fill({ color: tone });
}
