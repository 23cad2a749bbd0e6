/** The ventricle's outflow and the aorta's root as one cutaway: sinuses, and one cut edge that goes on into the ventricle's wall. */
import type { Point } from "../../sim/geometry/geometry.ts";
import { mix } from "../theme/colour.ts";
import { inRoot } from "./heart-shape.ts";
import { laidOver, scratch } from "./paint-tube.ts";
import { boundsOf, eraseAlong, type Ink, strokes, trace } from "./painted-sheet.ts";
import { CUT, edgeOf, halfAt, OPENED, type Place, placed, rimOf } from "./root-shape.ts";
import type { Round } from "./tones.ts";

interface Root extends Place {
  readonly tones: Round;
}

/** Where the two sinuses in front give off the coronary arteries. */
const OSTIUM = 6.4;

/** The edge along which the root is cut, up one side, over the front and down the other. */
const cutEdge = (half: number): readonly Point[] => [
  ...edgeOf(half, 1, CUT),
  ...rimOf(half, CUT).slice(1, -1),
  ...[...edgeOf(half, -1, CUT)].reverse(),
];

/** Takes away the front of the closed vessel over the root. */
export function cutOpen(ink: Ink, root: Place): void {
  const reach = root.half + 6;
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  const below: readonly Point[] = [
    [-reach, OPENED],
    [-reach, -14],
    [reach, -14],
    [reach, OPENED],
  ];
  trace(ink, placed(root, [...rimOf(root.half, CUT), ...below]), true);
  ink.fill();
  ink.restore();
}

export function paintRoot(ink: Ink, root: Root): void {
  const { half, tones, heart } = root;
  const inside = placed(root, [...edgeOf(half, 1), ...rimOf(half), ...[...edgeOf(half, -1)].reverse()]);
  const bounds = boundsOf([inside], 1);
  const own = scratch(ink, bounds);
  paintBack(own, root, inside);
  laidOver(ink, own, bounds);
  // From the ring it goes on into muscle on one side and into the inlet's valve on the other.
  strokes(ink, placed(root, cutEdge(half)), heart.size, [
    [3 * CUT, tones.wall],
    [2 * CUT, tones.light],
  ]);
}

/** The back wall under the blood: it clears into the outflow below, and turns away towards both sides. */
function paintBack(ink: Ink, root: Root, inside: readonly Point[]): void {
  const { tones, heart } = root;
  trace(ink, inside, true);
  ink.fillStyle = mix(tones.body, tones.light, 0.45);
  ink.fill();
  ink.save();
  ink.clip();
  ink.strokeStyle = tones.edge;
  ink.globalAlpha = 0.1;
  for (let k = 1; k <= 8; k++) {
    ink.lineWidth = 0.85 * k * heart.size;
    ink.stroke();
  }
  for (const u of [-0.72, 0.72])
    strokes(
      ink,
      placed(root, [
        [u * halfAt(root.half, OSTIUM), OSTIUM],
        [0.97 * u * halfAt(root.half, OSTIUM), OSTIUM + 0.3],
      ]),
      heart.size,
      [
        [2.2, tones.light],
        [1.4, tones.wall],
      ],
    );
  // The cut edge's shadow.
  trace(ink, placed(root, rimOf(root.half)));
  ink.strokeStyle = tones.wall;
  ink.globalAlpha = 0.12;
  for (let k = 1; k <= 4; k++) {
    ink.lineWidth = 2.2 * k * heart.size;
    ink.stroke();
  }
  ink.restore();
  trace(ink, inside, true);
  eraseAlong(ink, heart.at(...inRoot(0, 1.6)), heart.at(...inRoot(0, -3)));
}
