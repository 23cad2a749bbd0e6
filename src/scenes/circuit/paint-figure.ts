/** The figure: skin with a soft round, faint features, and how a part fades out below. */
import type { Point } from "../../sim/geometry/geometry.ts";
import { paintOrgan } from "../anatomy/paint-organ.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import type { Tissue } from "../anatomy/tones.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { curve, type Spot, spotsOf } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { EARS, FEATURES, HEAD } from "./figure-shape.ts";
import type { Proportions } from "./proportions.ts";

/** Part of the skin's own colour, so that the body stays behind its vessels. */
const SKIN = { dark: 0.55, light: 0.85 } as const;

/** A smooth line through spots of the plane, sampled, y up as sheets are painted. */
export const upright = (points: readonly Spot[]): Point[] =>
  spotsOf(curve(points, 3)).map(([x, y]): Point => [x, -y]);

/** A tissue as it looks through what lies before it. */
export const muted = (tissue: Tissue, ground: string, own: number): Tissue => ({
  shade: mix(ground, tissue.shade, own),
  body: mix(ground, tissue.body, own),
  light: mix(ground, tissue.light, own),
  edge: mix(ground, tissue.edge, own),
});

export const skinOf = (theme: Theme): Tissue =>
  muted(legTissue("skin", theme), theme.colour.stage, SKIN[theme.name]);

export function paintFigure(ink: Ink, { carry, figure }: Proportions, theme: Theme): void {
  const skin = skinOf(theme);
  for (const ear of EARS) paintOrgan(ink, upright(ear.map(carry)), skin, { depth: 8, edge: 2.4 });
  paintOrgan(ink, upright(figure), skin, { depth: 26, edge: 2.6 });
  paintOrgan(ink, upright(HEAD.map(carry)), skin, { depth: 30, edge: 2.4 });
  ink.globalAlpha = 0.6;
  ink.lineWidth = 2;
  ink.strokeStyle = skin.edge;
  for (const line of FEATURES) {
    trace(ink, upright(line.map(carry)));
    ink.stroke();
  }
  ink.globalAlpha = 1;
}

/** Wipes out what lies below, from one height of the plane to another. */
export function fadeDown(ink: Ink, { from, to }: { readonly from: number; readonly to: number }): void {
  const fall = ink.createLinearGradient(0, -from, 0, -to);
  fall.addColorStop(0, "rgba(0,0,0,0)");
  fall.addColorStop(1, "rgba(0,0,0,1)");
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  ink.fillStyle = fall;
  ink.fillRect(0, -to - 200, 1000, to + 200 - from);
  ink.restore();
}
