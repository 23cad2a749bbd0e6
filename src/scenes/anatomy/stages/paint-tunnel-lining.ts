/** What shows in a lateral tunnel behind its blood: the atrium's back wall with its muscle ridges, and the sheet of fabric that was sewn in. */
import type { ChestFrame, Point } from "../../../sim/geometry/geometry.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import { beside, type Graft } from "../graft-course.ts";
import { arched } from "../paint-graft.ts";
import { laidOver, scratch } from "../paint-tube.ts";
import { boundsOf, eraseAlong, type Ink, strokes, trace } from "../painted-sheet.ts";
import { CLOTH, type Tissue, tissue } from "../tones.ts";
import { paintSqueezed } from "./paint-squeezed.ts";
import { paintRidge } from "./ridges.ts";
import { runningSuture } from "./running-suture.ts";
import { across, crest, crosswise, faceOf, holeOf, lengthwise, onSheet, weaveOf } from "./tunnel-shape.ts";

/** The inside of an atrium that is full of blood: pale, so that the blood's marks stand out. */
export function insideOf(theme: Theme): Tissue {
  const { shade, body, light, edge } = tissue("atrium", theme);
  return theme.name === "dark"
    ? {
        shade: mix(shade, "#000000", 0.5),
        body: mix(shade, "#000000", 0.25),
        light: mix(body, shade, 0.5),
        edge,
      }
    : { shade: body, body: mix(light, "#ffffff", 0.6), light: mix(light, "#ffffff", 0.8), edge };
}

export function paintTunnelLining(ink: Ink, { graft, hole, scale: size }: Tunnelled, theme: Theme): void {
  const look = insideOf(theme);
  const [free, side] = [across(graft, -1), across(graft, 1)];
  const seam = arched(beside(graft, 1, -1), beside(graft, 1, 1));
  const room = [...free, ...seam, ...[...side].reverse()];
  const bounds = boundsOf([room], 12 * size);
  const own = scratch(ink, bounds);
  trace(own, room, true);
  own.save();
  own.clip();
  own.fillStyle = look.body;
  own.fill();
  paintRidges(own, graft, size, theme);
  soften(own, free, 5 * size, look.shade);
  soften(own, lengthwise(onSheet(graft, size), -1), 3 * size, look.edge);
  own.restore();
  // Below, the atrium's lining goes over into the vein's.
  const [left, bottom] = beside(graft, 0, 0);
  trace(own, room, true);
  eraseAlong(own, [left, bottom + 6 * size], [left, bottom]);
  laidOver(ink, own, bounds);
  // The artery is sewn to the atrium's roof.
  runningSuture(ink, seam, size, theme, 0.8);
  const cloth = scratch(ink, bounds);
  paintSheet(cloth, graft, size, theme);
  if (hole) {
    // Through it the left atrium is seen.
    const { shade, edge } = tissue("atrium", theme);
    trace(cloth, holeOf(hole, size), true);
    cloth.fillStyle = mix(shade, edge, 0.3);
    cloth.fill();
  }
  laidOver(ink, cloth, bounds, 1.6 * size);
}

type Tunnelled = ChestFrame & { readonly graft: Graft };

/** Strips of which the light on its outside is made. */
const STRIPS = 12;

/** Half of a tube of fabric: hollow towards the blood, in the light beside its cut edge and in the shade towards its foot; and its outside, a round that turns away into the left atrium. */
function paintSheet(ink: Ink, graft: Graft, size: number, theme: Theme): void {
  const sheet = onSheet(graft, size);
  const { body, fold } = CLOTH[theme.name];
  const dark = theme.name === "dark";
  const white = dark ? mix(body, "#000000", 0.2) : mix(body, "#ffffff", 0.5);
  const shade = dark ? mix(fold, "#000000", 0.6) : fold;
  const threads = (side: -1 | 1) => {
    ink.globalAlpha = 0.36;
    for (const thread of weaveOf(sheet, side)) strokes(ink, thread, size, [[0.26, shade]]);
    ink.globalAlpha = 1;
  };
  trace(ink, faceOf(sheet, -1), true);
  ink.save();
  ink.clip();
  ink.fillStyle = white;
  ink.fill();
  soften(ink, lengthwise(sheet, -1), 6 * size, shade);
  threads(-1);
  ink.restore();
  for (let k = 0; k < STRIPS; k++) {
    const from = lengthwise(sheet, k / STRIPS);
    trace(ink, [...from, ...[...lengthwise(sheet, 1)].reverse()], true);
    ink.fillStyle = mix(
      white,
      shade,
      0.25 + 0.7 * Math.max(0, (k / STRIPS - 0.25) / 0.75) ** 1.3 - 0.2 * Math.sin((Math.PI * k) / STRIPS),
    );
    ink.fill();
  }
  threads(1);
  const rim: (readonly [number, string])[] = [
    [2.2, mix(shade, "#000000", 0.3)],
    [1.4, white],
  ];
  strokes(ink, lengthwise(sheet, 1), size, [[0.5, mix(shade, "#000000", 0.3)]]);
  strokes(ink, lengthwise(sheet, -1), size, rim);
  for (const end of [0, 1]) {
    strokes(ink, crosswise(sheet, end, -1), size, rim);
    strokes(ink, crosswise(sheet, end, 1), size, [[0.4, shade]]);
  }
  // One seam goes round it: along its foot, about the mouths of both great veins and back along its front edge.
  runningSuture(ink, outlineOf(sheet), 0.9 * size, theme, 0.85);
}

const outlineOf = (sheet: ReturnType<typeof onSheet>): readonly Point[] => [
  ...[...crosswise(sheet, 0, -1)],
  ...lengthwise(sheet, -1),
  ...[...crosswise(sheet, 1, -1)].reverse(),
];

/** Veins of the right lung behind the tunnel, on their way to the atrium beyond it. */
export function paintThroughTunnel(ink: Ink, anatomy: Anatomy, graft: Graft, theme: Theme): void {
  const sheet = onSheet(graft, anatomy.frame.scale);
  ink.save();
  trace(ink, [...across(graft, -1), ...[...lengthwise(sheet, 1)].reverse()], true);
  ink.clip();
  paintSqueezed(ink, anatomy, () => 0, theme);
  ink.restore();
}

/** Pectinate muscles between the terminal crest and the free wall. */
function paintRidges(ink: Ink, graft: Graft, size: number, theme: Theme): void {
  for (let k = 5; k < 54; k += 5) {
    const root = -0.58 + 0.18 * Math.sin((Math.PI * k) / 60);
    const fork = beside(graft, (k + 1.4) / 60, (root - 1) / 2);
    paintRidge(ink, [fork, beside(graft, (k + 3.6) / 60, -1.04)], 0.9, size, theme);
    paintRidge(
      ink,
      [beside(graft, (k + 2.4) / 60, root), fork, beside(graft, k / 60, -1.04)],
      1.3,
      size,
      theme,
    );
  }
  const [x, y] = beside(graft, 1, -0.6);
  paintRidge(ink, [...crest(graft), [x, y + 5 * size]], 2.3, size, theme);
}

/** Darker towards a line. */
export function soften(ink: Ink, points: readonly Point[], reach: number, colour: string): void {
  ink.globalAlpha = 0.09;
  for (let k = 1; k <= 6; k++) strokes(ink, points, 1, [[(2 * reach * k) / 6, colour]]);
  ink.globalAlpha = 1;
}
