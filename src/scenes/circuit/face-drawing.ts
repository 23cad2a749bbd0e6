/** The lower face, behind which the neck's vessels run up to the skull's base. */

import { entryAt } from "../../sim/checked/present.ts";
import type { Brush } from "../drawing/brush.ts";
import { curve, type Spot, traceCurve } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { FACE, FEATURES, HEAD } from "./figure-shape.ts";
import { skinOf } from "./paint-figure.ts";
import type { Proportions } from "./proportions.ts";

/** How much of the neck's vessels the face hides. */
const FACE_COVER = 0.66;
const LAYERS = 12;

export function drawFace(ink: Brush, { carry }: Proportions, theme: Theme): void {
  const { body, edge } = skinOf(theme);
  const levelOf = (y: number) => carry([500, y])[1];
  const [top, full] = [levelOf(FACE.top), levelOf(FACE.full)];
  const isFace = ([, y]: Spot) => y > top && y < FACE.bottom;
  const { x, y } = curve(HEAD.map(carry), 3);
  const rim = Array.from(x, (each, i): Spot => [each, entryAt(y, i)]).filter(isFace);
  // Each layer begins lower than the one before it: no seam shows.
  for (let k = 0; k < LAYERS; k++) {
    const from = top + ((full - top) * k) / LAYERS;
    ink
      .poly(rim.filter(([, y]) => y > from).flat(), true)
      .fill({ color: body, alpha: 1 - (1 - FACE_COVER) ** (1 / LAYERS) });
  }
  for (const line of FEATURES.map((each) => each.map(carry)).filter((each) => each.every(isFace))) {
    traceCurve(ink, curve(line));
    ink.stroke({ color: edge, width: 2, alpha: 0.6 });
  }
}
