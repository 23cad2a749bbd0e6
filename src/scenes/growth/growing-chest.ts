/** A look into the chest of a body: the one anatomy around its own pathway, to scale. */
import { Container, Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../sim/geometry/pathways/index.ts";
import { anatomyLayer } from "../anatomy/anatomy-layer.ts";
import "../anatomy/stages/index.ts";
import { servesAt, sheet, trace } from "../anatomy/painted-sheet.ts";
import { standingAt } from "../anatomy/standing.ts";
import { roundOf } from "../anatomy/tones.ts";
import { contour, type Loop } from "../layers/contour.ts";
import { distanceAt, drawnPlane } from "../layers/drawn-plane.ts";
import { WALL } from "../layers/fade.ts";
import { wallLayer } from "../layers/wall.ts";
import type { Theme } from "../theme/theme.ts";
import { saturationsOf } from "../theme/unsolved.ts";
import { type ChestPlace, middleOf } from "./chest-place.ts";

export interface GrowingChest {
  readonly view: Container;
  /** @returns whether it was painted anew, which takes a while */
  draw(point: SweepPoint, place: ChestPlace, moment: Moment, theme: Theme): boolean;
  release(): void;
}

interface Moment {
  /** s of the running clock */
  readonly time: number;
  /** nothing moves */
  readonly still: boolean;
  /** device pixels of a CSS pixel */
  readonly dense: number;
}

/** How much blood tints the lumen in which its marks move. */
const TINT = 0.6;

export function growingChest(): GrowingChest {
  const [view, plane, mask] = [new Container(), new Container(), new Graphics()];
  const layer = anatomyLayer();
  const wall = wallLayer();
  const blood = sheet();
  const { pieces } = layer;
  for (const name of ["rightLung", "leftLung", "back", "abdomen", "inLiver", "atrium"] as const)
    plane.addChild(pieces[name]);
  plane.addChild(layer.ventricle, pieces.veins, wall.below, pieces.hidden, blood.view, wall.above);
  for (const name of ["hiatus", "graft", "remains", "front"] as const) plane.addChild(pieces[name]);
  plane.addChild(layer.valves);
  view.addChild(plane, mask);
  plane.mask = mask;
  let [known, fine] = ["", 0];
  return {
    view,
    draw({ request, circulation }, place, { time, still, dense }, theme) {
      const density = place.perMillimetre * dense;
      const carried = Object.values(circulation?.saturations ?? {}).map(Math.round);
      const key = JSON.stringify([request, carried, theme.name]);
      const anew = key !== known || !servesAt(fine, density);
      if (anew) {
        const geometry = present(pathwayGeometry(request));
        [known, fine] = [key, density];
        const outline = drawnPlane(geometry);
        const lumen = contour(outline, outline.distance, 0);
        const surface = {
          seen: contour(outline, outline.distance, WALL),
          lumen,
          distance: (x: number, y: number) => distanceAt(outline, x, y),
          density,
        };
        layer.set(geometry.chest, circulation, surface, theme);
        wall.set(geometry, outline, theme);
        wall.keep(density);
        const { svc, ivc } = saturationsOf(circulation);
        blood.paint(geometry.bounds, density, [0, 0], (ink) => {
          const [, bottom, , top] = geometry.bounds;
          const tint = ink.createLinearGradient(0, bottom, 0, top);
          tint.addColorStop(0.3, roundOf(ivc, theme).body);
          tint.addColorStop(0.9, roundOf(svc, theme).body);
          ink.fillStyle = tint;
          ink.globalAlpha = TINT;
          for (const loop of lumen) {
            trace(ink, pointsOf(loop), true);
            ink.fill();
          }
        });
        plane.pivot.set(...middleOf(geometry.chest));
      }
      layer.move(standingAt(circulation, time, still));
      plane.scale.set(place.perMillimetre, -place.perMillimetre);
      plane.position.set(place.x, place.y);
      mask.clear().circle(place.x, place.y, place.radius).fill(0xffffff);
      return anew;
    },
    release() {
      layer.release();
      wall.release();
      blood.release();
    },
  };
}

const pointsOf = (loop: Loop): readonly Point[] =>
  Array.from({ length: loop.length / 2 }, (_, i) => [entryAt(loop, 2 * i), entryAt(loop, 2 * i + 1)]);
