/** Lines of a lateral tunnel whose front is cut away: a baffle that stands on the back wall of the atrium like the half of a tube, from the mouth of one vena cava to that of the other. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import { beside, type Graft } from "../graft-course.ts";

/** Steps along an edge. */
const STEPS = 60;
/** mm of a 5-year-old by which the baffle's back half bulges into the atrium beyond its cut edge. */
const BULGES = 1.5;
/** How far across the back wall its foot is: 1 is the baffle's side, -1 the free wall's. */
const FOOT = -0.18;

const bow = (along: number): number => Math.sin(Math.PI * along) ** 0.7;
/** Soon after the mouth of a vena cava, which it goes around, it keeps to its place. */
const footed = (along: number): number => Math.sin(Math.PI * along) ** 0.3;

const lineAlong = (at: (along: number) => Point): readonly Point[] =>
  Array.from({ length: STEPS + 1 }, (_, i) => at(i / STEPS));

/** Across the tunnel at a part of its half width, from below to above. @param beyond mm outside */
export const across = (graft: Graft, part: number, beyond = 0): readonly Point[] =>
  lineAlong((along) => beside(graft, along, part, beyond));

/** Its foot on the back wall. */
export const lineBehind = (graft: Graft): readonly Point[] =>
  lineAlong((along) => beside(graft, along, 0.96 + (FOOT - 0.96) * footed(along)));

/** As far as its outside is seen beyond its cut edge. */
export const outsideOf = (graft: Graft, beyond: number, size: number): readonly Point[] =>
  lineAlong((along) => beside(graft, along, 1, beyond + BULGES * size * footed(along)));

/** The fabric's weave on its inside: threads along it, closer together where it turns away, and threads around it. */
export function weaveOf(graft: Graft): readonly (readonly Point[])[] {
  const at = (along: number, turn: number): Point => {
    const foot = 0.96 + (FOOT - 0.96) * footed(along);
    return beside(graft, along, foot + (1 - foot) * Math.sin(turn * (Math.PI / 2)));
  };
  const places = Array.from({ length: 13 }, (_, i) => i / 12);
  return [
    ...Array.from({ length: THREADS }, (_, k) => lineAlong((along) => at(along, (k + 0.5) / THREADS))),
    ...Array.from({ length: AROUND }, (_, k) =>
      places.map((turn) => at((k + 0.6 + 0.8 * (1 - turn) ** 2) / (AROUND + 1), turn)),
    ),
  ];
}

const THREADS = 8;
const AROUND = 34;

/** Ridge of the back wall from which the pectinate muscles run on to the free wall (terminal crest). */
export const crest = (graft: Graft): readonly Point[] =>
  lineAlong((along) => beside(graft, along, -0.62 + 0.2 * bow(along)));
