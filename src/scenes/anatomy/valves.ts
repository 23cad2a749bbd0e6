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

/** Half of a leaflet's thickness at its hinge and at its free edge. */
const THICK = [0.6, 0.42] as const;
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
          leaflets
            .poly(thickened(line).flat())
            .fill({ color: look.body })
            .stroke({ color: look.shade, width: 0.26 });
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

/** Outline of a leaflet about its middle line. */
function thickened(line: readonly Point[]): readonly Point[] {
  const sides: [Point[], Point[]] = [[], []];
  line.forEach(([x, y], i) => {
    const [ax, ay] = entryAt(line, Math.max(0, i - 1));
    const [bx, by] = entryAt(line, Math.min(line.length - 1, i + 1));
    const half = (THICK[0] + ((THICK[1] - THICK[0]) * i) / (line.length - 1)) / Math.hypot(bx - ax, by - ay);
    sides[0].push([x - half * (by - ay), y + half * (bx - ax)]);
    sides[1].push([x + half * (by - ay), y - half * (bx - ax)]);
  });
  return [...sides[0], lastOf(line), ...sides[1].reverse()];
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
