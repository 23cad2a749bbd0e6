/** The atrium of a heart whose atrial septum was excised: the blood of both sides by its oxygen, the pulmonary veins' mouths in the back wall, and the rim that is left of the septum. */
import { lastOf } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { bloodColour, groundColour, mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import type { BloodTube } from "../great-vessels.ts";
import { isCommon } from "../heart-shape.ts";
import type { Saturations } from "../joined.ts";
import { paintMouths } from "../paint-mouths.ts";
import { paintOrgan } from "../paint-organ.ts";
import { castShadow } from "../paint-tube.ts";
import { type Ink, strokes, trace } from "../painted-sheet.ts";
import { placing, smoothLine } from "../placing.ts";
import { roundOf, tissue } from "../tones.ts";
import { paintEustachianValve, paintNeck, paintStump } from "./entering-vein.ts";

/** What an excised septum leaves, the right side's back wall seen aslant, x and y in the heart: its line from the roof down to the floor. */
const ATTACHED: readonly Point[] = [
  [-9, 18],
  [-11.4, 12],
  [-12.8, 5],
  [-13, -3],
  [-11.8, -9],
  [-9, -14.6],
  [-4.6, -19.6],
  [0, -25],
];
/** How far it reaches from there towards the patient's left. */
const SHEET = 15;
/** Its defect: middle, and half of its width and height; right of the aorta, so that nothing lies before it. */
const DEFECT = { middle: [-5.4, -4], half: [4.8, 7.6] } as const;

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
  if (frame.lowerVein) paintNeck(ink, anatomy, groundColour(theme.colour, saturations.arterial), theme);
  const round = roundOf(saturations.pulmonaryVein, theme);
  paintStreams(ink, anatomy, veins, saturations, theme);
  ink.save();
  trace(ink, frame.atrium, true);
  ink.clip();
  paintMouths(ink, veins, round, theme);
  if (frame.lowerVein) paintSeptum(ink, anatomy, saturations, theme);
  ink.restore();
  if (!frame.lowerVein) return;
  paintEustachianValve(ink, anatomy, theme);
  paintStump(ink, anatomy, theme);
}

/** Through the defect the blood from below goes over to the side behind it; its rim is thick. */
function paintSeptum(ink: Ink, anatomy: Anatomy, { ivc, arterial }: Saturations, theme: Theme): void {
  const {
    frame,
    heart: { size },
  } = anatomy;
  const look = tissue("atrium", theme);
  const { inHeart } = placing(frame);
  const placed = (points: readonly Point[]) => points.map((point) => inHeart(...point));
  const attached = smoothLine(placed(ATTACHED));
  const far = smoothLine(placed(ATTACHED.map(([x, y]): Point => [x + SHEET, y])));
  paintOrgan(ink, [...attached, ...far.reverse()], look, { depth: 3 * size, alpha: 0.62, edge: 0 });
  strokes(ink, attached, size, [
    [1.1, look.edge],
    [0.6, look.light],
  ]);
  const rim = defectOf(anatomy);
  ink.save();
  trace(ink, rim, true);
  ink.clip();
  const [x, y] = inHeart(...DEFECT.middle);
  const through = ink.createLinearGradient(x - DEFECT.half[0] * size, y, x + DEFECT.half[0] * size, y);
  through.addColorStop(0, mix(groundColour(theme.colour, ivc), bloodColour(theme.colour, ivc), 0.42));
  through.addColorStop(
    1,
    mix(groundColour(theme.colour, arterial), bloodColour(theme.colour, arterial), 0.14),
  );
  ink.fillStyle = through;
  ink.fill();
  // The near edge's shadow falls on what lies behind it.
  const { a: px, b: turned } = ink.getTransform();
  castShadow(ink, 2.4 * size * Math.hypot(px, turned));
  for (const width of [2.4, 1]) strokes(ink, rim, size, [[width, mix(look.shade, look.body, 0.4)]]);
  ink.restore();
  strokes(ink, rim, size, [[0.4, look.edge]]);
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
  const pool = ([x, y]: Point, reach: number, saturation: number) => {
    const ground = mix(groundColour(theme.colour, saturation), bloodColour(theme.colour, saturation), 0.12);
    const fall = ink.createRadialGradient(x, y, 0, x, y, reach * size);
    for (const [at, alpha] of [
      [0, "e6"],
      [0.55, "b0"],
      [1, "00"],
    ] as const)
      fall.addColorStop(at, ground + alpha);
    ink.fillStyle = fall;
    ink.fillRect(x - reach * size, y - reach * size, 2 * reach * size, 2 * reach * size);
  };
  for (const { line } of veins) pool(lastOf(line), 13, saturations.pulmonaryVein);
  if (frame.lowerVein) {
    pool(inHeart(-9, -18), 20, saturations.ivc);
    pool(inHeart(-13, -3), 15, saturations.ivc);
    pool(inHeart(8, -2), 11, saturations.ivc);
    pool(inHeart(24, -6), 11, saturations.arterial);
  }
  ink.restore();
}
