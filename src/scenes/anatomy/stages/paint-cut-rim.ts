/** An atrium around a tunnel, opened from the front: its wall is cut all around, as thick as the free wall that the tunnel keeps. */
import type { Theme } from "../../theme/theme.ts";
import type { HeartShape } from "../heart-shape.ts";
import { wallOf } from "../paint-heart.ts";
import { laidOver, scratch } from "../paint-tube.ts";
import { boundsOf, type Ink, trace } from "../painted-sheet.ts";
import { tissue } from "../tones.ts";
import { litAcross, paintCutMuscle } from "./cut-muscle.ts";

/** mm of a 5-year-old's heart */
const THICK = 2.6;

export function paintCutRim(ink: Ink, heart: HeartShape, theme: Theme): void {
  const { atrium, size } = heart;
  const bounds = boundsOf([atrium], 1.5 * THICK * size);
  const [left, bottom, right, top] = bounds;
  const own = scratch(ink, bounds);
  const lit = litAcross(own, [left, top], [right, bottom], theme);
  const cuts = wallOf(heart).map((at) => ({ at, thick: THICK * size, sleeve: 0 }));
  paintCutMuscle(own, cuts, size, lit, tissue("atrium", theme));
  own.globalCompositeOperation = "destination-out";
  trace(own, atrium, true);
  own.fill();
  laidOver(ink, own, bounds);
}
