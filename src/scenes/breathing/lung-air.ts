/** Air in the lungs: a veil over their vessels, thicker the further from the root, and paler the more air they hold. */
import type { Container } from "pixi.js";
import { present } from "../../sim/checked/present.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { boundsOf, type Ink, servesAt, sheet, trace } from "../anatomy/painted-sheet.ts";
import { tissue } from "../anatomy/tones.ts";
import { CHEST_AT, chestFrame, onPlane } from "../circuit/chest-plan.ts";
import { lungHeight, sunkAt } from "../circuit/sinking.ts";
import { mix, seeThrough } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { inMillimetres } from "./chest-wall.ts";

/** mm from the root: where the veil begins, and where it is thickest; and how much it hides there. */
const VEIL = { from: 14, to: 52, hides: 0.56 } as const;
/** How much the veil hides of what lies under it at rest, and for each part by which the lungs are wider. */
const SHOWN = { rest: 0.72, perSize: 1.6 } as const;

const { lungs, abdomen } = anatomyOf(chestFrame("extracardiac"));

/** What the breath fills. */
const airOf = (theme: Theme): string =>
  theme.name === "dark"
    ? mix(tissue("lung", theme).light, theme.colour.pressure, 0.45)
    : mix("#ffffff", theme.colour.pressure, 0.2);

export interface LungAir {
  readonly view: Container;
  /** @param density device pixels a plane unit */
  paint(density: number, theme: Theme): void;
  /** @param size of the lungs against rest. @param fall plane units by which the dome stands lower */
  move(size: number, fall: number): void;
  release(): void;
}

export function lungAir(): LungAir {
  const sheets = lungs.map(() => sheet());
  const view = inMillimetres(...sheets.map((each) => each.view));
  let painted: { readonly theme: Theme; readonly density: number } | null = null;
  return {
    view,
    paint(density, theme) {
      if (painted?.theme === theme && servesAt(painted.density, density)) return;
      painted = { theme, density };
      lungs.forEach(({ outline, hilum }, i) => {
        const bounds = boundsOf([outline], 1);
        present(sheets[i]).paint(bounds, density * CHEST_AT.scale, hilum, (ink) => {
          paintVeil(ink, outline, hilum, theme);
        });
      });
    },
    move(size, fall) {
      lungs.forEach(({ hilum }, i) => {
        const { view: veil } = present(sheets[i]);
        veil.scale.set(size, lungHeight(size));
        veil.y = hilum[1] - sunkAt(onPlane(hilum), fall) / CHEST_AT.scale;
        veil.alpha = Math.min(1, Math.max(0, SHOWN.rest + SHOWN.perSize * (size - 1)));
      });
    },
    release() {
      for (const each of sheets) each.release();
    },
  };
}

function paintVeil(
  ink: Ink,
  outline: (typeof lungs)[number]["outline"],
  hilum: (typeof lungs)[number]["hilum"],
  theme: Theme,
): void {
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
