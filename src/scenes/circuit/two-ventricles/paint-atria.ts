/** What is seen in the atria of a heart with two ventricles, opened at their fronts, and their closed ears. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import type { BloodTube } from "../../anatomy/great-vessels.ts";
import { paintGhostVein } from "../../anatomy/paint-ghost.ts";
import { paintMouths } from "../../anatomy/paint-mouths.ts";
import { paintOrgan } from "../../anatomy/paint-organ.ts";
import { castShadow } from "../../anatomy/paint-tube.ts";
import { boundsOf, type Ink, strokes, trace } from "../../anatomy/painted-sheet.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { roundOf, tissue } from "../../anatomy/tones.ts";
import { mix, seeThrough } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import { COMBS, CREST, EARS, FOSSA, LEFT_ATRIUM, type Oval, RIGHT_ATRIUM, SINUS } from "./heart-plan.ts";
import { deepOf, paintAtrium } from "./paint-chambers.ts";

const oval = (ink: Ink, [[x, y], across, up]: Oval, more = 0): void => {
  ink.beginPath();
  ink.ellipse(x, y, across + more, up + more, 0, 0, 2 * Math.PI);
};

/** Closed, as seen from outside. */
function paintEar(ink: Ink, outline: readonly Point[], theme: Theme): void {
  const look = tissue("atrium", theme);
  const soft = { ...look, shade: mix(look.shade, look.body, 0.4) };
  paintOrgan(ink, outline, soft, { depth: 2.6, edge: 0.7 });
  const [left, bottom, right, top] = boundsOf([outline], 0);
  const [x, y] = [(left + right) / 2, (bottom + top) / 2];
  ink.save();
  trace(ink, outline, true);
  ink.clip();
  ink.globalAlpha = 0.4;
  // Its lobes show through to its middle.
  for (const part of [0.8, 0.62])
    strokes(
      ink,
      outline.map(([px, py]): Point => [x + part * (px - x), y + part * (py - y)]),
      1,
      [[0.5, part > 0.7 ? look.light : look.shade]],
    );
  ink.restore();
}

export function paintRightAtrium(ink: Ink, mixed: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  paintEar(ink, EARS.right, theme);
  paintAtrium(ink, RIGHT_ATRIUM, mixed, theme, () => {
    ink.save();
    ink.globalAlpha = 0.6;
    for (const comb of COMBS)
      strokes(ink, smoothLine(comb, 6), 1, [
        [1.4, look.shade],
        [0.9, look.body],
        [0.3, look.light],
      ]);
    ink.globalAlpha = 0.85;
    strokes(ink, smoothLine(CREST, 8), 1, [
      [2.2, look.shade],
      [1.6, look.body],
      [0.5, look.light],
    ]);
    ink.restore();
    paintFossa(ink, mixed, theme);
    paintSinus(ink, mixed, theme);
  });
}

/** A shallow hollow in the septum: its floor in the shade of its edge, which is rounded towards the upper vein. */
function paintFossa(ink: Ink, mixed: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const { edge, body } = roundOf(mixed, theme);
  const [[x, y], across, up] = FOSSA;
  ink.save();
  ink.lineCap = "round";
  ink.strokeStyle = look.light;
  ink.globalAlpha = 0.24;
  for (const width of [3.6, 2.4, 1.2]) {
    ink.beginPath();
    ink.ellipse(x, y, across + 0.9, up + 0.9, 0, -0.2 * Math.PI, 1.2 * Math.PI);
    ink.lineWidth = width;
    ink.stroke();
  }
  ink.globalAlpha = 1;
  oval(ink, FOSSA);
  ink.clip();
  ink.fillStyle = mix(body, look.light, 0.5);
  ink.fill();
  const { a, b } = ink.getTransform();
  castShadow(ink, 1.4 * Math.hypot(a, b));
  ink.globalAlpha = 0.36;
  oval(ink, FOSSA, 0.7);
  ink.lineWidth = 1.4;
  ink.strokeStyle = mix(edge, look.body, 0.4);
  ink.stroke();
  ink.restore();
}

function paintSinus(ink: Ink, mixed: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const tones = roundOf(mixed, theme);
  oval(ink, SINUS);
  ink.fillStyle = mix(deepOf(tones, theme), tones.body, 0.5);
  ink.fill();
  ink.lineWidth = 0.6;
  ink.strokeStyle = look.light;
  ink.stroke();
}

/** mm: between which the left atrium's room comes out of the shade of the great arteries before it. */
const SHADED = [40, 56] as const;

/** @param veins of the left lung, whose mouths in its back wall are seen */
export function paintLeftAtrium(ink: Ink, veins: readonly BloodTube[], arterial: number, theme: Theme): void {
  const round = roundOf(arterial, theme);
  const [left, bottom, right, top] = boundsOf([LEFT_ATRIUM], 0);
  paintAtrium(ink, LEFT_ATRIUM, arterial, theme, () => {
    const fall = ink.createLinearGradient(SHADED[0], top, SHADED[1], (bottom + top) / 2);
    fall.addColorStop(0, seeThrough(deepOf(round, theme), 0.6));
    fall.addColorStop(1, seeThrough(deepOf(round, theme), 0));
    ink.fillStyle = fall;
    ink.fillRect(left, bottom, right - left, top - bottom);
    for (const vein of veins) paintGhostVein(ink, vein, round, { left: 0.5, size: 1 });
    paintMouths(ink, veins, round, theme);
  });
  paintEar(ink, EARS.left, theme);
}
