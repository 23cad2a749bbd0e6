/** Veins of the right lung that pass behind an opened atrium: they shine through its back wall. */
import { line as lineOf, spotAt } from "../../../sim/geometry/centreline.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import { returning } from "../great-vessels.ts";
import { type Ink, strokes, trace } from "../painted-sheet.ts";
import { tissue } from "../tones.ts";

/** By how much a filled chamber flattens a vein that passes behind its middle. */
const SQUEEZED = 0.5;

/** By their outline; behind fabric by its edges alone. @param depth of the chamber's blood before a place, 1 in its middle */
export function paintSqueezed(
  ink: Ink,
  anatomy: Anatomy,
  depth: (place: Point) => number,
  theme: Theme,
  fill = 0.16,
): void {
  const s = anatomy.frame.scale;
  const look = tissue("atrium", theme);
  // Fabric is paler than a wall that lies in the dark.
  const edge = fill === 0 && theme.name === "dark" ? look.shade : look.edge;
  for (const vein of returning(anatomy)) {
    const whole = lineOf(vein.line);
    const sides = ([1, -1] as const).map((sign) =>
      whole.points.map(([x, y], i): Point => {
        const { left } = spotAt(whole, i / (whole.points.length - 1));
        const reach = (sign * vein.from * (1 - SQUEEZED * Math.sqrt(Math.max(0, depth([x, y]))))) / 2;
        return [x + reach * left[0], y + reach * left[1]];
      }),
    );
    const [over = [], below = []] = sides;
    trace(ink, [...over, ...[...below].reverse()], true);
    ink.globalAlpha = fill;
    ink.fillStyle = theme.colour.rich;
    ink.fill();
    ink.globalAlpha = 0.55;
    ink.setLineDash([1.8 * s, 1.4 * s]);
    for (const side of sides) strokes(ink, side, s, [[0.55, edge]]);
    ink.setLineDash([]);
    ink.globalAlpha = 1;
  }
}
