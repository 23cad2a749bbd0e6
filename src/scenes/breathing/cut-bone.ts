/** A bone cut across: marrow within its firm rim. */
import type { Ink } from "../anatomy/painted-sheet.ts";
import { legTissue } from "../calf/leg-tones.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

/** mm: its middle, and half its axes; and radians by which it leans */
type Cut = Readonly<Record<"x" | "y" | "wide" | "high" | "lean", number>>;

export function paintCutBone(ink: Ink, { x, y, wide, high, lean }: Cut, theme: Theme): void {
  const bone = legTissue("bone", theme);
  for (const [rim, color] of [
    [0, bone.edge],
    [0.45, bone.light],
    [1.15, mix(bone.shade, bone.body, 0.5)],
  ] as const) {
    ink.beginPath();
    ink.ellipse(x, y, wide - rim, high - rim, lean, 0, 2 * Math.PI);
    ink.fillStyle = color;
    ink.fill();
  }
}
