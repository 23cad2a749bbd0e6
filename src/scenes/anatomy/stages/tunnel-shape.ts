/** Lines of a lateral tunnel: the almond of its baffle, sewn along one line behind and one in front that meet at the mouths of both venae cavae. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import { beside, type Graft } from "../paint-graft.ts";

/** Steps along an edge. */
const STEPS = 60;
/** mm of a 5-year-old by which the baffle bows into the atrium at its middle, and its rim at either end. */
const BOWS = 8;
const RIM = 0.7;
/** How far across the back wall the line behind goes at its middle: 1 is the baffle's side, -1 the free wall's. */
const BEHIND = -0.12;

const bow = (along: number): number => Math.sin(Math.PI * along) ** 0.7;

const bowsAt = (along: number, size: number): number => size * (RIM + BOWS * bow(along));

const lineAlong = (at: (along: number) => Point): readonly Point[] =>
  Array.from({ length: STEPS + 1 }, (_, i) => at(i / STEPS));

/** Across the tunnel at a part of its half width, from below to above. @param beyond mm outside */
export const across = (graft: Graft, part: number, beyond = 0): readonly Point[] =>
  lineAlong((along) => beside(graft, along, part, beyond));

export const lineBehind = (graft: Graft): readonly Point[] =>
  lineAlong((along) => beside(graft, along, 0.96 + (BEHIND - 0.96) * bow(along)));

export const lineInFront = (graft: Graft, size: number): readonly Point[] =>
  lineAlong((along) => beside(graft, along, 1, bowsAt(along, size)));

/** Ridge of the back wall from which the pectinate muscles run on to the free wall (terminal crest). */
export const crest = (graft: Graft): readonly Point[] =>
  lineAlong((along) => beside(graft, along, -0.62 + 0.2 * bow(along)));
