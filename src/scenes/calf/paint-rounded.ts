/** A part of a limb, lit along its middle: bands that grow lighter inward. */
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import type { Tissue } from "../anatomy/tones.ts";
import { mix } from "../theme/colour.ts";
import { along, outlineOf, type Part } from "./rounded.ts";

const BANDS = 26;
/** Where across the light falls, from the left border to the right one. */
const LIT = 0.4;

/** @param edge plane units of the line around it */
export function paintRounded(ink: Ink, part: Part, tones: Tissue, edge: number): void {
  for (let k = 0; k < BANDS; k++) {
    const depth = k / (BANDS - 1);
    const inward = 0.9 * depth;
    trace(
      ink,
      outlineOf({ left: along(part, LIT * inward), right: along(part, 1 - (1 - LIT) * inward) }),
      true,
    );
    ink.fillStyle =
      depth < 0.55
        ? mix(tones.shade, tones.body, depth / 0.55)
        : mix(tones.body, tones.light, (depth - 0.55) / 0.45);
    ink.fill();
  }
  trace(ink, outlineOf(part), true);
  ink.lineWidth = edge;
  ink.strokeStyle = tones.edge;
  ink.stroke();
}
