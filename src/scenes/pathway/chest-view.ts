/** The chest around one pathway: painted anew when it changes or the camera has come much closer or gone far, and moved at each drawing. */
import { Container } from "pixi.js";
import type { Pane } from "../../chain/frame.ts";
import type { PathwayGeometry } from "../../sim/geometry/geometry.ts";
import { anatomyLayer } from "../anatomy/anatomy-layer.ts";
import { standingAt } from "../anatomy/standing.ts";
import { contour } from "../layers/contour.ts";
import type { Plane } from "../layers/drawn-plane.ts";
import { WALL } from "../layers/fade.ts";
import type { Theme } from "../theme/theme.ts";
import type { Moment } from "./moment.ts";

/** Factor in size within which a painted chest serves. */
const CLOSE_ENOUGH = 1.25;

export interface ChestView {
  readonly behind: Container;
  readonly before: Container;
  /** @param scale CSS px of a millimetre */
  draw(pane: Pane, plane: Plane, scale: number, moment: Moment, theme: Theme): void;
  release(): void;
}

export function chestView(): ChestView {
  const layer = anatomyLayer();
  const [behind, before] = [new Container(), new Container()];
  const { rightLung, leftLung, back, abdomen, atrium, veins, front } = layer.pieces;
  behind.addChild(rightLung, leftLung, back, abdomen, atrium, layer.ventricle, veins);
  before.addChild(front, layer.valves);
  let painted = 0;
  let known: PathwayGeometry | null = null;
  let look = "";
  return {
    behind,
    before,
    draw({ geometry, circulation }, plane, scale, { time, still, viewport }, theme) {
      if (!geometry) return;
      const density = scale * viewport.dense;
      const carried = Object.values(circulation?.saturations ?? {}).map(Math.round);
      const key = `${theme.name} ${carried}`;
      if (geometry !== known || key !== look) painted = 0;
      if (painted === 0 || density / painted > CLOSE_ENOUGH || painted / density > CLOSE_ENOUGH) {
        painted = density;
        known = geometry;
        look = key;
        const seen = contour(plane, plane.distance, WALL);
        layer.set(geometry.chest, circulation, { seen, density }, theme);
      }
      layer.move(standingAt(circulation, time, still));
    },
    release: () => layer.release(),
  };
}
