/** What runs behind an opened part of the heart and shines through it, its edges dashed. */
import { line } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { BloodTube } from "./great-vessels.ts";
import { paintOrgan } from "./paint-organ.ts";
import { dash } from "./paint-passing.ts";
import { bandOf } from "./paint-tube.ts";
import { type Ink, trace } from "./painted-sheet.ts";
import { asTissue, type Round } from "./tones.ts";

interface Ghost {
  /** part of its own colour that is left */
  readonly left: number;
  /** mm of the body for one of a 5-year-old */
  readonly size: number;
}
const GHOST: Ghost = { left: 0.5, size: 1 };

/** @param edges its two sides */
export function paintGhost(
  ink: Ink,
  edges: readonly (readonly Point[])[],
  round: Round,
  { left, size }: Ghost = GHOST,
): void {
  paintOrgan(ink, edges.flat(), asTissue(round), { depth: 3 * size, alpha: left });
  ink.save();
  for (const edge of edges) {
    trace(ink, edge);
    dash(ink, size, round.wall);
  }
  ink.restore();
}

export function paintGhostVein(ink: Ink, vein: BloodTube, round: Round, ghost: Ghost = GHOST): void {
  const outline = bandOf(line(vein.line), vein, { part: 1, wall: ghost.size });
  const half = outline.length / 2;
  paintGhost(ink, [outline.slice(0, half), outline.slice(half)], round, ghost);
}
