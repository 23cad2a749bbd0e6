/** What shows in a lateral tunnel behind its blood: the atrium's back wall with its muscle ridges, and the inner face of the baffle. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import { beside, type Graft } from "../paint-graft.ts";
import { type Ink, strokes, trace } from "../painted-sheet.ts";
import { CLOTH, type Tissue, tissue } from "../tones.ts";
import { runningSuture } from "./running-suture.ts";
import { across, crest, lineBehind } from "./tunnel-shape.ts";

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
  ink.save();
  trace(ink, [...free, ...[...side].reverse()], true);
  ink.clip();
  ink.fillStyle = look.body;
  ink.fill();
  paintRidges(ink, graft, size, look);
  soften(ink, free, 5 * size, look.shade);
  const { body, fold } = CLOTH[theme.name];
  trace(ink, [...behind, ...[...side].reverse()], true);
  ink.clip();
  ink.fillStyle = theme.name === "dark" ? mix(body, "#000000", 0.62) : body;
  ink.fill();
  soften(ink, side, 4 * size, fold);
  soften(ink, behind, 1.6 * size, fold);
  ink.restore();
  runningSuture(ink, behind, size, theme, 0.4);
}

/** Pectinate muscles between the terminal crest and the free wall. */
function paintRidges(ink: Ink, graft: Graft, size: number, { shade, light }: Tissue): void {
  const ridge = (points: readonly Point[], width: number) =>
    strokes(ink, points, size, [
      [width, mix(shade, light, 0.45)],
      [0.6 * width, light],
    ]);
  for (let k = 5; k < 52; k += 4)
    ridge([beside(graft, k / 60, -1), beside(graft, (k + 3) / 60, -0.56 + 0.06 * (k % 3))], 1.5);
  ridge(crest(graft), 2.2);
}

/** Darker towards a line. */
export function soften(ink: Ink, points: readonly Point[], reach: number, colour: string): void {
  ink.globalAlpha = 0.09;
  for (let k = 1; k <= 6; k++) strokes(ink, points, 1, [[(2 * reach * k) / 6, colour]]);
  ink.globalAlpha = 1;
}
