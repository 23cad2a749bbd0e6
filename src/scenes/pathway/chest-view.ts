/** The chest around one pathway: painted again when it changes or the camera has come much closer or gone far, and moved at each drawing. */
import { Container } from "pixi.js";
import type { Pane } from "../../chain/frame.ts";
import type { PathwayGeometry } from "../../sim/geometry/geometry.ts";
import { anatomyLayer } from "../anatomy/anatomy-layer.ts";
import { servesAt } from "../anatomy/painted-sheet.ts";
import { standingAt } from "../anatomy/standing.ts";
import type { Plane } from "../layers/drawn-plane.ts";
import { surfaceOf } from "../layers/surface.ts";
import { ease } from "../theme/motion.ts";
import type { Theme } from "../theme/theme.ts";
import { carriedOf } from "../theme/unsolved.ts";
import type { Moment } from "./moment.ts";

export interface ChestView {
  readonly behind: Container;
  /** what lies behind the pathway, seen through its blood */
  readonly hidden: Container;
  readonly before: Container;
  /**
   * Whether all of it is painted.
   * @param scale CSS px of a millimetre
   */
  draw(pane: Pane, plane: Plane, scale: number, moment: Moment, theme: Theme): boolean;
  release(): void;
}

export function chestView(): ChestView {
  const layer = anatomyLayer();
  const [behind, before] = [new Container(), new Container()];
  const {
    ground,
    rightLung,
    leftLung,
    back,
    abdomen,
    inLiver,
    atrium,
    veins,
    hidden,
    hiatus,
    remains,
    graft,
    front,
    passing,
  } = layer.pieces;
  behind.addChild(ground, rightLung, leftLung, back, abdomen, inLiver, atrium, layer.ventricle, veins);
  before.addChild(hiatus, graft, remains, front, passing, layer.valves);
  let painted: Painted | null = null;
  let last: PathwayGeometry | null = null;
  let calm = 0;
  /** null while there is nothing more to paint */
  let paintNext: (() => boolean) | null = null;
  let shade = 0;

  const show = (elapsed: number) => {
    shade = ease(shade, paintNext ? 0 : 1, elapsed);
    for (const part of [behind, hidden, before]) {
      part.alpha = shade;
      part.visible = shade > 0;
    }
  };

  /** A wall that is being dragged is another geometry at each drawing: its chest follows when the hand rests. */
  const isDue = (geometry: PathwayGeometry, look: string, density: number): boolean => {
    if (!painted || painted.look !== look || painted.geometry.name !== geometry.name) return true;
    if (painted.geometry !== geometry) return calm >= REST;
    return !servesAt(painted.density, density);
  };

  return {
    behind,
    hidden,
    before,
    draw({ geometry, circulation }, plane, scale, { time, still, viewport, first }, theme) {
      if (!geometry || first) return false;
      calm = geometry === last ? calm + viewport.elapsed : 0;
      last = geometry;
      const density = scale * viewport.dense;
      const look = `${theme.name} ${carriedOf(circulation)}`;
      if (isDue(geometry, look, density)) {
        painted = { geometry, look, density };
        const surface = surfaceOf(plane, density);
        paintNext = layer.begin(geometry.chest, circulation, surface, theme);
      }
      // Blood that moves does not wait for a chest that has yet to be seen.
      const atOnce = still || shade > 0 || !Number.isFinite(viewport.elapsed);
      const most = atOnce ? Number.POSITIVE_INFINITY : Math.max(1, Math.floor(viewport.elapsed / PIECE));
      for (let n = 0; paintNext && n < most; n++) if (paintNext()) paintNext = null;
      show(atOnce && shade === 0 ? Number.POSITIVE_INFINITY : viewport.elapsed);
      const standing = standingAt(circulation, time, still);
      layer.move(standing);
      layer.sink(standing.lungs);
      return paintNext === null;
    },
    release: () => layer.release(),
  };
}

interface Painted {
  readonly geometry: PathwayGeometry;
  readonly look: string;
  readonly density: number;
}

/** s between two drawings for which one piece more is painted in each: where drawing is slow the chest is not to come late */
const PIECE = 0.08;

/** s without another geometry after which the chest is painted again */
const REST = 0.2;
