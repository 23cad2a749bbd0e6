/** The rings of a conduit across the vessel that it is, thin enough for its blood to be seen. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { CLOTH } from "../anatomy/tones.ts";
import { placeOn } from "../drawing/curve-drawing.ts";
import type { Theme } from "../theme/theme.ts";
import type { Laid } from "./dots.ts";

/** Plane units from one ring to the next, and how far each bows, of the width. */
const PITCH = 11;
const BOW = 0.16;
const SEEN = 0.5;

/** @param sewn which part of its way the conduit is */
export function drawRings(
  ink: Graphics,
  { vessel, line }: Laid,
  [from, to]: readonly [number, number],
  theme: Theme,
): void {
  const at = new Float64Array(4);
  const half = vessel.width / 2;
  const count = Math.round(((to - from) * line.length) / PITCH);
  for (let k = 1; k < count; k++) {
    placeOn(line, from + ((to - from) * k) / count, at);
    const [x, y, dx, dy] = [entryAt(at, 0), entryAt(at, 1), entryAt(at, 2), entryAt(at, 3)];
    ink
      .moveTo(x - dy * half, y + dx * half)
      .quadraticCurveTo(
        x - dx * 2 * BOW * half * 2,
        y - dy * 2 * BOW * half * 2,
        x + dy * half,
        y - dx * half,
      )
      .stroke({ color: CLOTH[theme.name].body, width: 2.2, alpha: SEEN });
  }
}
