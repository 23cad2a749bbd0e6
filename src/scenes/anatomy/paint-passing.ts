/** Vessels that run on behind heart and pathway: their edges are dashed on what lies before them. */
import { lastOf } from "../../sim/checked/present.ts";
import { line } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { descending, returning, type Tube } from "./great-vessels.ts";
import { bandOf, laidOver, scratch, sidesOf } from "./paint-tube.ts";
import { type Bounds, dash, type Ink, type Outlines, trace, traceLoops } from "./painted-sheet.ts";
import type { Round } from "./tones.ts";

const outlineOf = (tube: Tube): readonly Point[] => bandOf(line(tube.line), tube, { part: 1 });

/** Right pulmonary veins behind a conduit, the right atrium and the aorta; and the aorta behind the left atrium. */
export function paintPassing(
  ink: Ink,
  bounds: Bounds,
  anatomy: Anatomy,
  { wall }: Round,
  seen: Outlines["seen"],
): void {
  const { before, frame, heart, rightAtrium } = anatomy;
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
  if (rightAtrium)
    through(
      returning(anatomy),
      0.6,
      [rightAtrium.outline, rightAtrium.appendage, outlineOf(lastOf(before))],
      seen,
    );
  through(descending(anatomy), 0.6, [heart.atrium], []);
}
