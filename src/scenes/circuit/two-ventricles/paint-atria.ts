/** What is seen in the atria of a heart with two ventricles, opened at their fronts, and their closed ears. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import type { BloodTube } from "../../anatomy/great-vessels.ts";
import { paintMouths } from "../../anatomy/paint-mouths.ts";
import { paintOrgan } from "../../anatomy/paint-organ.ts";
import { boundsOf, type Ink, strokes, trace } from "../../anatomy/painted-sheet.ts";
import { smoothLine } from "../../anatomy/placing.ts";
import { type Round, roundOf, tissue } from "../../anatomy/tones.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import {
  COMBS,
  CREST,
  EARS,
  FOSSA,
  LEFT_ATRIUM,
  MOUTHS,
  type Oval,
  RIGHT_ATRIUM,
  SINUS,
} from "./heart-plan.ts";
import { paintAtrium } from "./paint-chambers.ts";

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
        [1.7, look.shade],
        [1.2, look.body],
        [0.4, look.light],
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
    for (const [mouth, way] of [
      [MOUTHS.upper, 1],
      [MOUTHS.lower, -1],
    ] as const)
      paintVeinMouth(ink, mouth, way, roundOf(mixed, theme));
  });
}

/** A thin floor in a raised rim that is open towards the lower vein. */
function paintFossa(ink: Ink, mixed: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const { body, light } = roundOf(mixed, theme);
  const [[x, y], across, up] = FOSSA;
  oval(ink, FOSSA);
  const fall = ink.createLinearGradient(x - across, y + up, x + across, y - up);
  fall.addColorStop(0, mix(body, look.shade, 0.5));
  fall.addColorStop(1, mix(light, look.light, 0.5));
  ink.fillStyle = fall;
  ink.fill();
  ink.beginPath();
  ink.ellipse(x, y, across + 0.4, up + 0.4, 0, -0.38 * Math.PI, 1.38 * Math.PI);
  for (const [width, colour] of [
    [1.7, look.shade],
    [1.2, look.body],
    [0.4, look.light],
  ] as const) {
    ink.lineWidth = width;
    ink.strokeStyle = colour;
    ink.stroke();
  }
}

function paintSinus(ink: Ink, mixed: number, theme: Theme): void {
  const look = tissue("atrium", theme);
  const { wall, edge } = roundOf(mixed, theme);
  oval(ink, SINUS);
  ink.fillStyle = mix(edge, wall, 0.6);
  ink.fill();
  ink.lineWidth = 0.6;
  ink.strokeStyle = look.light;
  ink.stroke();
}

/** Seen from within: the vein goes on behind the near rim, in the shade. @param way 1 upwards, -1 downwards */
function paintVeinMouth(ink: Ink, mouth: Oval, way: 1 | -1, { wall, edge, body }: Round): void {
  const [[x, y], , up] = mouth;
  oval(ink, mouth);
  const fall = ink.createLinearGradient(x, y + way * up, x, y - way * up);
  fall.addColorStop(0, mix(edge, wall, 0.55));
  fall.addColorStop(1, body);
  ink.fillStyle = fall;
  ink.fill();
  ink.lineWidth = 0.5;
  ink.strokeStyle = mix(edge, wall, 0.5);
  ink.stroke();
}

/** @param veins of the left lung, which open into its back wall */
export function paintLeftAtrium(ink: Ink, veins: readonly BloodTube[], arterial: number, theme: Theme): void {
  paintAtrium(ink, LEFT_ATRIUM, arterial, theme, () =>
    paintMouths(ink, veins, roundOf(arterial, theme), theme),
  );
  paintEar(ink, EARS.left, theme);
}
