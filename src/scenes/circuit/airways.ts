/** Larynx, trachea and bronchi behind heart and vessels. */

import { entryAt } from "../../sim/checked/present.ts";
import { legTissue } from "../calf/leg-tones.ts";
import type { Brush } from "../drawing/brush.ts";
import { curve, placeOn, spots, traceClosed } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** Main bronchi and trachea, which divides behind the aorta's arch, with widths at both ends in plane units; the right one is steeper and wider (common anatomy). What lies beyond is hidden by the vessels of the hilum. */
const AIRWAYS = [
  { way: "500 244, 512 258, 528 270", widths: [20, 18] },
  { way: "500 244, 489 258, 474 270", widths: [23, 21] },
  { way: "500 124, 500 190, 500 250", widths: [29, 27] },
].map(({ way, widths }) => ({ line: curve(spots(way), 6), widths }));

/** Thyroid cartilage with its notch, over the cricoid's ring. */
const THYROID = spots(
  "500 94, 506 85, 516 80, 519 96, 514 112, 506 119, 494 119, 486 112, 481 96, 484 80, 494 85",
);

/** Plane units from one ring of cartilage to the next. */
const RINGS = 11;
const out = new Float64Array(4);

export function drawAirways(ink: Brush, theme: Theme): void {
  const { shade, body, light, edge } = legTissue("tendon", theme);
  const wall = mix(shade, edge, 0.35);
  for (const [part, color] of [
    [1.2, edge],
    [1.02, wall],
    [0.5, mix(wall, body, 0.3)],
  ] as const)
    for (const { line, widths } of AIRWAYS) {
      const last = line.x.length - 1;
      for (let i = 0; i < last; i++) {
        ink.moveTo(entryAt(line.x, i), entryAt(line.y, i));
        ink.lineTo(entryAt(line.x, i + 1), entryAt(line.y, i + 1));
        ink.stroke({ color, width: part * widthAt(widths, i / last), cap: "round" });
      }
    }
  for (const { line, widths } of AIRWAYS) {
    const count = Math.floor(line.length / RINGS);
    for (let k = 1; k < count; k++) {
      placeOn(line, k / count, out);
      const [x, y, dx, dy] = [entryAt(out, 0), entryAt(out, 1), entryAt(out, 2), entryAt(out, 3)];
      const width = widthAt(widths, k / count);
      const half = 0.46 * width;
      // Each bows towards the viewer.
      ink
        .moveTo(x - dy * half, y + dx * half)
        .quadraticCurveTo(x + dx * 0.2 * width, y + dy * 0.2 * width, x + dy * half, y - dx * half)
        .stroke({
          color: mix(body, light, 0.3),
          width: Math.min(4.4, 0.3 * width),
          cap: "round",
          alpha: 0.8,
        });
    }
  }
  traceClosed(ink, THYROID);
  ink.fill({ color: mix(body, shade, 0.5) }).stroke({ color: edge, width: 2.4 });
  ink.moveTo(500, 96).lineTo(500, 114).stroke({ color: light, width: 4, cap: "round" });
}

const widthAt = (widths: readonly number[], part: number): number =>
  entryAt(widths, 0) + (entryAt(widths, 1) - entryAt(widths, 0)) * part;
