/** Trachea and main bronchi behind heart and vessels. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { curve, placeOn, spots, traceCurve } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** Bronchi to the lobes, the left and the right main bronchus (the right one steeper and wider), and the trachea (common anatomy), with widths in plane units. */
const AIRWAYS = [
  { way: "644 354, 672 352, 694 336, 704 312", width: 9 },
  { way: "640 352, 664 376, 680 408, 686 440", width: 10 },
  { way: "388 380, 358 362, 340 340, 332 312", width: 10 },
  { way: "388 380, 366 404, 350 432, 340 460", width: 11 },
  { way: "376 396, 384 424, 384 446", width: 9 },
  { way: "500 306, 548 326, 596 336, 648 356", width: 18 },
  { way: "500 306, 462 330, 424 352, 384 384", width: 21 },
  { way: "506 34, 504 140, 501 230, 500 316", width: 29 },
].map(({ way, width }) => ({ line: curve(spots(way), 12), width }));

/** Plane units from one ring of cartilage to the next, and without rings at the ends of each line. */
const RINGS = 11;
const BARE = 24;
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
    for (const { line, width } of AIRWAYS) {
      traceCurve(ink, line);
      ink.stroke({ color, width: part * width, cap: "round", join: "round" });
    }
  for (const { line, width } of AIRWAYS) {
    const count = Math.floor((line.length - BARE) / RINGS);
    for (let k = 0; k < count; k++) {
      placeOn(line, (k + 0.5) * (RINGS / line.length), out);
      const [x, y, dx, dy] = [entryAt(out, 0), entryAt(out, 1), entryAt(out, 2), entryAt(out, 3)];
      const half = 0.46 * width;
      // Each bows towards the viewer.
      ink
        .moveTo(x - dy * half, y + dx * half)
        .quadraticCurveTo(x + dx * 5, y + dy * 5, x + dy * half, y - dx * half);
    }
  }
  ink.stroke({ color: mix(body, light, 0.3), width: 4.4, cap: "round", alpha: 0.8 });
}
