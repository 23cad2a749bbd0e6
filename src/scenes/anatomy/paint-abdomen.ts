/** Under the lungs: the liver, and the diaphragm as a sheet of muscle over it. */
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { AbdomenShape } from "./abdomen-shape.ts";
import { paintOrgan } from "./paint-organ.ts";
import { boundsOf, type Ink, trace } from "./painted-sheet.ts";
import { tissue } from "./tones.ts";

/** @param size mm of the body for one of a 5-year-old */
export function paintLiver(ink: Ink, { liver }: AbdomenShape, size: number, theme: Theme): void {
  paintOrgan(ink, liver, tissue("liver", theme), { depth: 12 * size, edge: 0.7 * size });
}

/** The dome's muscle seen edge on, thinner where it is tendon. */
export function paintDiaphragm(ink: Ink, { diaphragm }: AbdomenShape, size: number, theme: Theme): void {
  const look = tissue("diaphragm", theme);
  const [left, , right] = boundsOf([diaphragm], 0);
  paintDome(ink, diaphragm, size, theme);
  trace(ink, diaphragm);
  for (const [width, colour] of [
    [3.6, look.shade],
    [2.8, look.body],
    [1.2, look.light],
  ] as const) {
    ink.lineWidth = width * size;
    ink.strokeStyle = acrossFade(ink, left, right, colour);
    ink.stroke();
  }
}

/** Clear at both ends, where the muscle goes on into the wall of the trunk. */
function acrossFade(ink: Ink, left: number, right: number, colour: string): CanvasGradient {
  const fall = ink.createLinearGradient(left, 0, right, 0);
  fall.addColorStop(0, `${colour}00`);
  fall.addColorStop(0.09, colour);
  fall.addColorStop(0.91, colour);
  fall.addColorStop(1, `${colour}00`);
  return fall;
}

/** The dome's underside: a veil of muscle that clears downwards. */
function paintDome(ink: Ink, diaphragm: readonly Point[], size: number, theme: Theme): void {
  const look = tissue("diaphragm", theme);
  const [left, bottom, right] = boundsOf([diaphragm], 0);
  const deep = 16 * size;
  ink.save();
  trace(ink, [...diaphragm, [right, bottom - deep], [left, bottom - deep]], true);
  ink.clip();
  trace(ink, diaphragm);
  for (let k = 0; k < DOME; k++) {
    ink.lineWidth = (2 * deep * (k + 1)) / DOME;
    ink.strokeStyle = acrossFade(ink, left, right, look.shade);
    ink.globalAlpha = 0.7 / DOME;
    ink.stroke();
  }
  ink.restore();
}

/** Strokes of which the veil is made. */
const DOME = 30;
