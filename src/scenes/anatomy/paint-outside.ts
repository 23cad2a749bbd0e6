/** The closed heart from outside: muscle, the rudimentary right ventricle on it, fat in the grooves and the coronary arteries that run there. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import type { HeartShape } from "./heart-shape.ts";
import { paintOrgan } from "./paint-organ.ts";
import { paintTube } from "./paint-tube.ts";
import { type Ink, strokes, trace } from "./painted-sheet.ts";
import { smoothLine } from "./placing.ts";
import { type Round, tissue } from "./tones.ts";

/** Along from the base, across towards the patient's right: what tricuspid atresia leaves of the right ventricle. */
const RIGHT_VENTRICLE: readonly Point[] = [
  [-6, 20],
  [-6, 25],
  [-1, 29],
  [8, 30],
  [17, 28],
  [25, 23],
  [29, 19],
  [20, 21],
  [8, 22],
];
/** Right coronary artery in its groove; anterior interventricular artery beside the rudimentary right ventricle with branches to either side; a branch of the circumflex. */
const ARTERIES: readonly (readonly [width: number, ...course: Point[]])[] = [
  [1.7, [-7, 16], [-8, 19.4], [-6.6, 23.4], [-2.6, 27], [3.4, 30]],
  [0.8, [-3, 26.7], [2, 26.6], [9, 26], [15, 24]],
  [1.7, [-1, 19], [4, 22], [12, 23], [21, 21], [31, 17], [39, 10], [44, 3]],
  [0.8, [10, 22], [14, 25], [18, 26]],
  [0.8, [31, 17], [36, 13], [40, 8]],
  [1.2, [-4, -20], [3, -23], [12, -24], [22, -22], [31, -17]],
];
/** Fat in the grooves. */
const FAT: readonly (readonly Point[])[] = [
  [
    [-8, 18],
    [-8, 21],
    [-5.6, 25],
    [0, 29],
  ],
  [
    [-2, 20],
    [8, 22],
    [20, 21],
    [30, 18],
  ],
  [
    [-6, -19],
    [-1, -22],
    [4, -23],
  ],
];

/** In the ventricle's own lengths. */
export function paintOutside(ink: Ink, { outside, reach }: HeartShape, arterial: Round, theme: Theme): void {
  const look = tissue("muscle", theme);
  const fat = tissue("fat", theme);
  // So narrow that the aorta's own light would be most of it.
  const narrow = { ...arterial, light: arterial.body, body: mix(arterial.body, arterial.edge, 0.6) };
  paintOrgan(ink, outside, look, { depth: 5, edge: 0.6 });
  ink.save();
  trace(ink, outside, true);
  ink.clip();
  paintOrgan(ink, closedOutline(RIGHT_VENTRICLE.map(reach)), { ...look, shade: look.body }, { depth: 3 });
  for (const course of FAT)
    strokes(ink, smoothLine(course.map(reach)), 3.4, [
      [1, fat.shade],
      [0.7, fat.body],
      [0.3, fat.light],
    ]);
  ink.restore();
  for (const [width, ...course] of ARTERIES)
    paintTube(
      ink,
      { name: "", line: smoothLine(course.map(reach)), from: width, to: 0.4 * width },
      narrow,
      0.3,
    );
}

/** Fat between the aorta's root and the wall in section. */
const AT_ROOT: readonly Point[] = [
  [-9, 18.4],
  [-5, 20],
  [-0.8, 20.4],
  [-0.6, 15],
  [-6, 14],
];

/** The fat that fills the left atrioventricular groove, cut across, along and across. */
const WEDGE: readonly Point[] = [
  [-1, -17.4],
  [-4.6, -18.2],
  [-5.4, -20.6],
  [-2.4, -22.2],
  [2.6, -23],
  [5.4, -21.8],
  [2, -19.6],
];

/** Fat in the grooves, cut across: around the aorta's root, and on the left, between atrium and ventricle, with the circumflex artery in it. */
export function paintGroove(ink: Ink, arterial: Round, theme: Theme): void {
  const fat = tissue("fat", theme);
  for (const outline of [closedOutline(WEDGE), AT_ROOT]) {
    trace(ink, outline, true);
    ink.fillStyle = fat.body;
    ink.fill();
    ink.lineWidth = 0.5;
    ink.strokeStyle = fat.edge;
    ink.stroke();
  }
  strokes(
    ink,
    [
      [-2.1, -20.1],
      [-1.9, -20.2],
    ],
    1,
    [
      [2.2, arterial.wall],
      [1.4, arterial.body],
    ],
  );
}
