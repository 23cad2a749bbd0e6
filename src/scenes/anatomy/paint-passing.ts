/** Vessels that run on behind heart and pathway: they shine through what lies before them, their edges dashed on it. */
import { lastOf } from "../../sim/checked/present.ts";
import { line } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { descending, returning, type Tube } from "./great-vessels.ts";
import { bandOf, laidOver, paintTubes, scratch, sidesOf } from "./paint-tube.ts";
import { type Bounds, dash, type Ink, type Outlines, trace, traceLoops } from "./painted-sheet.ts";
import type { Round } from "./tones.ts";

/** How much of a vein's wall is seen behind the blood that passes before it, and mm of a 5-year-old of its dashed rim. */
const SHINES = 0.55;
const RIM = 0.9;

const outlineOf = (tube: Tube): readonly Point[] => bandOf(line(tube.line), tube, { part: 1 });

/** Right pulmonary veins through the back of a conduit: its blood passes before them. */
export function paintShining(
  ink: Ink,
  bounds: Bounds,
  anatomy: Anatomy,
  round: Round,
  seen: Outlines["seen"],
): void {
  const own = scratch(ink, bounds);
  paintTubes(own, returning(anatomy), round, 0);
  ink.save();
  traceLoops(ink, seen);
  ink.clip();
  ink.globalAlpha = SHINES;
  laidOver(ink, own, bounds);
  ink.restore();
}

/** Their edges before that, the right atrium and the aorta; and the aorta's before the left atrium. */
export function paintPassing(
  ink: Ink,
  bounds: Bounds,
  anatomy: Anatomy,
  { wall }: Round,
  seen: Outlines["seen"],
): void {
  const { before, frame, heart, rightAtrium, rightAppendage } = anatomy;
  const through = (
    tubes: readonly Tube[],
    wide: number,
    covers: readonly (readonly Point[])[],
    loops: Outlines["seen"],
  ) => {
    const [own, room] = [scratch(ink, bounds), scratch(ink, bounds)];
    for (const tube of tubes) {
      for (const side of sidesOf(outlineOf(tube))) {
        trace(own, side);
        dash(own, frame.scale, wall, { wide });
      }
    }
    for (const cover of covers) {
      trace(room, cover, true);
      room.fill();
    }
    traceLoops(room, loops);
    room.fill();
    own.globalCompositeOperation = "destination-in";
    laidOver(own, room, bounds);
    own.globalCompositeOperation = "destination-out";
    for (const part of [heart.ventricle, outlineOf(heart.trunk)]) {
      trace(own, part, true);
      own.fill();
    }
    laidOver(ink, own, bounds);
  };
  if (frame.graft?.kind === "conduit")
    through(returning(anatomy), RIM, [rightAtrium, rightAppendage, outlineOf(lastOf(before))], seen);
  through(descending(anatomy), 0.6, [heart.atrium], []);
}
