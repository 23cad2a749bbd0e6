/** A standing figure of an age drawn: skin with a soft round, on its shadow. */
import type { Graphics } from "pixi.js";
import { legTissue } from "../calf/leg-tones.ts";
import { muted } from "../circuit/paint-figure.ts";
import { curve, type Spot, traceCurve } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { grownFigure } from "./grown-figure.ts";
import { softShape } from "./soft-shape.ts";

export interface FigurePlace {
  /** CSS px: the middle of the feet, the ground, the body's height */
  readonly x: number;
  readonly ground: number;
  readonly height: number;
}

/** Part of a figure's height by which its light keeps from its edge, and CSS px of height from which a face can be seen. */
const ROUND = 0.012;
const FACED = 110;

/** What is mixed with the skin's own colour, and how much of that is left: no organs lie on it here. */
const LIT = { dark: { with: "#d8b09c", own: 0.72 }, light: { with: "#d9a78f", own: 0.8 } } as const;

/** @param lit the body of the state on the stage */
export function drawFigure(
  ink: Graphics,
  years: number,
  { x, ground, height }: FigurePlace,
  lit: boolean,
  theme: Theme,
): void {
  const { colour } = theme;
  const skin = muted(legTissue("skin", theme), LIT[theme.name].with, LIT[theme.name].own);
  const { parts, lines } = grownFigure(years);
  const at = ([px, py]: Spot): Spot => [x + height * px, ground - height * py];
  ink.ellipse(x, ground, 0.15 * height, 0.022 * height);
  if (lit) ink.fill({ color: colour.accent, alpha: 0.75 });
  else ink.fill({ color: colour.hair, alpha: 0.22 });
  const look = { round: ROUND * height, width: Math.min(1.4, Math.max(0.8, 0.006 * height)) };
  for (const outline of parts) softShape(ink, outline.map(at), skin, look);
  if (height < FACED) return;
  for (const line of lines) {
    traceCurve(ink, curve(line.map(at), 1.5));
    ink.stroke({ color: skin.edge, width: look.width, alpha: 0.6, cap: "round" });
  }
}
