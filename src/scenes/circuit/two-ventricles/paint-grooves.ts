/** Fat in the grooves between atria and ventricles, cut across, and the vessels in it. */
import { paintOrgan } from "../../anatomy/paint-organ.ts";
import { type Ink, trace } from "../../anatomy/painted-sheet.ts";
import { roundOf, tissue } from "../../anatomy/tones.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import { GROOVES } from "./heart-plan.ts";

/** Percent in the veins of the muscle, drawn like the body's. */
const VENOUS = 80;

/** Points of its outline from one lobule of fat to the next. */
const LOBULE = 7;

/** Fat with the vessels in it. */
export function paintGrooves(ink: Ink, theme: Theme): void {
  const fat = tissue("fat", theme);
  for (const [groove, vessels] of GROOVES) {
    paintOrgan(ink, groove, { ...fat, light: mix(fat.light, fat.body, 0.5) }, { depth: 1.6, edge: 0.3 });
    // In lobules.
    ink.save();
    trace(ink, groove, true);
    ink.clip();
    ink.lineWidth = 0.3;
    ink.strokeStyle = fat.shade;
    ink.globalAlpha = 0.7;
    groove.forEach(([x, y], i) => {
      if (i % LOBULE > 0) return;
      ink.beginPath();
      ink.arc(x, y, 1.5, 0, 2 * Math.PI);
      ink.stroke();
    });
    ink.restore();
    for (const [[[x, y], across, up], turn, artery] of vessels) {
      const { edge, body } = roundOf(artery ? 98 : VENOUS, theme);
      ink.beginPath();
      ink.ellipse(x, y, across, up, turn, 0, 2 * Math.PI);
      ink.fillStyle = mix(edge, body, 0.6);
      ink.fill();
      ink.lineWidth = artery ? 0.45 : 0.25;
      ink.strokeStyle = edge;
      ink.stroke();
    }
  }
}
