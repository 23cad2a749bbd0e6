/** The heart's valves: leaflets that bend from their hinges, and cords from those of the inlet to the papillary muscles. */
import { Container, Graphics } from "pixi.js";
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import { PAPILLARY } from "./heart-shape.ts";
import { LEAFLETS, leafletLine } from "./leaflets.ts";
import { smoothLine } from "./placing.ts";
import type { Standing } from "./standing.ts";
import { tissue } from "./tones.ts";

/** In the ventricle's own lengths, in its frame: x along the axis, y across. */
export interface Valves {
  readonly view: Container;
  set(theme: Theme): void;
  move(standing: Standing): void;
}

/** A leaflet's thickness, with its edges and within them. */
const THICK = [1.3, 0.85] as const;
/** From which parts of a leaflet cords run to the papillary muscle of its own side, and to the other one. */
const CORDS = [
  [0.98, 0.86, 0.7],
  [0.92, 0.78],
] as const;

export function valves(): Valves {
  const view = new Container();
  const [cords, leaflets] = [new Graphics(), new Graphics()];
  view.addChild(leaflets, cords);
  let [look, drawn] = [tissue("valve", { name: "light" }), ""];
  return {
    view,
    set(theme) {
      look = tissue("valve", theme);
      drawn = "";
    },
    move(standing) {
      const key = `${standing.atrioventricular} ${standing.semilunar}`;
      if (key === drawn) return;
      drawn = key;
      cords.clear();
      leaflets.clear();
      let side: 0 | 1 = 0;
      for (const leaflet of LEAFLETS) {
        const line = leafletLine(leaflet, standing);
        if (leaflet.hangs)
          leaflets
            .poly([...line, ...smoothLine(leaflet.hangs, 4)].flat())
            .fill({ color: look.body, alpha: 0.5 })
            .stroke({ color: look.shade, width: 0.22, alpha: 0.7 });
        else
          THICK.forEach((width, i) => {
            leaflets
              .poly(line.flat(), false)
              .stroke({ color: i ? look.body : look.shade, width, cap: "round", join: "round" });
          });
        if (leaflet.valve === "semilunar") {
          // The nodule where the three cusps meet.
          leaflets
            .circle(...lastOf(leaflet.hangs ? line.slice(0, (line.length >> 1) + 1) : line), 0.55)
            .fill({ color: look.body });
          continue;
        }
        hold(cords, line, side);
        side = 1;
      }
      cords.stroke({ width: 0.3, color: look.edge, alpha: 0.85 });
    },
  };
}

/** Each leaflet is held by both muscles, most of all by its own; each cord ends at a place of its own on a muscle's head. */
function hold(cords: Graphics, line: readonly Point[], side: 0 | 1): void {
  CORDS.forEach((parts, other) => {
    const [x, y] = entryAt(PAPILLARY, other ? 1 - side : side);
    parts.forEach((part, k) => {
      const at = entryAt(line, Math.round(part * (line.length - 1)));
      cords.moveTo(...at).lineTo(x - 2.3, y + 0.9 * (k - 1) + (other ? (side ? 1 : -1) : 0) * 0.5);
    });
  });
}
