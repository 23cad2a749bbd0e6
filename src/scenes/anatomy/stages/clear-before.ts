/** The aorta passes before an atrium that is the pathway itself, whose blood is to be seen. There it is like glass but for its edges and its opened root. */
import { lastOf } from "../../../sim/checked/present.ts";
import { line } from "../../../sim/geometry/centreline.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import { bandOf } from "../paint-tube.ts";
import { type Ink, trace } from "../painted-sheet.ts";

/** How much of it is cleared, within which part of its width; and from where to where that ends, by the atrium's own size. */
const CLEARED = 0.78;
const WITHIN = 0.9;
const [FULLY, NOT] = [0.92, 1.14];

export function clearBefore(ink: Ink, anatomy: Anatomy): void {
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
