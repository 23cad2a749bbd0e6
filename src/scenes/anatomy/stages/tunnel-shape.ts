/** Lines of a lateral tunnel whose front is cut away: a sheet of fabric that leaves the atrium's back wall, bulges into the atrium and comes forward to where it is cut, from the mouth of one vena cava to that of the other. */
import { lastOf } from "../../../sim/checked/present.ts";
import { line as lineOf } from "../../../sim/geometry/centreline.ts";
import type { Opening, Point } from "../../../sim/geometry/geometry.ts";
import { beside, type Graft } from "../graft-course.ts";

/** Steps along an edge. */
const STEPS = 60;
/** Of the tunnel's length: where the sheet ends at its cut edge. */
const [LOW, HIGH] = [0.01, 0.9];
/** How far across the back wall its foot is: 1 is the cut edge's side, -1 the free wall's; and how much nearer to that in its middle. */
const FOOT = 0.02;
const BOWED = 0.2;
/** mm of a 5-year-old: its thickness, drawn greater than it is, and by which its ends bulge beyond its cut edge, its middle twice as far. */
const FABRIC = 2.4;
const BULGES = 2.4;
/** Of the tunnel's width at its middle: by which its foot lies higher than its cut edge, and of that the outside where it turns from sight. It is seen a little from above. */
const RISES = 0.2;
const AROUND_EDGE = 0.35;

const bow = (along: number): number => Math.sin(Math.PI * along) ** 0.7;

const lineAlong = (at: (along: number) => Point): readonly Point[] =>
  Array.from({ length: STEPS + 1 }, (_, i) => at(i / STEPS));

/** Across the tunnel at a part of its half width, from below to above. @param beyond mm outside */
export const across = (graft: Graft, part: number, beyond = 0): readonly Point[] =>
  lineAlong((along) => beside(graft, along, part, beyond));

/** Its own length as a part of the tunnel's. */
const lengthOf = (along: number): number => LOW + (HIGH - LOW) * along;

/** A place on the sheet, by parts: `along` from below to above; `turn` -1 at its foot, 0 where it is cut, 1 where its outside turns from sight. */
export function onSheet(graft: Graft, size: number): (along: number, turn: number) => Point {
  const { run } = lineOf(graft.line);
  const rise = (RISES * (graft.widths[graft.widths.length >> 1] ?? 0)) / lastOf(run);
  return (along, turn) => {
    const at = lengthOf(along);
    const angle = (Math.abs(turn) * Math.PI) / 2;
    const [ahead, aside] = [Math.sin(angle), 1 - Math.cos(angle)];
    const outside = turn > 0;
    const [x, y] = beside(graft, at, 1, outside ? FABRIC * size : 0);
    const [farX, farY] = outside
      ? beside(graft, at + AROUND_EDGE * rise, 1, (FABRIC + BULGES * (1 + bow(along))) * size)
      : beside(graft, Math.min(1, at + rise), FOOT - BOWED * bow(along));
    const [across, up] = outside ? [ahead, aside] : [aside, ahead];
    return [x + across * (farX - x), y + up * (farY - y)];
  };
}

/** The face along which it is cut: its two edges, and the line between its layers. */
export const cutFaceOf = (graft: Graft, size: number): readonly (readonly Point[])[] =>
  [-0.1, 0.5 * FABRIC, FABRIC].map((beyond) =>
    lineAlong((along) => beside(graft, lengthOf(along), 1, beyond * size)),
  );

/** A round hole in it, seen aslant from its cut edge to both sides. @param more mm further out */
export function holeOf(hole: Opening, size: number, more = 0): readonly Point[] {
  const {
    centre: [x, y],
    normal: [nx, ny],
    width,
  } = hole;
  const half = width / 2 + more;
  return Array.from({ length: 49 }, (_, i): Point => {
    const turn = (Math.PI * i) / 24;
    const out = (FABRIC * size) / 2 + ASLANT * half * Math.sin(turn);
    const along = half * Math.cos(turn);
    return [x + out * nx - along * ny, y + out * ny + along * nx];
  });
}

/** Of its length along the sheet, its width across. */
const ASLANT = 0.9;

type Sheet = ReturnType<typeof onSheet>;

export const lengthwise = (sheet: Sheet, turn: number): readonly Point[] =>
  lineAlong((along) => sheet(along, turn));

/** Around it at a height. @param to side of its cut edge: -1 its inside, 1 its outside */
export const crosswise = (sheet: Sheet, along: number, to: -1 | 1): readonly Point[] =>
  Array.from({ length: 17 }, (_, i) => sheet(along, (to * i) / 16));

/** Inside (-1) or outside (1) of the sheet as a closed outline. */
export const faceOf = (sheet: Sheet, side: -1 | 1): readonly Point[] => [
  ...lengthwise(sheet, 0),
  ...crosswise(sheet, 1, side),
  ...[...lengthwise(sheet, side)].reverse(),
  ...[...crosswise(sheet, 0, side)].reverse(),
];

const THREADS = 9;
const AROUND = 36;

/** Threads of a face: along it, closer together where it turns away, and around it. */
export const weaveOf = (sheet: Sheet, side: -1 | 1): readonly (readonly Point[])[] => [
  ...Array.from({ length: THREADS }, (_, k) => lengthwise(sheet, (side * (k + 0.5)) / THREADS)),
  ...Array.from({ length: AROUND }, (_, k) => crosswise(sheet, (k + 0.5) / AROUND, side)),
];

/** Ridge of the back wall from which the pectinate muscles run on to the free wall (terminal crest). */
export const crest = (graft: Graft): readonly Point[] =>
  lineAlong((along) => beside(graft, along, -0.62 + 0.2 * bow(along)));
