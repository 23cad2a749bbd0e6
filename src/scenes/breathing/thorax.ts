/** The chest: the circuit's own schematic from close by, with lungs, ribs and diaphragm that move with the breath. */
import { Container, Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { type Bounds, type Ink, sheet } from "../anatomy/painted-sheet.ts";
import { lungsAt } from "../anatomy/standing.ts";
import { drawAirways } from "../circuit/airways.ts";
import type { Laid } from "../circuit/dots.ts";
import { NO_EMPHASIS } from "../circuit/emphasis.ts";
import { flowing, WHOLE } from "../circuit/flowing.ts";
import { overOrgans, paintedChest } from "../circuit/painted-chest.ts";
import { descentAt, sunkAt } from "../circuit/sinking.ts";
import { paintLostEnd } from "../drawing/lost-end.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { drawArrows } from "./arrows.ts";
import { belly } from "./belly.ts";
import { breathEnds, type NamedEnds } from "./breath-end.ts";
import { bronchi } from "./bronchi.ts";
import { chestVessels } from "./chest-vessels.ts";
import { chestWall } from "./chest-wall.ts";
import { heartSeat } from "./heart-seat.ts";
import { drawnLarger, largerOf } from "./larger.ts";
import { lungAir } from "./lung-air.ts";
import { CHEST } from "./torso.ts";

/** Plane units over which the picture clears at its upper and lower end. */
const CLEARS = 84;
const BEYOND = 4;
/** y up, as sheets are painted */
const ENDS: Bounds = [CHEST.left - 16, -CHEST.bottom - BEYOND, CHEST.right + 16, -CHEST.top + BEYOND];

/** Device pixels of a CSS pixel for which the chest is painted. */
const DENSE = 1.25;

/** Where the plane lies in its box, and the vessels on it. */
export interface Shown {
  readonly fit: Fit;
  readonly vessels: readonly Laid[];
  /** the lines of both ends of the breath; null when nothing moves */
  readonly ends: NamedEnds | null;
  /** by which the movement is drawn */
  readonly larger: number;
}

export interface Thorax {
  readonly view: Container;
  draw(circulation: Circulation, time: number, still: boolean, box: Box, theme: Theme): Shown;
  release(): void;
}

function paintEnds(ink: Ink, { colour }: Theme): void {
  const [left, , right] = ENDS;
  for (const [edge, way] of [
    [-CHEST.top, -1],
    [-CHEST.bottom, 1],
  ] as const)
    paintLostEnd(ink, { left, right, edge, seen: edge + way * CLEARS, beyond: BEYOND }, colour.stage);
}

/** Plane units: the larynx, which stays, and a height of the bronchi, which go down with the lungs' roots. */
const AIRWAYS = { stays: 100, goes: [500, 340] } as const;

function stretchDown(airways: Container, fall: number): void {
  const { stays, goes } = AIRWAYS;
  const more = sunkAt(goes, fall) / (goes[1] - stays);
  airways.scale.y = 1 + more;
  airways.y = -stays * more;
}

export function thorax(): Thorax {
  const [view, scene] = [new Container(), new Container()];
  const [mask, arrows, airways] = [new Graphics(), new Graphics(), new Graphics()];
  const clearing = sheet();
  clearing.view.scale.y = -1;
  const [painted, wall, air, vessels] = [paintedChest(), chestWall(), lungAir(), chestVessels()];
  const [ends, seat, bowels, tubes] = [breathEnds(), heartSeat(), belly(), bronchi()];
  painted.organs.mask = wall.mask;
  painted.heart.addChildAt(seat.view, 0);
  painted.underDiaphragm.addChild(
    tubes.view,
    air.view,
    wall.ribs,
    bowels.behind,
    vessels.under,
    airways,
    bowels.before,
  );
  const blood = flowing();
  scene.addChild(
    wall.view,
    wall.mask,
    painted.organs,
    ends.view,
    ...overOrgans(painted, blood, { behind: vessels.back, front: vessels.front }),
    wall.collar,
  );
  scene.mask = mask;
  // The ends reach over the mask's own edge.
  view.addChild(mask, scene, clearing.view, arrows);
  let known: Circulation | null = null;
  let themed: Theme | null = null;
  let laid: readonly Laid[] = [];
  let larger = 1;
  let named: NamedEnds | null = null;
  const drawStanding = (circulation: Circulation, theme: Theme): void => {
    larger = largerOf(circulation.traces);
    laid = vessels.stand(circulation, theme);
    blood.follow(laid, circulation, larger);
    drawAirways(airways.clear(), theme);
    clearing.paint(ENDS, 1, [0, 0], (ink) => paintEnds(ink, theme));
    named = ends.set(circulation, theme);
    mask
      .clear()
      .rect(0, CHEST.top, 1000, CHEST.bottom - CHEST.top)
      .fill(0xffffff);
  };

  return {
    view,
    draw(circulation, time, still, box, theme) {
      const fit = fitInto(box, CHEST);
      view.scale.set(fit.scale);
      view.position.set(fit.x, fit.y);
      if (known !== circulation || themed !== theme) {
        known = circulation;
        themed = theme;
        drawStanding(circulation, theme);
      }
      const density = fit.scale * DENSE;
      vessels.paint(circulation, density, theme);
      wall.paint(density, theme);
      air.paint(density, theme);
      tubes.paint(density, theme);
      seat.paint(circulation.request.stage, density, theme);
      bowels.paint(density, theme);
      // Also in a still picture it is the chest of the moment that the curves mark.
      const size = drawnLarger(lungsAt(circulation, time, false), larger);
      const fall = descentAt(size);
      wall.move(size);
      air.move(size, fall);
      tubes.move(size, fall);
      vessels.move(fall);
      bowels.move(fall);
      stretchDown(airways, fall);
      drawArrows(arrows, circulation, time, theme);
      painted.draw({ circulation, time, still: false, larger, sinks: true }, density, theme);
      blood.move(time, still, theme, NO_EMPHASIS, { ...WHOLE, fall });
      // On a small screen a name may reach over an arm.
      return {
        fit,
        ends: named,
        larger,
        vessels: laid.filter(({ vessel }) => !vessel.name.includes("Limb")),
      };
    },
    release() {
      for (const part of [blood, painted, wall, air, clearing, vessels, seat, bowels, tubes]) part.release();
    },
  };
}
