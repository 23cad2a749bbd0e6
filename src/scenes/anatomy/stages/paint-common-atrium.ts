/** The atrium of a heart whose atrial septum was excised: the blood of both sides by its oxygen, the pulmonary veins' mouths in the back wall, and the rim that is left of the septum. */
import { lastOf } from "../../../sim/checked/present.ts";
import { line as lineOf, spotAt } from "../../../sim/geometry/centreline.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { bloodColour, groundColour, mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import type { BloodTube } from "../great-vessels.ts";
import type { Saturations } from "../joined.ts";
import { paintOrgan } from "../paint-organ.ts";
import { bandOf } from "../paint-tube.ts";
import { type Ink, strokes, trace } from "../painted-sheet.ts";
import { placing, smoothLine } from "../placing.ts";
import { type Round, roundOf, tissue } from "../tones.ts";
import { paintFold, paintNeck, paintStump } from "./entering-vein.ts";

/** It reaches behind the pathway or to its right. */
export const isCommon = ({ frame }: Pick<Anatomy, "frame">): boolean =>
  Math.min(...frame.atrium.map(([x]) => x)) < frame.heart - 8 * frame.heartScale;

/**
 * The rim that an excised septum leaves, x and y in the heart: from the roof down the back wall to the floor.
 * Towards the patient's left it is cut across; towards the right it bounds the hole.
 */
const FREE: readonly Point[] = [
  [-5, 17],
  [-5.6, 12],
  [-6, 5],
  [-6.2, -3],
  [-5.8, -10],
  [-4.4, -16],
  [-1.6, -20.6],
  [1, -25],
];
const ATTACHED: readonly Point[] = [
  [5.2, -25],
  [2.2, -20.6],
  [-1.6, -17],
  [-4, -11],
  [-4.9, -3],
  [-4.4, 5],
  [-2.6, 12],
  [0.6, 18],
];

export function paintWithin(ink: Ink, anatomy: Anatomy, saturations: Saturations, theme: Theme): void {
  if (!isCommon(anatomy)) return;
  const { frame, heart, behind } = anatomy;
  const look = tissue("atrium", theme);
  const { inHeart } = placing(frame);
  const veins = behind.filter(({ name }) => name.includes("ulmonary"));
  if (frame.lowerVein) paintNeck(ink, anatomy, groundColour(theme.colour, saturations.arterial), theme);
  const round = roundOf(saturations.pulmonaryVein, theme);
  paintStreams(ink, anatomy, veins, saturations, theme);
  ink.save();
  trace(ink, frame.atrium, true);
  ink.clip();
  for (const vein of veins) paintBulge(ink, vein, round);
  for (const vein of veins) paintMouth(ink, vein, round, theme);
  const through = (points: readonly Point[]) => smoothLine(points.map((point) => inHeart(...point)));
  const free = through(FREE);
  paintOrgan(ink, [...free, ...through(ATTACHED)], look, { depth: 2 * heart.size, alpha: 0.9, edge: 0 });
  strokes(ink, free, heart.size, [
    [1.3, look.edge],
    [0.7, look.light],
  ]);
  ink.restore();
  if (!frame.lowerVein) return;
  paintFold(ink, anatomy, theme);
  paintStump(ink, anatomy, theme);
}

/** A vein that runs on the other side of the back wall lifts it. */
function paintBulge(ink: Ink, vein: BloodTube, { body, wall }: Round): void {
  const outline = bandOf(lineOf(vein.line), vein, { part: 1 });
  trace(ink, outline, true);
  ink.globalAlpha = 0.2;
  ink.fillStyle = body;
  ink.fill();
  ink.globalAlpha = 0.16;
  ink.lineWidth = 0.08 * vein.to;
  ink.strokeStyle = wall;
  ink.stroke();
  ink.globalAlpha = 1;
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
    pool(inHeart(-11, -3), 15, saturations.ivc);
  }
  ink.restore();
}

/** A mouth in the back wall, seen from within: the vein comes from behind it. */
function paintMouth(ink: Ink, vein: BloodTube, round: Round, theme: Theme): void {
  const look = tissue("atrium", theme);
  const { at, along } = spotAt(lineOf(vein.line), 1);
  const size = vein.to / 8;
  ink.save();
  ink.translate(...at);
  ink.rotate(Math.atan2(along[1], along[0]));
  ink.beginPath();
  ink.ellipse(0, 0, 2.5 * size, 3.2 * size, 0, 0, 2 * Math.PI);
  const deep = ink.createLinearGradient(-2.5 * size, 0, 2.5 * size, 0);
  deep.addColorStop(0, round.edge);
  deep.addColorStop(0.7, round.body);
  deep.addColorStop(1, mix(round.body, round.light, 0.5));
  ink.fillStyle = deep;
  ink.fill();
  for (const [width, colour] of [
    [1.2, look.edge],
    [0.75, look.light],
  ] as const) {
    ink.lineWidth = width * size;
    ink.strokeStyle = colour;
    ink.stroke();
  }
  ink.restore();
}
