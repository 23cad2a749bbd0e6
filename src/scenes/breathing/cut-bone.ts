/** A bone in section: a firm rim around what is spongy. */
import type { Point } from "../../sim/geometry/geometry.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** mm */
const RIM = 0.55;

/** @param outline of the section, by so many mm smaller */
export function paintCutBone(ink: Ink, outline: (rim: number) => readonly Point[], theme: Theme): void {
  const bone = legTissue("bone", theme);
  for (const [rim, color] of [
    [-0.25, bone.edge],
    [0, bone.light],
    [RIM, mix(bone.shade, bone.body, 0.6)],
  ] as const) {
    trace(ink, outline(rim), true);
    ink.fillStyle = color;
    ink.fill();
  }
}
