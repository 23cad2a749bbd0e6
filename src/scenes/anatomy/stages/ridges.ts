/** Ridges of muscle on the inside of a right atrium. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import { type Ink, strokes } from "../painted-sheet.ts";
import { smoothLine } from "../placing.ts";
import { tissue } from "../tones.ts";

/** It throws its shadow away from the light. @param width mm of a 5-year-old */
export function paintRidge(
  ink: Ink,
  through: readonly Point[],
  width: number,
  size: number,
  theme: Theme,
): void {
  const look = tissue("atrium", theme);
  const course = smoothLine(through);
  const away = width * size;
  ink.globalAlpha = 0.45;
  strokes(
    ink,
    course.map(([x, y]): Point => [x + 0.35 * away, y - 0.45 * away]),
    size,
    [[width, look.shade]],
  );
  ink.globalAlpha = 1;
  strokes(ink, course, size, [
    [width, mix(look.shade, look.edge, 0.25)],
    [0.72 * width, mix(look.body, look.light, 0.35)],
    [0.28 * width, look.light],
  ]);
}
