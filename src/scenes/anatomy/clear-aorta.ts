/** Where the ascending aorta passes before the pathway it is like glass: what meets behind it is what the picture is about. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Distance } from "../../sim/geometry/distance.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { WALL } from "../layers/fade.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { scratch } from "./paint-tube.ts";
import { type Bounds, type Ink, trace } from "./painted-sheet.ts";

/** mm of a 5-year-old over which it clears before and after the crossing */
const SOFT = 9;

/** Points of the aorta's axis on its way up that lie over the pathway. */
function crossingOf({ before, frame }: Anatomy, pathway: Distance): readonly Point[] {
  const { line, from } = lastOf(before);
  // An atrium is to show its border.
  const near = frame.chamber ? from / 2 : WALL;
  const top = line.reduce((best, [, y], i) => (y > entryAt(entryAt(line, best), 1) ? i : best), 0);
  return line.slice(ROOT, top).filter(([x, y]) => pathway(x, y) < near);
}

/** Points of the aorta's axis that lie in its root. */
const ROOT = 10;

/** Opaque where the aorta is to be clear. */
export function clearIn(ink: Ink, bounds: Bounds, anatomy: Anatomy, pathway: Distance | undefined): Ink {
  const own = scratch(ink, bounds);
  const over = pathway ? crossingOf(anatomy, pathway) : [];
  if (over.length < 2) return own;
  const [[ax, ay], [bx, by]] = [entryAt(over, 0), lastOf(over)];
  const soft = (SOFT * anatomy.frame.scale) / Math.hypot(bx - ax, by - ay);
  const at = (part: number): Point => [ax + part * (bx - ax), ay + part * (by - ay)];
  const fall = own.createLinearGradient(...at(-soft), ...at(1 + soft));
  const edge = soft / (1 + 2 * soft);
  fall.addColorStop(0, "#0000");
  fall.addColorStop(edge, "#000");
  fall.addColorStop(1 - edge, "#000");
  fall.addColorStop(1, "#0000");
  trace(own, [at(-soft), at(1 + soft)]);
  own.lineCap = "butt";
  own.lineWidth = 2 * lastOf(anatomy.before).from;
  own.strokeStyle = fall;
  own.stroke();
  return own;
}
