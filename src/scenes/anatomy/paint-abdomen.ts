/** Under the lungs: the liver, and the diaphragm as a sheet of muscle over it. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { AbdomenShape } from "./abdomen-shape.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { paintOrgan } from "./paint-organ.ts";
import { boundsOf, type Ink, strokes, trace } from "./painted-sheet.ts";
import { tissue } from "./tones.ts";

/** @param size mm of the body for one of a 5-year-old */
export function paintLiver(ink: Ink, { liver }: AbdomenShape, size: number, theme: Theme): void {
  paintOrgan(ink, liver, tissue("liver", theme), { depth: 12 * size, edge: 0.7 * size });
}

/** The dome's muscle seen edge on, thinner where it is tendon. */
export function paintDiaphragm(ink: Ink, { diaphragm }: AbdomenShape, size: number, theme: Theme): void {
  const look = tissue("diaphragm", theme);
  const [, bottom] = boundsOf([diaphragm], 0);
  paintDome(ink, diaphragm, size, theme);
  trace(ink, diaphragm);
  for (const [width, colour] of [
    [3.6, look.shade],
    [2.8, look.body],
    [1.2, look.light],
  ] as const) {
    ink.lineWidth = width * size;
    ink.strokeStyle = downFade(ink, bottom, size, colour);
    ink.stroke();
  }
}

/** Clear at both ends, where the muscle goes on into the wall of the trunk. */
function downFade(ink: Ink, bottom: number, size: number, colour: string): CanvasGradient {
  const fall = ink.createLinearGradient(0, bottom, 0, bottom + TAIL * size);
  fall.addColorStop(0, `${colour}00`);
  fall.addColorStop(1, colour);
  return fall;
}

/** mm of a 5-year-old over which the muscle clears */
const TAIL = 14;

/** The front lip of the opening in the diaphragm's tendon through which the inferior vena cava passes. */
export function hiatusOf({ abdomen: { diaphragm }, frame: { ivc, scale } }: Anatomy): readonly Point[] {
  const [x] = ivc.centre;
  const y = entryAt(
    diaphragm.reduce((best, at) => (Math.abs(at[0] - x) < Math.abs(best[0] - x) ? at : best)),
    1,
  );
  const half = ivc.width / 2 + 3.2 * scale;
  return Array.from({ length: 17 }, (_, i): Point => {
    const turn = Math.PI * (1 + i / 16);
    return [x + half * Math.cos(turn), y + 0.4 * scale + 3.4 * scale * Math.sin(turn)];
  });
}

export function paintHiatus(ink: Ink, lip: readonly Point[], size: number, theme: Theme): void {
  const look = tissue("diaphragm", theme);
  strokes(ink, lip, size, [
    [2.4, look.shade],
    [1.7, look.body],
    [0.7, look.light],
  ]);
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
    ink.strokeStyle = downFade(ink, bottom, size, look.shade);
    ink.globalAlpha = 0.7 / DOME;
    ink.stroke();
  }
  ink.restore();
}

/** Strokes of which the veil is made. */
const DOME = 12;
