/** The atrium of a heart that both great veins once entered: what is left of its septum, the mouths in its walls, and the sewn-over stump on its roof. */
import { lastOf } from "../../../sim/checked/present.ts";
import { closedOutline } from "../../../sim/geometry/centreline.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import { returning } from "../great-vessels.ts";
import { stitches } from "../paint-graft.ts";
import { paintOrgan } from "../paint-organ.ts";
import { type Ink, trace } from "../painted-sheet.ts";
import { placing, smoothLine } from "../placing.ts";
import { hollow, threadOf, tissue } from "../tones.ts";

/** It reaches behind the pathway or to its right. */
const isCommon = ({ frame }: Anatomy): boolean =>
  Math.min(...frame.atrium.map(([x]) => x)) < frame.heart - 8 * frame.heartScale;

/** What an excised septum leaves: a fold from the roof and one from the floor, x and y in the heart. */
const FOLDS: readonly (readonly Point[])[] = [
  [
    [-3.4, 16.6],
    [-0.4, 11],
    [3.4, 5.6],
    [3.6, 10.4],
    [3.6, 17.6],
  ],
  [
    [-2.6, -24],
    [1.4, -18.4],
    [4.4, -12.6],
    [5, -18.4],
    [5.6, -24],
  ],
];

export function paintWithin(ink: Ink, anatomy: Anatomy, theme: Theme): void {
  const { frame, heart } = anatomy;
  const { size } = heart;
  if (!isCommon(anatomy)) return;
  const look = tissue("atrium", theme);
  const { inHeart } = placing(frame);
  for (const vein of returning(anatomy)) paintMouth(ink, lastOf(vein.line), [3.2 * size, 2.7 * size], theme);
  if (!frame.lowerVein) return;
  ink.save();
  trace(ink, frame.atrium, true);
  ink.clip();
  for (const fold of FOLDS)
    paintOrgan(ink, closedOutline(fold.map((point) => inHeart(...point))), look, {
      depth: 2.4 * size,
      alpha: 0.8,
      edge: 0.45 * size,
    });
  ink.restore();
}

/** A mouth in the back wall, seen from within. */
function paintMouth(ink: Ink, [x, y]: Point, [wide, high]: Point, theme: Theme): void {
  const look = tissue("atrium", theme);
  ink.beginPath();
  ink.ellipse(x, y, wide, high, 0, 0, 2 * Math.PI);
  ink.fillStyle = look.shade;
  ink.fill();
  ink.lineWidth = 0.28 * high;
  ink.strokeStyle = look.light;
  ink.stroke();
}

/** The inferior vena cava's mouth in the floor: its rim, wider than the vein, and a fold before it. */
export function paintFloor(ink: Ink, { frame }: Anatomy, theme: Theme): void {
  if (!frame.lowerVein) return;
  const { scale: s, ivc, heartScale } = frame;
  const look = tissue("atrium", theme);
  const [x, y] = lastOf(frame.lowerVein);
  const [half, high] = [ivc.width / 2 + 0.4 * s, 2 * s];
  ink.beginPath();
  ink.ellipse(x, y, half, high, 0, 0, 2 * Math.PI);
  ink.fillStyle = hollow(theme).body;
  ink.fill();
  for (const [width, colour] of [
    [1.7, look.edge],
    [1.1, look.light],
  ] as const) {
    ink.beginPath();
    ink.ellipse(x, y, half + 0.5 * s, high, 0, 0, 2 * Math.PI);
    ink.lineWidth = width * s;
    ink.strokeStyle = colour;
    ink.stroke();
  }
  // On the roof the superior vena cava was cut off: its stump is sewn over.
  const roof = frame.atrium.reduce(
    (best, [px, py]) => (Math.abs(px) < 3 * s && py > best ? py : best),
    Number.NEGATIVE_INFINITY,
  );
  const dome = (across: number, up: number): Point => [across * s, roof + (up - 1.4) * s];
  const stump = closedOutline([
    dome(-5, -1),
    dome(-4.8, 3),
    dome(-3, 4.9),
    dome(0, 5.5),
    dome(3, 4.9),
    dome(4.8, 3),
    dome(5, -1),
  ]);
  paintOrgan(ink, stump, look, { depth: 2.6 * s, edge: 0.5 * s });
  const seam = smoothLine([dome(-3.4, 3.5), dome(0, 4.3), dome(3.4, 3.5)]);
  stitches(ink, seam, s * Math.min(1, heartScale), threadOf(theme));
}
