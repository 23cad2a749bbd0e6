/** The closed heart from outside: muscle, the small right chamber on it, fat in the grooves and the coronary arteries that run there. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import { paintOrgan } from "./paint-organ.ts";
import { paintTube } from "./paint-tube.ts";
import { type Ink, strokes, trace } from "./painted-sheet.ts";
import { smoothLine } from "./placing.ts";
import { type Round, tissue } from "./tones.ts";

/** Along from the base, across towards the patient's right: what tricuspid atresia leaves of the right ventricle. */
const RIGHT_CHAMBER: readonly Point[] = [
  [-6, 20.4],
  [-6, 25.4],
  [-1, 29.6],
  [8, 30.4],
  [17, 27.6],
  [25, 22.8],
  [29, 19],
  [20, 20.6],
  [8, 21.8],
];
/** Right coronary artery in its groove; anterior interventricular artery beside the small chamber with branches to either side; a branch of the circumflex. */
const ARTERIES: readonly (readonly [width: number, ...course: Point[]])[] = [
  [1.7, [-7, 16], [-9, 20], [-8.6, 24.6], [-5.4, 29], [1.6, 32]],
  [0.8, [-5.6, 28.6], [0, 26.6], [9, 26.2], [15, 24.4]],
  [1.7, [-1, 18.6], [4, 21.6], [12, 22.4], [21, 20.6], [31, 16.4], [39, 10], [44, 2.6]],
  [0.8, [10, 22.4], [14, 25], [18, 25.4]],
  [0.8, [31.6, 16], [36, 11.4], [40.4, 7.6]],
  [1.2, [-4, -20.2], [3, -23], [12, -24], [22, -22], [31, -17.4]],
  [0.7, [38.6, -10.4], [42.6, -5], [44.4, -0.4]],
];
/** Fat in the grooves. */
const FAT: readonly (readonly [width: number, ...course: Point[]])[] = [
  [4.4, [-8, 18], [-9, 22], [-6.6, 28], [0, 31.6]],
  [3, [-2, 19.4], [8, 21.6], [20, 20.8], [33, 15], [42, 6]],
  [3.4, [-6, -19], [-1, -22], [4, -23.4]],
];

/** In the ventricle's own lengths. */
export function paintOutside(ink: Ink, outside: readonly Point[], arterial: Round, theme: Theme): void {
  const look = tissue("muscle", theme);
  const fat = tissue("sac", theme);
  paintOrgan(ink, outside, look, { depth: 5, edge: 0.6 });
  ink.save();
  trace(ink, outside, true);
  ink.clip();
  paintOrgan(ink, closedOutline(RIGHT_CHAMBER), { ...look, shade: look.body }, { depth: 3 });
  for (const [width, ...course] of FAT)
    strokes(ink, smoothLine(course), width, [
      [1, fat.shade],
      [0.7, fat.body],
      [0.3, fat.light],
    ]);
  ink.restore();
  for (const [width, ...course] of ARTERIES)
    paintTube(ink, { name: "", line: smoothLine(course), from: width, to: 0.4 * width }, arterial, 0.3);
}

/** In the left groove, cut across: fat between atrium and ventricle, and in it the circumflex artery. */
export function paintGroove(ink: Ink, arterial: Round, theme: Theme): void {
  const fat = tissue("sac", theme);
  trace(
    ink,
    closedOutline([
      [-0.6, -16],
      [0.4, -20],
      [-2.6, -21.4],
      [-4.4, -18.4],
    ]),
    true,
  );
  ink.fillStyle = fat.body;
  ink.strokeStyle = fat.edge;
  ink.lineWidth = 0.4;
  ink.fill();
  ink.stroke();
  const artery: readonly Point[] = [
    [-2.2, -18.8],
    [-2, -18.8],
  ];
  strokes(ink, artery, 1, [
    [2, arterial.wall],
    [1.3, arterial.light],
  ]);
}
