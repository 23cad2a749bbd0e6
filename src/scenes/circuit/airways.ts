/** Larynx, trachea and bronchi behind heart and vessels. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { curve, placeOn, spots, traceClosed } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/**
 * From the back to the front, with widths at both ends in plane units: bronchi of the lobes, main bronchi, trachea. It divides behind the
 * aorta's arch; the right bronchus is steeper and wider (common anatomy). The upper lobes' bronchi lie behind the vessels of the hilum.
 */
const AIRWAYS = [
  { way: "640 346, 664 374, 680 410, 688 446", widths: [12, 5] },
  { way: "384 354, 364 388, 350 428, 338 466", widths: [14, 5] },
  { way: "378 366, 388 396, 390 436", widths: [9, 4] },
  { way: "500 244, 530 282, 580 318, 650 350", widths: [20, 15] },
  { way: "500 244, 474 272, 432 312, 380 358", widths: [23, 16] },
  { way: "500 124, 500 190, 500 250", widths: [29, 27] },
].map(({ way, widths }) => ({ line: curve(spots(way), 6), widths }));

/** Thyroid cartilage with its notch, over the cricoid's ring. */
const THYROID = spots(
  "500 94, 506 85, 516 80, 519 96, 514 112, 506 119, 494 119, 486 112, 481 96, 484 80, 494 85",
);

/** Plane units from one ring of cartilage to the next. */
const RINGS = 11;
const out = new Float64Array(4);

export function drawAirways(ink: Graphics, theme: Theme): void {
  const { shade, body, light, edge } = legTissue("tendon", theme);
  const wall = mix(shade, edge, 0.35);
  ink.clear();
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
