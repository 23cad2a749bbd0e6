/** What of the aorta is taken away: where a vein lies before it, and where blood crosses behind it in an atrium. */
import { lastOf } from "../../sim/checked/present.ts";
import { line } from "../../sim/geometry/centreline.ts";
import { WALL } from "../layers/fade.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { bandOf, scratch, takeAway } from "./paint-tube.ts";
import { type Bounds, eraseAlong, type Ink, trace } from "./painted-sheet.ts";
import { rootOutline, seatOf } from "./root-shape.ts";

/** Of its width, and taken away of its front by each of three panes. */
const PANES = [0.92, 0.84, 0.76] as const;
const GLASS = 0.4;
/** mm of a 5-year-old beneath the atrium's roof over which it clears */
const CLEARS = 7;

/** Like glass but for its edges and its root. @param layer holds the aorta alone */
export function clearBefore(layer: Ink, bounds: Bounds, anatomy: Anatomy): void {
  const { before, heart, frame } = anatomy;
  const aorta = lastOf(before);
  const way = line(aorta.line);
  const pane = scratch(layer, bounds);
  pane.save();
  trace(pane, heart.atrium, true);
  pane.clip();
  pane.globalAlpha = GLASS;
  for (const part of PANES) {
    trace(pane, bandOf(way, aorta, { part }), true);
    pane.fill();
  }
  pane.restore();
  const top = Math.max(...heart.atrium.map(([, y]) => y));
  eraseAlong(pane, [0, top - CLEARS * frame.scale], [0, top], bounds);
  const root = scratch(layer, bounds);
  trace(root, rootOutline(seatOf(anatomy)), true);
  root.fill();
  takeAway(pane, root, bounds);
  takeAway(layer, pane, bounds);
}

/** The vein from the left arm lies before the aorta's branches. */
export function underVein(ink: Ink, { veins }: Anatomy): void {
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  for (const vein of veins.filter((vein) => vein.group === "brachiocephalic")) {
    trace(ink, vein.line);
    ink.lineCap = "butt";
    ink.lineWidth = (vein.from + vein.to) / 2 + 2 * WALL;
    ink.stroke();
  }
  ink.restore();
}
