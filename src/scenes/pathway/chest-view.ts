/** The chest around one pathway: painted again when it changes or the camera has come much closer or gone far, and moved at each drawing. */
import { Container } from "pixi.js";
import type { Pane } from "../../chain/frame.ts";
import type { Distance } from "../../sim/geometry/distance.ts";
import type { ChestFrame, PathwayGeometry } from "../../sim/geometry/geometry.ts";
import { anatomyLayer } from "../anatomy/anatomy-layer.ts";
import { coursesOf } from "../anatomy/courses.ts";
import { servesAt } from "../anatomy/painted-sheet.ts";
import type { PieceName } from "../anatomy/pieces.ts";
import { standingAt } from "../anatomy/standing.ts";
import { distanceAt, type Plane } from "../layers/drawn-plane.ts";
import { surfaceOf } from "../layers/surface.ts";
import { ease } from "../theme/motion.ts";
import type { Theme } from "../theme/theme.ts";
import { carriedOf } from "../theme/unsolved.ts";
import type { Moment } from "./moment.ts";
import { restingWalls } from "./resting-walls.ts";

/** The chest as it is painted, and the pathway that it was painted around. */
export interface SeenChest {
  readonly frame: ChestFrame;
  readonly plane: Plane;
  /** mm from its lumen */
  readonly pathway: Distance;
}

export interface ChestView {
  readonly behind: Container;
  /** what lies behind the pathway, seen through its blood */
  readonly hidden: Container;
  readonly before: Container;
  /**
   * What is seen; null until all of it is painted.
   * @param scale CSS px of a millimetre
   */
  draw(pane: Pane, plane: Plane, scale: number, moment: Moment, theme: Theme): SeenChest | null;
  /** it stands there, whole */
  readonly arrived: boolean;
  /** Beat and breath go on to this moment. */
  move(pane: Pane, moment: Moment): void;
  release(): void;
}

export function chestView(): ChestView {
  const layer = anatomyLayer();
  const [behind, hidden, before] = [new Container(), new Container(), new Container()];
  const { pieces } = layer;
  const of = (names: readonly PieceName[]) => names.map((name) => pieces[name]);
  behind.addChild(...of(["ground", "rightLung", "leftLung", "back", "abdomen", "inLiver", "atrium"]));
  behind.addChild(layer.ventricle, ...of(["rightAtrium", "veins"]));
  hidden.addChild(...of(["hidden", "shining"]));
  before.addChild(...of(["hiatus", "graft", "remains", "front", "passing"]), layer.valves);
  const walls = restingWalls();
  let begun: Begun | null = null;
  let seen: SeenChest | null = null;
  let shade = 0;

  const begin = ({ circulation }: Pane, wanted: Wanted): Begun => {
    const { frame, plane, density, theme } = wanted;
    const paint = layer.begin(frame, circulation, surfaceOf(plane, density), theme);
    return { ...wanted, carried: `${carriedOf(circulation)}`, paint, led: false, shown: false };
  };

  /** Whether all is painted, and shown. */
  const paintOn = (painting: Begun): boolean => {
    if (painting.led) return painting.paint();
    // The ways of blood through it take as long as a piece.
    coursesOf(painting.frame, painting.pathway);
    painting.led = true;
    return false;
  };

  /** Other walls, other colours, or a camera that has come closer or gone far. While colours go on changing each chest is finished before the next. */
  const stale = (now: Begun, pane: Pane, wanted: number, rested: boolean, atOnce: boolean) =>
    now.geometry === pane.geometry
      ? (now.shown || atOnce) &&
        (now.carried !== `${carriedOf(pane.circulation)}` || !servesAt(now.density, wanted))
      : rested;

  return {
    behind,
    hidden,
    before,
    draw(pane, plane, scale, { still, viewport, first }, theme) {
      const { geometry } = pane;
      if (!geometry || first) return null;
      const { elapsed, dense } = viewport;
      const rested = walls.rest(pane, still, elapsed);
      // Another pathway does not stand in the last one's chest, nor in another theme's.
      const other =
        begun === null || begun.theme.name !== theme.name || begun.geometry.name !== geometry.name;
      // Blood that moves does not wait for a chest that has yet to be seen, or that changes.
      const atOnce = still || (other && seen !== null) || !Number.isFinite(elapsed);
      if (!begun || other || stale(begun, pane, scale * dense, rested, atOnce))
        begun = begin(pane, {
          geometry,
          frame: geometry.chest,
          plane,
          pathway: (x, y) => distanceAt(plane, x, y),
          density: scale * dense,
          theme,
        });
      const most = atOnce ? Number.POSITIVE_INFINITY : seen ? 1 : Math.max(1, Math.floor(elapsed / PIECE));
      // While a hand moves the walls on, what was begun rests.
      if (begun.geometry === geometry)
        for (let n = 0; n < most && !begun.shown; n++) begun.shown = paintOn(begun);
      if (begun.shown) seen = begun;
      shade = ease(shade, seen ? 1 : 0, atOnce && shade === 0 ? Number.POSITIVE_INFINITY : elapsed);
      for (const part of [behind, hidden, before]) {
        part.alpha = shade;
        part.visible = shade > 0;
      }
      return seen;
    },
    get arrived() {
      return shade === 1 && begun?.shown === true;
    },
    move({ circulation }, { time, still }) {
      const standing = standingAt(circulation, time, still);
      layer.move(standing);
      layer.sink(standing.lungs);
    },
    release: () => layer.release(),
  };
}

interface Wanted extends SeenChest {
  readonly geometry: PathwayGeometry;
  /** device pixels of a millimetre */
  readonly density: number;
  readonly theme: Theme;
}

/** What is being painted, or has been. */
interface Begun extends Wanted {
  readonly carried: string;
  readonly paint: () => boolean;
  /** how far it has come */
  led: boolean;
  shown: boolean;
}

/** s between two drawings for which one piece more is painted in each: where drawing is slow the first chest is not to come late */
const PIECE = 0.08;
