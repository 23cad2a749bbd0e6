/** The aorta passes before an atrium whose blood is to be seen: the pathway itself, or one in which blood crosses. There it is like glass but for its edges and its opened root. */
import { lastOf } from "../../../sim/checked/present.ts";
import { line } from "../../../sim/geometry/centreline.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import { crosses } from "../heart-shape.ts";
import { bandOf, scratch, takeAway } from "../paint-tube.ts";
import { boundsOf, eraseAlong, type Ink, trace } from "../painted-sheet.ts";
import { rootOutline, seatOf } from "../root-shape.ts";

/** How much of it is cleared, within which part of its width; and from where to where that ends, by the atrium's own size. */
const CLEARED = 0.78;
const WITHIN = 0.9;
const [FULLY, NOT] = [0.92, 1.14];
/** mm of a 5-year-old beneath a roof over which it clears */
const CLEARS = 7;

export function clearBefore(ink: Ink, anatomy: Anatomy): void {
  if (crosses(anatomy.frame)) clearCrossing(ink, anatomy);
  const { chamber } = anatomy.frame;
  if (!chamber) return;
  const [a, b] = chamber;
  ink.save();
  traceAorta(ink, anatomy);
  ink.clip();
  ink.scale(1, b / a);
  const fall = ink.createRadialGradient(0, 0, FULLY * a, 0, 0, NOT * a);
  fall.addColorStop(0, "#000");
  fall.addColorStop(1, "#0000");
  ink.globalCompositeOperation = "destination-out";
  ink.globalAlpha = CLEARED;
  ink.fillStyle = fall;
  ink.fillRect(-NOT * a, -NOT * a, 2 * NOT * a, 2 * NOT * a);
  ink.restore();
}

const traceAorta = (ink: Ink, { before }: Anatomy): void => {
  const aorta = lastOf(before);
  trace(ink, bandOf(line(aorta.line), aorta, { part: WITHIN }), true);
};

function clearCrossing(ink: Ink, anatomy: Anatomy): void {
  const { heart, frame } = anatomy;
  const bounds = boundsOf([heart.atrium], 0);
  const [, , , top] = bounds;
  const pane = scratch(ink, bounds);
  pane.save();
  trace(pane, heart.atrium, true);
  pane.clip();
  pane.globalAlpha = CLEARED;
  traceAorta(pane, anatomy);
  pane.fill();
  pane.restore();
  eraseAlong(pane, [0, top - CLEARS * frame.scale], [0, top], bounds);
  pane.globalCompositeOperation = "destination-out";
  trace(pane, rootOutline(seatOf(anatomy)), true);
  pane.fill();
  takeAway(ink, pane, bounds);
}
