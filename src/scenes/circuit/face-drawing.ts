/** The lower face, behind which the neck's vessels run up to the skull's base. */

import { entryAt } from "../../sim/checked/present.ts";
import type { Brush } from "../drawing/brush.ts";
import { curve, type Spot, traceCurve } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import { FACE, FEATURES, HEAD } from "./figure-shape.ts";
import { skinOf } from "./paint-figure.ts";

/** How much of the neck's vessels the face hides. */
const FACE_COVER = 0.66;
const LAYERS = 12;

/** @param close heart and lungs fill the picture, without it */
export function drawFace(ink: Brush, close: boolean, theme: Theme): void {
  if (close) return;
  const { body, edge } = skinOf(theme);
  const isFace = ([, y]: Spot) => y > FACE.top && y < FACE.bottom;
  const { x, y } = curve(HEAD, 3);
  const rim = Array.from(x, (each, i): Spot => [each, entryAt(y, i)]).filter(isFace);
  // Each layer begins lower than the one before it: no seam shows.
  for (let k = 0; k < LAYERS; k++) {
    const from = FACE.top + ((FACE.full - FACE.top) * k) / LAYERS;
    ink
      .poly(rim.filter(([, y]) => y > from).flat(), true)
      .fill({ color: body, alpha: 1 - (1 - FACE_COVER) ** (1 / LAYERS) });
  }
  for (const line of FEATURES.filter((each) => each.every(isFace))) {
    traceCurve(ink, curve(line));
    ink.stroke({ color: edge, width: 2, alpha: 0.6 });
  }
}
