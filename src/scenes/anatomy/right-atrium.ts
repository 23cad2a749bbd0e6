/** The right atrium behind an extracardiac conduit: both venae cavae were taken off it and their mouths sewn over. */
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { returning } from "./great-vessels.ts";
import { stitches } from "./paint-graft.ts";
import { paintOrgan } from "./paint-organ.ts";
import { paintGhosts } from "./paint-tube.ts";
import { type Ink, trace } from "./painted-sheet.ts";
import { placing } from "./placing.ts";
import { rightAtrium } from "./right-atrium-shape.ts";
import { type Round, threadOf, tissue } from "./tones.ts";

/** The inferior vena cava's mouth in its floor. */
const SEWN: readonly Point[] = [
  [0.6, -26],
  [2.6, -26.6],
  [4.6, -26],
];

/** The right pulmonary veins pass behind it to the left atrium. */
export function paintRightAtrium(ink: Ink, anatomy: Anatomy, veins: Round, theme: Theme): void {
  const { heart, frame } = anatomy;
  const place = placing(frame);
  const outline = rightAtrium(place);
  if (outline.length === 0) return;
  paintOrgan(ink, outline, tissue("atrium", theme), { depth: 4 * heart.size, edge: 0.5 * heart.size });
  ink.save();
  trace(ink, outline, true);
  ink.clip();
  paintGhosts(ink, returning(anatomy), veins);
  ink.restore();
  const seam = SEWN.map((point) => place.inHeart(...point));
  stitches(ink, seam, 0.7 * heart.size, threadOf(theme));
}
