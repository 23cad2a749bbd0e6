/** What is painted of each lung by itself, and goes with it as it fills. */
import type { Container } from "pixi.js";
import { present } from "../../sim/checked/present.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import type { LungShape } from "../anatomy/lung-shape.ts";
import { boundsOf, type Ink, servesAt, sheet } from "../anatomy/painted-sheet.ts";
import { CHEST_AT, chestFrame, onPlane } from "../circuit/chest-plan.ts";
import { lungHeight, sunkAt } from "../circuit/sinking.ts";
import type { Theme } from "../theme/theme.ts";
import { inMillimetres } from "./chest-wall.ts";

const { lungs } = anatomyOf(chestFrame("extracardiac"));

export interface LungSheets {
  readonly view: Container;
  /** @param density device pixels a plane unit */
  paint(density: number, theme: Theme): void;
  /** @param size of the lungs against rest. @param fall plane units by which the dome stands lower */
  move(size: number, fall: number): void;
  release(): void;
}

/** @param reach mm beyond a lung's outline that is painted */
export function lungSheets(
  reach: number,
  paintOne: (ink: Ink, lung: LungShape, theme: Theme) => void,
): LungSheets {
  const sheets = lungs.map(() => sheet());
  const view = inMillimetres(...sheets.map((each) => each.view));
  let painted: { readonly theme: Theme; readonly density: number } | null = null;
  return {
    view,
    paint(density, theme) {
      if (painted?.theme === theme && servesAt(painted.density, density)) return;
      painted = { theme, density };
      lungs.forEach((lung, i) => {
        const bounds = boundsOf([lung.outline], reach);
        present(sheets[i]).paint(bounds, density * CHEST_AT.scale, lung.hilum, (ink) => {
          paintOne(ink, lung, theme);
        });
      });
    },
    move(size, fall) {
      lungs.forEach(({ hilum }, i) => {
        const { view: one } = present(sheets[i]);
        one.scale.set(size, lungHeight(size));
        one.y = hilum[1] - sunkAt(onPlane(hilum), fall) / CHEST_AT.scale;
      });
    },
    release() {
      for (const each of sheets) each.release();
    },
  };
}
