/** A look into the chest of a body: the one anatomy around its own pathway, to scale. */
import { Container, Graphics } from "pixi.js";
import type { SweepPoint } from "../../chain/running-sweep.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { band } from "../../sim/geometry/centreline.ts";
import type { PathwayGeometry, Point } from "../../sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../sim/geometry/pathways/index.ts";
import { anatomyLayer } from "../anatomy/anatomy-layer.ts";
import "../anatomy/stages/index.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { paintGraft, paintJunction, paintSewnBehind } from "../anatomy/paint-graft.ts";
import { type Ink, servesAt, sheet, trace } from "../anatomy/painted-sheet.ts";
import { standingAt } from "../anatomy/standing.ts";
import { inside, roundOf } from "../anatomy/tones.ts";
import { contour, type Loop } from "../layers/contour.ts";
import { drawnPlane } from "../layers/drawn-plane.ts";
import { WALL } from "../layers/fade.ts";
import { wallLayer } from "../layers/wall.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { saturationsOf } from "../theme/unsolved.ts";
import { type ChestPlace, middleOf } from "./chest-place.ts";

export interface GrowingChest {
  readonly view: Container;
  /** @returns whether it was painted anew, which takes a while */
  draw(point: SweepPoint, place: ChestPlace, moment: Moment, theme: Theme): boolean;
  release(): void;
}

export interface Moment {
  /** s of the running clock */
  readonly time: number;
  /** nothing moves */
  readonly still: boolean;
  /** device pixels of a CSS pixel */
  readonly dense: number;
}

/** How much blood tints the lumen in which its marks move. */
const TINT = 0.75;
/** CSS px that a millimetre of fabric, rings and stitches takes at least, or they would not be seen. */
const BOLD = 1.9;

export function growingChest(): GrowingChest {
  const [view, plane] = [new Container(), new Container()];
  const mask = new Graphics().circle(0, 0, 1).fill(0xffffff);
  const layer = anatomyLayer();
  const wall = wallLayer();
  const [blood, sewn] = [sheet(), sheet()];
  const { pieces } = layer;
  for (const name of ["rightLung", "leftLung", "back", "abdomen", "inLiver", "atrium"] as const)
    plane.addChild(pieces[name]);
  plane.addChild(layer.ventricle, pieces.veins, wall.below, pieces.hidden, blood.view, wall.above);
  plane.addChild(pieces.hiatus, pieces.graft, sewn.view, pieces.remains, pieces.front, layer.valves);
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
          density,
        };
        layer.set(geometry.chest, circulation, surface, theme);
        wall.set(geometry, outline, theme);
        wall.keep(density);
        const { chest } = geometry;
        const middle = middleOf(chest);
        const reach = place.radius / place.perMillimetre;
        const seen = [middle[0] - reach, middle[1] - reach, middle[0] + reach, middle[1] + reach] as const;
        const bold = { ...chest, scale: Math.max(chest.scale, BOLD / place.perMillimetre) };
        blood.paint(seen, density, [0, 0], (ink) => {
          paintBlood(ink, geometry, circulation, lumen, theme);
          // Twice: a graft is to be told from a vein at a glance.
          for (const _ of [0, 1]) paintSewnBehind(ink, bold, theme);
        });
        // A conduit with its joint is painted here, bolder than the chest's own piece has it.
        const conduit = chest.graft?.kind === "conduit" ? chest.graft : null;
        pieces.graft.visible = conduit === null;
        sewn.paint(seen, density, [0, 0], (ink) => {
          if (!conduit) return;
          paintGraft(ink, conduit, bold.scale, theme);
          if (chest.junction) paintJunction(ink, chest.junction, bold.scale, theme);
        });
        plane.pivot.set(...middle);
      }
      layer.move(standingAt(circulation, time, still));
      plane.scale.set(place.perMillimetre, -place.perMillimetre);
      plane.position.set(place.x, place.y);
      mask.position.set(place.x, place.y);
      mask.scale.set(place.radius);
      return anew;
    },
    release() {
      layer.release();
      wall.release();
      blood.release();
      sewn.release();
    },
  };
}

/** The blood of the pathway and of the veins that feed it, from below upwards. */
function paintBlood(
  ink: Ink,
  { bounds: [, bottom, , top], chest }: PathwayGeometry,
  circulation: Circulation | null,
  lumen: readonly Loop[],
  theme: Theme,
): void {
  const { svc, ivc } = saturationsOf(circulation);
  const tint = ink.createLinearGradient(0, bottom, 0, top);
  for (const [at, saturation] of [
    [0.4, ivc],
    [0.9, svc],
  ] as const)
    tint.addColorStop(at, mix(inside(theme).body, roundOf(saturation, theme).body, TINT));
  ink.fillStyle = tint;
  const veins = anatomyOf(chest).veins.filter(({ group }) => group === "brachiocephalic" || group === "cava");
  for (const outline of [
    ...lumen.map(pointsOf),
    ...veins.map(({ line, from, to }) => band(line, from, to)),
  ]) {
    trace(ink, outline, true);
    ink.fill();
  }
}

const pointsOf = (loop: Loop): readonly Point[] =>
  Array.from({ length: loop.length / 2 }, (_, i) => [entryAt(loop, 2 * i), entryAt(loop, 2 * i + 1)]);
