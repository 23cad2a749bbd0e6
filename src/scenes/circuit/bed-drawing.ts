/** A bed of capillaries: fine strands side by side with links between them, which change colour along the way. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { bloodColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { saturationAlong } from "./circuit-blood.ts";
import { type Laid, placeBetween, spread } from "./dots.ts";
import { dimOf, type Emphasis } from "./emphasis.ts";

/** Half of the bed's width that the outermost strands reach, plane units between strands, and between links along them. */
const REACH = 0.46;
const APART = 8;
const LINK = 4;
/** Plane units between strands from line to line; how wide and how strong a fine one is. */
const NET = 7;
const FINE = { width: 1.5, shown: 0.5 } as const;
/** Plane units by which a strand between two lines winds. */
const WINDING = 3;
/** Samples of one colour. */
const PIECE = 4;

export function drawBed(
  ink: Graphics,
  { vessel, line, between }: Laid,
  circulation: Circulation,
  { colour }: Theme,
  emphasis: Emphasis,
): void {
  const lit = emphasis.lit.has(vessel.name);
  const last = line.x.length - 1;
  const across = between ? Math.max(between[0].length, between[1].length) : 2 * REACH * vessel.width;
  const count = Math.max(3, Math.round(across / (between ? NET : APART)) + 1);
  const thick = (vessel.fine ? FINE.width : between ? 1.9 : 2.4) * (vessel.widened ?? 1);
  const tint = (i: number) => {
    const blood = bloodColour(colour, saturationAlong(circulation, vessel, i / last));
    return mix(
      mix(colour.lumen, blood, lit ? 0.95 : vessel.fine ? FINE.shown : 0.72),
      colour.stage,
      dimOf(emphasis, vessel.name),
    );
  };
  const out = new Float64Array(4);
  const at = (strand: number, i: number): Spot => {
    if (between) {
      placeBetween(between, strand / (count - 1), i / last, out);
      const side = WINDING * Math.sin(Math.PI * Math.min(1, i / last)) * Math.sin(0.9 * i + 2.1 * strand);
      return [entryAt(out, 0) - entryAt(out, 3) * side, entryAt(out, 1) + entryAt(out, 2) * side];
    }
    const near = Math.min(i, last - 1);
    const dx = entryAt(line.x, near + 1) - entryAt(line.x, near);
    const dy = entryAt(line.y, near + 1) - entryAt(line.y, near);
    const step = Math.hypot(dx, dy) || 1;
    // Each winds a little, as capillaries do.
    const place = (2 * strand) / (count - 1) - 1 + 0.1 * Math.sin(0.5 * i + 2.1 * strand);
    const side = place * REACH * vessel.width * spread(vessel, i / last);
    return [entryAt(line.x, i) - (dy / step) * side, entryAt(line.y, i) + (dx / step) * side];
  };
  for (let strand = 0; strand < count; strand++)
    for (let i = 0; i < last; i += PIECE) {
      const to = Math.min(i + PIECE, last);
      ink.moveTo(...at(strand, i));
      // Each piece reaches a little into the next, so that no crack shows where they bend.
      for (let k = i + 1; k <= Math.min(to + 1, last); k++) ink.lineTo(...at(strand, k));
      ink.stroke({ color: tint((i + to) / 2), width: thick, join: "miter", cap: "butt" });
      if (strand + 1 < count && (i / PIECE + strand) % 2 === 0 && i + LINK <= last)
        ink
          .moveTo(...at(strand, i))
          .lineTo(...at(strand + 1, i + LINK))
          .stroke({ color: tint(i), width: 0.75 * thick, cap: "butt" });
    }
}
