/** A bed of capillaries: fine strands side by side with links between them, which change colour along the way. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { bloodColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { saturationAlong } from "./circuit-blood.ts";
import { type Laid, spread } from "./dots.ts";
import { dimOf, type Emphasis } from "./emphasis.ts";

/** Half of the bed's width that the outermost strands reach, plane units between strands, and between links along them. */
const REACH = 0.46;
const APART = 8;
const LINK = 4;
/** Samples of one colour. */
const PIECE = 4;

export function drawBed(
  ink: Graphics,
  { vessel, line }: Laid,
  circulation: Circulation,
  { colour }: Theme,
  emphasis: Emphasis,
): void {
  const lit = emphasis.lit.has(vessel.name);
  const last = line.x.length - 1;
  const count = Math.max(3, Math.round((2 * REACH * vessel.width) / APART) + 1);
  const tint = (i: number) => {
    const blood = bloodColour(colour, saturationAlong(circulation, vessel, i / last));
    return mix(mix(colour.lumen, blood, lit ? 0.95 : 0.72), colour.stage, dimOf(emphasis, vessel.name));
  };
  const at = (strand: number, i: number): Spot => {
    const near = Math.min(i, last - 1);
    const dx = entryAt(line.x, near + 1) - entryAt(line.x, near);
    const dy = entryAt(line.y, near + 1) - entryAt(line.y, near);
    const step = Math.hypot(dx, dy) || 1;
    // Each winds a little, as capillaries do.
    const across = (2 * strand) / (count - 1) - 1 + 0.1 * Math.sin(0.5 * i + 2.1 * strand);
    const side = across * REACH * vessel.width * spread(vessel, i / last);
    return [entryAt(line.x, i) - (dy / step) * side, entryAt(line.y, i) + (dx / step) * side];
  };
  for (let strand = 0; strand < count; strand++)
    for (let i = 0; i < last; i += PIECE) {
      const to = Math.min(i + PIECE, last);
      ink.moveTo(...at(strand, i));
      // Each piece reaches a little into the next, so that no crack shows where they bend.
      for (let k = i + 1; k <= Math.min(to + 1, last); k++) ink.lineTo(...at(strand, k));
      ink.stroke({ color: tint((i + to) / 2), width: 2.4, join: "miter", cap: "butt" });
      if (strand + 1 < count && (i / PIECE + strand) % 2 === 0 && i + LINK <= last)
        ink
          .moveTo(...at(strand, i))
          .lineTo(...at(strand + 1, i + LINK))
          .stroke({ color: tint(i), width: 1.8, cap: "butt" });
    }
}
