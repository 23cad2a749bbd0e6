/** The atrium of a heart whose atrial septum was excised: the blood of both sides by its oxygen, the pulmonary veins' mouths in the back wall, and the rim that is left of the septum. */
import { lastOf } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { bloodColour, groundColour, mix, seeThrough } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import type { BloodTube } from "../great-vessels.ts";
import { isCommon } from "../heart-shape.ts";
import type { Saturations } from "../joined.ts";
import { wallOf } from "../paint-heart.ts";
import { paintMouths } from "../paint-mouths.ts";
import { castShadow } from "../paint-tube.ts";
import { boundsOf, type Ink, strokes, trace } from "../painted-sheet.ts";
import { placing } from "../placing.ts";
import { roundOf, tissue } from "../tones.ts";
import { paintEustachianValve, paintNeck, paintStump } from "./entering-vein.ts";
import { paintCutRim } from "./paint-cut-rim.ts";

/** The hole where the septum was excised, seen from the right side aslant, x and y in the heart: middle, and half of its width and height; right of the aorta, so that nothing lies before it. */
const DEFECT = { middle: [-4.6, -3], half: [6.8, 9.6] } as const;
/** By how much its far edge lies aside: the septum's thickness is seen between both. */
const FAR_EDGE: Point = [2, -0.6];
/** Halves of it beyond whose edge what is left of the septum goes over into the atrium's wall. */
const SEPTUM = 1.7;

const oval = ({ middle, half }: { readonly middle: Point; readonly half: Point }, more = 0): Point[] =>
  Array.from({ length: 49 }, (_, i) => {
    const turn = (Math.PI * i) / 24;
    return [middle[0] + (half[0] + more) * Math.cos(turn), middle[1] + (half[1] + more) * Math.sin(turn)];
  });

export const defectOf = ({ frame }: Anatomy): readonly Point[] =>
  oval(DEFECT, 0.7).map((point) => placing(frame).inHeart(...point));

export function paintWithin(ink: Ink, anatomy: Anatomy, saturations: Saturations, theme: Theme): void {
  if (!isCommon(anatomy.frame)) return;
  const { frame, behind } = anatomy;
  const veins = behind.filter(({ holds }) => holds === "pulmonaryVein");
  if (frame.lowerVein) paintNeck(ink, anatomy, groundColour(theme.colour, saturations.ivc), theme);
  const round = roundOf(saturations.pulmonaryVein, theme);
  // Before a Fontan those of the right lung open behind the aorta.
  const seen = frame.graft ? veins : veins.filter(({ name }) => name.startsWith("left"));
  paintStreams(ink, anatomy, seen, saturations, theme);
  ink.save();
  trace(ink, frame.atrium, true);
  ink.clip();
  if (!frame.lowerVein) paintRoom(ink, anatomy, theme);
  paintMouths(ink, seen, round, theme);
  if (!frame.graft) paintSeptum(ink, anatomy, saturations, theme);
  ink.restore();
  if (frame.graft) paintCutRim(ink, anatomy.heart, theme);
  else paintStump(ink, anatomy, theme);
  if (frame.lowerVein) paintEustachianValve(ink, anatomy, theme);
}

/** Its back wall lies deep behind the cut edge, which throws its shadow into the room, and comes forward in its middle. */
function paintRoom(ink: Ink, { heart, frame: { scale: s } }: Anatomy, theme: Theme): void {
  const { shade, light } = tissue("atrium", theme);
  const wall = wallOf(heart);
  const [left, bottom, right, top] = boundsOf([wall], 0);
  const [x, y] = [left + 0.52 * (right - left), bottom + 0.66 * (top - bottom)];
  const lit = ink.createRadialGradient(x, y, 0, x, y, 0.4 * (right - left));
  lit.addColorStop(0, seeThrough(light, 0.4));
  lit.addColorStop(1, seeThrough(light, 0));
  ink.fillStyle = lit;
  ink.fillRect(left, bottom, right - left, top - bottom);
  ink.save();
  ink.translate(1.2 * s, -1.8 * s);
  ink.globalAlpha = 0.09;
  for (let k = 1; k <= 8; k++) strokes(ink, wall, s, [[2.2 * k, shade]]);
  ink.restore();
}

/** Through the defect the blood from below goes over to the side behind it; what is left of the septum is its lip. */
function paintSeptum(ink: Ink, anatomy: Anatomy, { ivc, arterial }: Saturations, theme: Theme): void {
  const {
    frame,
    heart: { size },
  } = anatomy;
  const look = tissue("atrium", theme);
  const { inHeart } = placing(frame);
  const [middleX, middleY] = inHeart(...DEFECT.middle);
  ink.save();
  ink.translate(middleX, middleY);
  ink.scale(DEFECT.half[0] * size, DEFECT.half[1] * size);
  const around = ink.createRadialGradient(0, 0, 1, 0, 0, SEPTUM);
  const wall = mix(look.body, groundColour(theme.colour, ivc), 0.4);
  around.addColorStop(0, wall);
  around.addColorStop(0.5, seeThrough(wall, 0.6));
  around.addColorStop(1, seeThrough(wall, 0));
  ink.fillStyle = around;
  ink.fillRect(-SEPTUM, -SEPTUM, 2 * SEPTUM, 2 * SEPTUM);
  ink.restore();
  const rim = defectOf(anatomy);
  const far = rim.map(([x, y]): Point => [x + FAR_EDGE[0] * size, y + FAR_EDGE[1] * size]);
  ink.save();
  trace(ink, rim, true);
  ink.clip();
  ink.fillStyle = mix(look.shade, look.body, 0.4);
  ink.fill();
  trace(ink, far, true);
  ink.clip();
  // The room behind lies in the shade; what comes from below is darker.
  const [x, y] = [middleX, middleY];
  const half = DEFECT.half[0] * size;
  const through = ink.createLinearGradient(x - half, y, x + half, y);
  const shaded = (saturation: number) => mix(groundColour(theme.colour, saturation), look.shade, 0.42);
  through.addColorStop(0, shaded(ivc));
  through.addColorStop(1, shaded(arterial));
  ink.fillStyle = through;
  ink.fill();
  const { a: px, b: turned } = ink.getTransform();
  castShadow(ink, 3 * size * Math.hypot(px, turned));
  strokes(ink, far, size, [[1.2, mix(look.shade, look.edge, 0.4)]]);
  ink.restore();
  // Its edge is firm and thin: a broad one would be a ring, not a hole in a wall.
  strokes(ink, rim, size, [
    [1.7, mix(look.shade, look.edge, 0.6)],
    [0.9, look.light],
  ]);
}

/** Blood from below is poor in oxygen, that from the lungs rich: each tints the room before its mouth, and they mix towards the valve. */
function paintStreams(
  ink: Ink,
  { frame, heart: { size, atrium } }: Anatomy,
  veins: readonly BloodTube[],
  saturations: Saturations,
  theme: Theme,
): void {
  const { inHeart } = placing(frame);
  ink.save();
  trace(ink, atrium, true);
  if (frame.lowerVein) {
    const [x, y] = lastOf(frame.lowerVein);
    const half = frame.ivc.width / 2;
    ink.rect(x - half, y + 2 * size, 2 * half, -11 * size);
  }
  ink.clip();
  if (!frame.graft) {
    // Right of the septum there is none but what comes from below; left of it that mixes with the lungs'.
    const fall = ink.createLinearGradient(...inHeart(-2, 0), ...inHeart(14, 0));
    fall.addColorStop(0, seeThrough(groundColour(theme.colour, saturations.ivc), 0.88));
    fall.addColorStop(1, seeThrough(groundColour(theme.colour, saturations.arterial), 0.88));
    const [left, bottom, right, top] = boundsOf([atrium], 14 * size);
    ink.fillStyle = fall;
    ink.fillRect(left, bottom, right - left, top - bottom);
  }
  const pool = ([x, y]: Point, reach: number, saturation: number) => {
    const ground = mix(groundColour(theme.colour, saturation), bloodColour(theme.colour, saturation), 0.12);
    const fall = ink.createRadialGradient(x, y, 0, x, y, reach * size);
    for (const [at, alpha] of [
      [0, "e0"],
      [0.3, "c0"],
      [0.6, "70"],
      [0.82, "20"],
      [1, "00"],
    ] as const)
      fall.addColorStop(at, ground + alpha);
    ink.fillStyle = fall;
    ink.fillRect(x - reach * size, y - reach * size, 2 * reach * size, 2 * reach * size);
  };
  for (const { line } of veins) pool(lastOf(line), 13, saturations.pulmonaryVein);
  ink.restore();
}
