/** The closed walls of lymph vessels: flat cells edge to edge, and about the collecting one a layer of muscle. */
import type { Ink } from "../anatomy/painted-sheet.ts";
import { tissue } from "../anatomy/tones.ts";
import type { Curve, Spot } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { tissueTone } from "./tissue-tones.ts";
import { beside, fillTube, headingAt, type Side } from "./tube.ts";

/** A vessel; plane units, at a part of its way. */
export interface Walled {
  readonly line: Curve;
  readonly half: (part: number) => number;
  /** how much of its wall is closed there, 0 to 1 */
  readonly closed: (part: number, side: Side) => number;
  readonly muscle: (part: number) => number;
}

/** Plane units: thickness of the cells and of the muscle, and from one cell's middle to the next. */
const [CELLS, MUSCLE] = [10, 11];
const [CELL, FIBRE] = [104, 62];

/** All vessels layer by layer, so that where they join their walls are one; what lies within another's is covered by its inside. */
export function paintWalls(ink: Ink, vessels: readonly Walled[], theme: Theme): void {
  const lymph = tissueTone("lymph", theme);
  const cell = tissueTone("endothelium", theme);
  const nucleus = tissueTone("nucleus", theme);
  const muscle = tissue("muscle", theme);
  const layer = (more: (each: Walled, part: number, side: Side) => number, colour: string) => {
    for (const each of vessels)
      fillTube(
        ink,
        each.line,
        (part, side) => {
          const closed = each.closed(part, side);
          return closed > 0 ? each.half(part) + closed * more(each, part, side) : 0;
        },
        colour,
      );
  };
  const outer = (each: Walled, part: number) => CELLS + MUSCLE * each.muscle(part);
  layer((each, part) => outer(each, part) + 2, mix(cell.edge, lymph.edge, 0.4));
  layer(outer, mix(muscle.body, cell.body, 0.35));
  for (const each of vessels)
    along(each, FIBRE, (part, side) => {
      if (each.muscle(part) < 1 || each.closed(part, side) < 1) return;
      const at = beside(each.line, part, side * (each.half(part) + CELLS + MUSCLE / 2));
      const turn = headingAt(each.line, part) + 0.14 * side;
      oval(ink, at, [30, 4.4], turn, [muscle.light, muscle.shade]);
      oval(ink, at, [8, 2.4], turn, [nucleus.body, nucleus.shade]);
    });
  layer(() => CELLS, mix(cell.edge, lymph.edge, 0.4));
  layer(() => CELLS - 1.6, mix(cell.body, lymph.light, 0.25));
  for (const each of vessels)
    along(each, CELL, (part, side) => {
      if (each.closed(part, side) < 1) return;
      const off = each.half(part) + CELLS / 2 - 0.5;
      const turn = headingAt(each.line, part);
      oval(ink, beside(each.line, part, side * off), [17, 3.9], turn, [nucleus.body, nucleus.edge]);
      // Where it meets the next one.
      const end = part + CELL / 2 / each.line.length;
      if (end > 1) return;
      ink.beginPath();
      ink.moveTo(...beside(each.line, end, side * each.half(end)));
      ink.lineTo(...beside(each.line, end, side * (each.half(end) + CELLS)));
      ink.lineWidth = 2;
      ink.strokeStyle = cell.edge;
      ink.stroke();
    });
  layer(() => 1.2, lymph.edge);
}

/** On both sides, those of one against the gaps of the other. */
function along({ line }: Walled, step: number, paint: (part: number, side: Side) => void): void {
  for (const side of [-1, 1] as const)
    for (let from = step * (side < 0 ? 0.5 : 1); from < line.length; from += step)
      paint(from / line.length, side);
}

function oval(
  ink: Ink,
  [x, y]: Spot,
  [a, b]: Spot,
  turn: number,
  [colour, edge]: readonly [string, string],
): void {
  ink.beginPath();
  ink.ellipse(x, y, a, b, turn, 0, 2 * Math.PI);
  ink.fillStyle = colour;
  ink.fill();
  ink.lineWidth = 1.2;
  ink.strokeStyle = edge;
  ink.stroke();
}
