/** What shows in a lateral tunnel behind its blood: the atrium's back wall with its muscle ridges, and the inner face of the baffle. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import { beside, type Graft } from "../graft-course.ts";
import { arched } from "../paint-graft.ts";
import { laidOver, scratch } from "../paint-tube.ts";
import { boundsOf, eraseAlong, type Ink, strokes, trace } from "../painted-sheet.ts";
import { CLOTH, type Tissue, tissue } from "../tones.ts";
import { paintRidge } from "./ridges.ts";
import { runningSuture } from "./running-suture.ts";
import { across, crest, lineBehind, weaveOf } from "./tunnel-shape.ts";

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

export function paintTunnelLining(ink: Ink, graft: Graft, size: number, theme: Theme): void {
  const look = insideOf(theme);
  const [free, side] = [across(graft, -1), across(graft, 1)];
  const behind = lineBehind(graft);
  const seam = arched(beside(graft, 1, -1), beside(graft, 1, 1));
  const room = [...free, ...seam, ...[...side].reverse()];
  const bounds = boundsOf([room], 4 * size);
  const own = scratch(ink, bounds);
  trace(own, room, true);
  own.clip();
  own.fillStyle = look.body;
  own.fill();
  paintRidges(own, graft, size, theme);
  soften(own, free, 5 * size, look.shade);
  paintInsideOfCloth(own, graft, size, theme);
  // Below, the atrium's lining goes over into the vein's.
  const [left, bottom] = beside(graft, 0, 0);
  trace(own, room, true);
  eraseAlong(own, [left, bottom + 6 * size], [left, bottom]);
  laidOver(ink, own, bounds);
  strokes(ink, behind, size, [
    [1.5, CLOTH[theme.name].fold],
    [1.1, CLOTH[theme.name].body],
  ]);
  // With that along its cut edge it is one oval; and the artery is sewn to the atrium's roof.
  runningSuture(ink, behind, 1.1 * size, theme);
  runningSuture(ink, seam, 0.8 * size, theme, 0.5);
}

/** Half of a tube: in the light beside its cut edge, in the shade towards its foot. */
function paintInsideOfCloth(ink: Ink, graft: Graft, size: number, theme: Theme): void {
  const [foot, side] = [lineBehind(graft), across(graft, 1)];
  const { body, fold } = CLOTH[theme.name];
  const dark = theme.name === "dark";
  const lit = dark ? mix(body, "#000000", 0.6) : mix(body, fold, 0.1);
  trace(ink, [...foot, ...[...side].reverse()], true);
  ink.save();
  ink.clip();
  ink.fillStyle = lit;
  ink.fill();
  soften(ink, foot, 5 * size, dark ? mix(fold, "#000000", 0.8) : fold);
  soften(ink, side, 1.2 * size, fold);
  ink.globalAlpha = 0.42;
  for (const thread of weaveOf(graft)) strokes(ink, thread, size, [[0.26, dark ? body : fold]]);
  ink.globalAlpha = 1;
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
