/** The way from the window in a chest to the lens that shows it large, and on that the widths of tube and vein. */
import type { Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { pathwaySizes } from "../../sim/geometry/pathways/sizes.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { drawScaleBar } from "../drawing/scale-bar.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { chestOf, type LensPlace, risingIn, seenAt } from "./lens-place.ts";

export interface Circle {
  readonly at: Spot;
  readonly radius: number;
}

/** Corners of the area between the two outer tangents of the circles; the second one is the larger. */
export function wedgeOf(from: Circle, to: Circle): readonly Spot[] {
  const [dx, dy] = [to.at[0] - from.at[0], to.at[1] - from.at[1]];
  const far = Math.hypot(dx, dy) || 1;
  const turn = Math.acos(Math.max(-1, Math.min(1, (from.radius - to.radius) / far)));
  const way = Math.atan2(dy, dx);
  const on = ({ at, radius }: Circle, angle: number): Spot => [
    at[0] + radius * Math.cos(way + angle),
    at[1] + radius * Math.sin(way + angle),
  ];
  return [on(from, turn), on(to, turn), on(to, -turn), on(from, -turn)];
}

export function drawWedge(ink: Graphics, from: Circle, to: Circle, { colour }: Theme): void {
  const [a, b, c, d] = wedgeOf(from, to) as [Spot, Spot, Spot, Spot];
  ink.poly([...a, ...b, ...c, ...d]).fill({ color: colour.inkSoft, alpha: 0.09 });
  ink
    .moveTo(...a)
    .lineTo(...b)
    .moveTo(...c)
    .lineTo(...d)
    .stroke({ color: colour.inkSoft, width: 1, alpha: 0.5 });
}

export const tubeColour = ({ colour }: Theme): string => colour.ink;
export const veinColour = ({ colour }: Theme): string => mix(colour.poor, colour.ink, 0.15);

/** Part of its way at which a tube's width is told, and that of the way from its lower end to the window's at which the vein's is. */
const [TUBE_AT, VEIN_AT] = [0.55, 0.55];

/** Across tube and own vein, as wide as they are. */
export function drawWidths(ink: Graphics, { request }: SweepPoint, lens: LensPlace, theme: Theme): void {
  const { trunk, ivc } = pathwaySizes(request);
  const rising = risingIn(request, lens);
  const { vein } = chestOf(request);
  const [begin, end] = [rising(0), seenAt(request, lens)(vein.centre)];
  const tube = rising(TUBE_AT);
  const bar = (x: number, y: number, millimetres: number, colour: string) => {
    const long = millimetres * lens.perMillimetre;
    const end = Math.min(5, 0.2 * long);
    drawScaleBar(ink, { x, y, long, end: end + 1, width: 3.6 }, theme.colour.stage);
    drawScaleBar(ink, { x, y, long, end, width: 1.6 }, colour);
  };
  bar(tube.x, tube.y, trunk, tubeColour(theme));
  bar(begin.x + VEIN_AT * (end[0] - begin.x), begin.y + VEIN_AT * (end[1] - begin.y), ivc, veinColour(theme));
}
