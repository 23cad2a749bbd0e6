import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import type { LungShape } from "../anatomy/lung-shape.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import { tissue } from "../anatomy/tones.ts";
import { chestFrame } from "../circuit/chest-plan.ts";
import { mix, seeThrough } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type LungSheets, lungSheets } from "./lung-sheets.ts";

/** mm from the root: where the veil begins, and where it is thickest; and how much it hides there. */
const VEIL = { from: 14, to: 52, hides: 0.56 } as const;
/** How much the veil hides of what lies under it at rest, and for each part by which the lungs are wider. */
const SHOWN = { rest: 0.72, perSize: 1.6 } as const;

const { abdomen } = anatomyOf(chestFrame("extracardiac"));

/** What the breath fills. */
const airOf = (theme: Theme): string =>
  theme.name === "dark"
    ? mix(tissue("lung", theme).light, theme.colour.pressure, 0.45)
    : mix("#ffffff", theme.colour.pressure, 0.2);

export function lungAir(): LungSheets {
  const { view, paint, move, release } = lungSheets(1, paintVeil);
  return {
    view,
    paint,
    move(size, fall) {
      move(size, fall);
      view.alpha = Math.min(1, Math.max(0, SHOWN.rest + SHOWN.perSize * (size - 1)));
    },
    release,
  };
}

function paintVeil(ink: Ink, { outline, hilum }: LungShape, theme: Theme): void {
  const air = airOf(theme);
  const fall = ink.createRadialGradient(...hilum, VEIL.from, ...hilum, VEIL.to);
  fall.addColorStop(0, seeThrough(air, 0));
  fall.addColorStop(1, seeThrough(air, VEIL.hides));
  trace(ink, outline, true);
  ink.fillStyle = fall;
  ink.fill();
  // What of the lung lies behind the dome is hidden by it.
  ink.globalCompositeOperation = "destination-out";
  trace(ink, abdomen.diaphragm, true);
  ink.fillStyle = "#000";
  ink.fill();
}
