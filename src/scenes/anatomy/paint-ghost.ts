/** What runs behind an opened part of the heart and shines through it, its edges dashed. */
import { line } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { BloodTube } from "./great-vessels.ts";
import { paintOrgan } from "./paint-organ.ts";
import { bandOf, sidesOf } from "./paint-tube.ts";
import { dash, type Ink, trace } from "./painted-sheet.ts";
import { asTissue, type Round } from "./tones.ts";

interface Ghost {
  /** part of its own colour that is left */
  readonly left: number;
  /** mm of the body for one of a 5-year-old */
  readonly size: number;
}
const GHOST: Ghost = { left: 0.6, size: 1 };

/** @param edges its two sides */
function paintGhost(
  ink: Ink,
  edges: readonly (readonly Point[])[],
  round: Round,
  { left, size }: Ghost = GHOST,
): void {
  paintOrgan(ink, edges.flat(), asTissue(round), { depth: 3 * size, alpha: left });
  for (const edge of edges) {
    trace(ink, edge);
    dash(ink, size, round.wall, { wide: 0.7, alpha: 0.8 });
  }
}

export function paintGhostVein(ink: Ink, vein: BloodTube, round: Round, ghost: Ghost = GHOST): void {
  const outline = bandOf(line(vein.line), vein, { part: 1, wall: ghost.size });
  paintGhost(ink, sidesOf(outline), round, ghost);
}
