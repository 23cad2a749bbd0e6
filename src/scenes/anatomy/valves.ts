/** The heart's valves: leaflets that bend from their hinges, and cords from those of the inlet to the papillary muscles. */
import { Container, Graphics } from "pixi.js";
import { entryAt, lastOf, present } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import { PAPILLARY } from "./heart-shape.ts";
import { LEAFLETS, type Leaflet, leafletLine } from "./leaflets.ts";
import { smoothLine } from "./placing.ts";
import type { Standing } from "./standing.ts";
import { type Tissue, tissue } from "./tones.ts";

/** In the ventricle's own lengths, in its frame: x along the axis, y across. */
export interface Valves {
  readonly view: Container;
  set(theme: Theme): void;
  move(standing: Standing): void;
}

/** A leaflet's thickness, with its edges and within them. */
const THICK = [1.3, 0.85] as const;
/** and of the free edge of one that is not cut */
const FREE_EDGE = [0.75, 0.4] as const;
/** Radius of the nodule in the middle of a cusp's free edge. */
const NODULE = 0.55;
/** Parts of a free edge from which a sheet's folds run to where it hangs. */
const FOLDS = [0.3, 0.5, 0.7];
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
        drawLeaflet(leaflets, leaflet, line, look);
        if (leaflet.valve === "semilunar") {
          // The nodule where the three cusps meet; against the wall it is no more than a thickening.
          leaflets
            .circle(...lastOf(leaflet.hangs ? line.slice(0, (line.length >> 1) + 1) : line), NODULE)
            .fill({ color: look.body, alpha: 1 - standing.semilunar });
          continue;
        }
        hold(cords, line, side);
        side = 1;
      }
      cords.stroke({ width: 0.3, color: look.edge, alpha: 0.85 });
    },
  };
}

/** A leaflet that is cut as the thickness of its tissue, one that is seen from its face as a sheet with a firm free edge; most are both. */
function drawLeaflet(
  ink: Graphics,
  { valve, hangs, beside }: Leaflet,
  line: readonly Point[],
  look: Tissue,
): void {
  const wall = smoothLine(present(hangs ?? beside), 4);
  const edge = valve === "atrioventricular" ? freeEdge(line, entryAt(wall, 0)) : [];
  ink
    .poly([...line, ...edge, ...wall].flat())
    .fill({ color: look.body, alpha: 0.62 })
    .stroke({ color: look.shade, width: 0.25, alpha: 0.75 });
  const rim = hangs ? line : edge;
  if (rim.length > 0)
    for (const part of FOLDS) {
      const [at, foot] = [entryAt(rim, Math.round(part * (rim.length - 1))), wallAt(wall, 1 - part)];
      ink
        .moveTo(...at)
        .lineTo(at[0] + 0.6 * (foot[0] - at[0]), at[1] + 0.6 * (foot[1] - at[1]))
        .stroke({ color: look.shade, width: 0.2, alpha: 0.3 });
    }
  (hangs ? FREE_EDGE : THICK).forEach((width, i) => {
    ink
      .poly(line.flat(), false)
      .stroke({ color: i ? look.body : look.shade, width, cap: "round", join: "round" });
  });
}

/** From the tip of one that is cut back to its commissure: longest in its middle, it hangs out between the two. */
function freeEdge(line: readonly Point[], commissure: Point): readonly Point[] {
  const [[hx, hy], tip] = [entryAt(line, 0), lastOf(line)];
  const [x, y] = [(tip[0] + commissure[0]) / 2, (tip[1] + commissure[1]) / 2];
  return smoothLine([tip, [x + 0.16 * (x - hx), y + 0.16 * (y - hy)], commissure], 6);
}

const wallAt = (wall: readonly Point[], part: number): Point =>
  entryAt(wall, Math.round(part * (wall.length - 1)));

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
