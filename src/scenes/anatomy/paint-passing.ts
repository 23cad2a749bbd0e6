/** What runs behind a conduit and the right atrium, seen through both: the right lung's veins on their way into the left atrium, and its right border. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { returning } from "./great-vessels.ts";
import { laidOver, paintTube, scratch } from "./paint-tube.ts";
import { type Bounds, type Ink, type Outlines, trace, traceLoops } from "./painted-sheet.ts";
import { placing } from "./placing.ts";
import { rightAtrium } from "./right-atrium-shape.ts";
import type { Round } from "./tones.ts";

/** x and y in the heart: the left atrium as far as it reaches behind aorta and conduit (common textbook course, no source). */
const LEFT_ATRIUM: readonly Point[] = [
  [14, 15],
  [2, 15.4],
  [-6.4, 12],
  [-9, 1],
  [-6.6, -11],
  [2, -16],
  [14, -15],
];
/** mm of a 5-year-old: the atrium's outline, and the veins' walls */
const OUTLINE = 0.9;
const WALL = 0.7;
/** How much of the veins with all outlines, and of the atrium, is seen through what lies before them. */
const VEINS = 0.62;
const ATRIUM = 0.26;

export function paintPassing(
  ink: Ink,
  bounds: Bounds,
  anatomy: Anatomy,
  tones: Round,
  seen: Outlines["seen"],
): void {
  const { frame } = anatomy;
  if (frame.graft?.kind !== "conduit") return;
  const place = placing(frame);
  const s = frame.scale;
  const own = scratch(ink, bounds);
  for (const vein of returning(anatomy)) paintTube(own, vein, tones, WALL * s);
  own.globalCompositeOperation = "destination-out";
  trace(own, closedOutline(LEFT_ATRIUM.map((point) => place.inHeart(...point))), true);
  own.fill();
  own.globalCompositeOperation = "source-over";
  own.globalAlpha = ATRIUM / VEINS;
  own.fillStyle = tones.body;
  own.fill();
  own.globalAlpha = 1;
  own.lineWidth = OUTLINE * s;
  own.strokeStyle = tones.wall;
  own.stroke();
  const room = scratch(ink, bounds);
  traceLoops(room, seen);
  room.fill();
  trace(room, rightAtrium(place), true);
  room.fill();
  own.globalCompositeOperation = "destination-in";
  laidOver(own, room, bounds);
  ink.save();
  ink.globalAlpha = VEINS;
  laidOver(ink, own, bounds);
  ink.restore();
}
