/** Where the aorta's opened root lies: its lumen's edge with the sinuses, and the rim of the closed vessel above. */
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { ASCENDING } from "./great-vessels.ts";
import { type HeartShape, inRoot } from "./heart-shape.ts";

export interface Place {
  readonly heart: HeartShape;
  /** half of the ascending aorta's width, in the heart's own lengths */
  readonly half: number;
}

export const seatOf = ({ heart, frame }: Anatomy): Place => ({
  heart,
  half: (ASCENDING * frame.scale) / heart.size / 2,
});

/** How far up from the hinges the root is open at its sides, and by how much further in its middle. */
export const OPENED = 10.6;
const ARCHED = 5.4;
/** Where its sinuses end, and how far they bulge. */
const JUNCTION = 11;
const BULGE = 1.1;
/** Half of the ring's width, and where it begins below the hinges. */
const RING = 6;
const BELOW = -1;
/** Half of the wall's thickness where it is cut. */
export const CUT = 0.8;
/** The vessel's own bend away from the root's axis. */
const bend = (v: number): number => -1.6 * (v / 15) ** 2;

export const placed = ({ heart }: Place, points: readonly Point[]): Point[] =>
  points.map(([u, v]) => heart.at(...inRoot(u, v)));

/** Half of the lumen's width at a height. */
export const halfAt = (half: number, v: number): number => {
  const up = Math.min(1, Math.max(0, (v + 0.4) / JUNCTION));
  return RING + (half - RING) * up + BULGE * Math.sin(Math.PI * up ** 0.8);
};

/** The lumen's edge from below the hinge to the closed vessel. */
export const edgeOf = (half: number, side: 1 | -1, beside = 0): readonly Point[] =>
  Array.from({ length: 41 }, (_, i): Point => {
    const v = BELOW + ((OPENED - BELOW) * i) / 40;
    return [side * (halfAt(half, v) + beside) + bend(v), v];
  });

/** Where the closed vessel's front begins, from one side to the other. */
export const rimOf = (half: number, beside = 0): readonly Point[] =>
  Array.from({ length: 41 }, (_, i): Point => {
    const turn = (Math.PI * i) / 40;
    const v = OPENED + (ARCHED + beside) * Math.sin(turn);
    return [(half + beside) * Math.cos(turn) + bend(v), v];
  });

/** All that it covers. */
export const rootOutline = (root: Place): readonly Point[] =>
  placed(root, [
    ...edgeOf(root.half, 1, 2 * CUT),
    ...rimOf(root.half, 2 * CUT),
    ...[...edgeOf(root.half, -1, 2 * CUT)].reverse(),
  ]);
