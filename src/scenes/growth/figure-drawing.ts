/** A standing figure drawn: skin with a soft round, shorts, hair and face. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { curve, type Spot, traceCurve } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type StandingFigure, standingFigure } from "./standing-figure.ts";

export interface FigurePlace {
  /** CSS px: the middle of the feet, the ground, the body's height */
  readonly x: number;
  readonly ground: number;
  readonly height: number;
}

/** Parts of a figure's height by which its round is inset, from its edge inwards, and how much lighter each is. */
const ROUND = [0.004, 0.009, 0.014] as const;

/** @param lit the body of the state on the stage */
export function drawFigure(
  ink: Graphics,
  years: number,
  { x, ground, height }: FigurePlace,
  lit: boolean,
  theme: Theme,
): void {
  const { colour, name } = theme;
  const skin = legTissue("skin", theme);
  const figure = standingFigure(years);
  const at = ([px, py]: Spot): Spot => [x + height * px, ground - height * py];
  const cloth = mix(colour.stage, lit ? colour.accent : colour.hair, lit ? 0.75 : 0.5);
  const tones = {
    skin: { body: skin.shade, edge: lit ? colour.accent : mix(skin.edge, colour.ink, 0.15) },
    shorts: { body: cloth, edge: mix(cloth, colour.ink, 0.3) },
    hair: { body: name === "dark" ? "#7a6152" : "#6b4e3d", edge: name === "dark" ? "#4a382e" : "#4a3427" },
  } as const;
  for (const { of, outline } of figure.parts) {
    const { body, edge } = tones[of];
    closed(ink, outline.map(at));
    ink.fill({ color: body }).stroke({ color: edge, width: lit && of === "skin" ? 2.4 : 1.4, join: "round" });
    if (of !== "skin") continue;
    // Lit from the upper left.
    for (const inset of ROUND) {
      closed(
        ink,
        shrunk(outline, inset).map(([px, py]) => at([px - inset * 0.5, py + inset * 0.5])),
      );
      ink.fill({ color: mix(skin.body, skin.light, inset / 0.014), alpha: 0.5 });
    }
  }
  drawFace(ink, figure, at, height, theme);
}

function drawFace(
  ink: Graphics,
  { lines, eyes }: StandingFigure,
  at: (spot: Spot) => Spot,
  height: number,
  theme: Theme,
): void {
  const tone = mix(legTissue("skin", theme).edge, theme.colour.ink, 0.4);
  for (const line of lines) {
    traceCurve(ink, curve(line.map(at), 1));
    ink.stroke({ color: tone, width: Math.max(0.8, height * 0.0045), cap: "round" });
  }
  for (const [ex, ey, radius] of eyes) ink.circle(...at([ex, ey]), radius * height).fill({ color: tone });
}

function closed(ink: Graphics, outline: readonly Spot[]): void {
  const [first] = outline;
  if (!first) return;
  traceCurve(ink, curve([...outline, first], 2));
  ink.closePath();
}

/** Each point moved inwards by a width, along the outline's normal. */
function shrunk(outline: readonly Spot[], width: number): Spot[] {
  const n = outline.length;
  const around = (i: number): Spot => entryAt(outline, (i + n) % n);
  const area = outline.reduce((sum, [x, y], i) => {
    const [nx, ny] = around(i + 1);
    return sum + x * ny - nx * y;
  }, 0);
  return outline.map(([x, y], i): Spot => {
    const [[ax, ay], [bx, by]] = [around(i - 1), around(i + 1)];
    const step = (Math.sign(area) * width) / (Math.hypot(bx - ax, by - ay) || 1);
    return [x - step * (by - ay), y + step * (bx - ax)];
  });
}
