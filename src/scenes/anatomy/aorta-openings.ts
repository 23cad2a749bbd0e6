/** Where the aorta and its branches let other parts be seen. */
import { WALL as HOLLOW_WALL } from "../layers/fade.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { joined } from "./joined.ts";
import { boundsOf, type Ink, trace } from "./painted-sheet.ts";

/** What the aorta loses where it lets the atrium behind it be seen, from the middle out to beyond the pane's edge. */
const PANE = [
  [0, 0.78],
  [0.5, 0.74],
  [1, 0],
] as const;
const REACH = 1.25;

/** The vein from the left arm lies before the aorta's branches. */
export function underVein(ink: Ink, { veins }: Anatomy): void {
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  for (const vein of veins.filter((vein) => vein.group === "brachiocephalic")) {
    trace(ink, vein.line);
    ink.lineCap = "butt";
    ink.lineWidth = (vein.from + vein.to) / 2 + 2 * HOLLOW_WALL;
    ink.stroke();
  }
  ink.restore();
}

/** Glass rather than a hole: it clears bit by bit towards its middle. */
export function openPane(ink: Ink, anatomy: Anatomy): void {
  const pane = joined()?.pane(anatomy) ?? [];
  if (pane.length === 0) return;
  const [left, bottom, right, top] = boundsOf([pane], 0);
  const [wide, high] = [right - left, top - bottom];
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  ink.translate((left + right) / 2, (bottom + top) / 2);
  ink.scale(wide / 2, high / 2);
  const clear = ink.createRadialGradient(0, 0, 0, 0, 0, REACH);
  for (const [at, part] of PANE) clear.addColorStop(at, `rgba(0,0,0,${part})`);
  ink.fillStyle = clear;
  ink.fillRect(-REACH, -REACH, 2 * REACH, 2 * REACH);
  ink.restore();
}
