/** What the staged operations leave of the normal heart: the small second chamber, the oversewn pulmonary trunk on it, and the right atrium's appendage. */

import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { HeartShape } from "./heart-shape.ts";
import { paintOrgan } from "./paint-organ.ts";
import { type Ink, trace } from "./painted-sheet.ts";
import { smoothLine } from "./placing.ts";
import { tissue } from "./tones.ts";

/** By the ventricle's own lengths: along from its base, across towards the patient's left. */
const CHAMBER: readonly Point[] = [
  [-1, 18],
  [2, 24.5],
  [10, 28.4],
  [19, 27.4],
  [25, 21.6],
  [18, 20.4],
  [8, 19.2],
];
const TRUNK: readonly Point[] = [
  [2, 17.4],
  [-5, 17],
  [-11.5, 17.4],
  [-14, 20.4],
  [-12.4, 24],
  [-5, 25.6],
  [3, 26.6],
];
const APPENDAGE: readonly Point[] = [
  [-33, 2.4],
  [-35.5, 7],
  [-33, 11.5],
  [-29, 12],
  [-26.4, 15],
  [-22.6, 13.4],
  [-20.6, 9],
  [-23, 4],
  [-27, 0],
];
/** On its border with the ventricle runs a coronary artery, which marks it off on the heart's surface (delimiting artery); a branch goes over it. */
const ARTERY: readonly (readonly Point[])[] = [
  [...CHAMBER.slice(4), ...CHAMBER.slice(0, 1)],
  [
    [12, 19.6],
    [14, 25],
  ],
];
/** Where the trunk's end is sewn over. */
const CLOSED: readonly [Point, Point] = [
  [-12.4, 18.2],
  [-11.2, 23.6],
];

export const remainsOutline = ({ at }: HeartShape): readonly Point[] =>
  [...CHAMBER, ...TRUNK, ...APPENDAGE].map((point) => at(...point));

export function paintRemains(ink: Ink, { at, size }: HeartShape, theme: Theme): void {
  const organ = (points: readonly Point[], kind: "atrium" | "muscle") => {
    const outline = closedOutline(
      points.map((point) => at(...point)),
      8,
    );
    paintOrgan(ink, outline, tissue(kind, theme), { depth: 3 * size, edge: 0.5 * size });
  };
  organ(APPENDAGE, "atrium");
  organ(TRUNK, "atrium");
  organ(CHAMBER, "muscle");
  const muscle = tissue("muscle", theme);
  for (const [width, colour] of [
    [1.7, muscle.shade],
    [1, muscle.edge],
  ] as const)
    for (const course of ARTERY) {
      trace(ink, smoothLine(course.map((point) => at(...point))));
      ink.lineWidth = width * size;
      ink.strokeStyle = colour;
      ink.stroke();
    }
  paintOversewn(ink, at, size, theme);
}

function paintOversewn(ink: Ink, at: HeartShape["at"], size: number, theme: Theme): void {
  const [[ax, ay], [bx, by]] = CLOSED;
  trace(ink, [at(ax, ay), at(bx, by)]);
  ink.lineWidth = 0.5 * size;
  ink.strokeStyle = tissue("atrium", theme).shade;
  ink.stroke();
  ink.strokeStyle = theme.name === "dark" ? "#57c7ff" : "#0a4f9e";
  for (let k = 0; k <= STITCHES; k++) {
    const part = k / STITCHES;
    const [x, y] = [ax + part * (bx - ax), ay + part * (by - ay)];
    trace(ink, [at(x - 1.1, y - 0.4), at(x + 1.1, y + 0.4)]);
    ink.stroke();
  }
}

const STITCHES = 4;
