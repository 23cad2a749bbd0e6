/** The chest: the circuit's own schematic from close by, with lungs, ribs and diaphragm that move with the breath. */
import { Container, Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { wordSetting } from "../../sim/parameters/parameters.ts";
import { type Bounds, type Ink, sheet } from "../anatomy/painted-sheet.ts";
import { lungsAt } from "../anatomy/standing.ts";
import { vesselsOf } from "../circuit/anatomy.ts";
import { drawVessels } from "../circuit/body-drawing.ts";
import { CHEST_AT } from "../circuit/chest-plan.ts";
import { fenestrated } from "../circuit/circuit-pane.ts";
import { type Laid, layVessels } from "../circuit/dots.ts";
import { flowing } from "../circuit/flowing.ts";
import { overOrgans, paintedChest } from "../circuit/painted-chest.ts";
import { drawThroughLiver } from "../circuit/silhouette.ts";
import type { Vessel } from "../circuit/vessel.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { drawArrows } from "./arrows.ts";
import { chestWall } from "./chest-wall.ts";
import { MIDLINE } from "./torso.ts";

/** From the neck to below the liver. */
const CHEST = { left: 134, top: 24, right: 866, bottom: 738 } as const;
/** Plane units over which the picture clears at its upper and lower end. */
const CLEARS = 84;
const BEYOND = 4;
const STOPS = 8;
/** y up, as sheets are painted */
const ENDS: Bounds = [CHEST.left - 16, -CHEST.bottom - BEYOND, CHEST.right + 16, -CHEST.top + BEYOND];

const HIDDEN = /Kidney|Leg|Thigh|Hand|Head|gut|portal|liver|coeliac|hepaticLeftBranch|aorticFork/;
/** Plane units from the midline beyond which an arm's vessels do not lie, the artery nearer. */
const ARM = { arterial: 329, svc: 343 } as const;
/** Plane units by which the liver's veins are drawn lower, to keep below the diaphragm in a quiet breath, which moves that by 15; a deep one does by 37. */
const BREATH = 20;
/** Plane units over which they come up to where they open. */
const OPENS = 30;
/** Device pixels of a CSS pixel for which the chest is painted. */
const DENSE = 1.25;

/** Where the plane lies in its box, and the vessels on it. */
export interface Shown {
  readonly fit: Fit;
  readonly vessels: readonly Laid[];
}

export interface Thorax {
  readonly view: Container;
  draw(circulation: Circulation, time: number, still: boolean, box: Box, theme: Theme): Shown;
  release(): void;
}

/** What of the circuit's vessels lies in the picture. */
function vesselsIn(circulation: Circulation): readonly Vessel[] {
  return vesselsOf(circulation.request.stage, fenestrated(circulation))
    .filter(({ name, painted }) => painted || !HIDDEN.test(name))
    .map((vessel) => ({ ...vessel, points: vessel.points.map((spot) => placed(vessel, spot)) }));
}

/** Arms hang closer here, and the liver goes down. */
function placed({ name, blood }: Vessel, [x, y]: Spot): Spot {
  if (name.includes("Limb")) {
    const far = blood === "arterial" ? ARM.arterial : ARM.svc;
    return [MIDLINE + Math.min(far, Math.max(-far, x - MIDLINE)), y];
  }
  return name.startsWith("hepatic")
    ? [x, y + BREATH * Math.min(1, Math.abs(x - CHEST_AT.x) / OPENS)]
    : [x, y];
}

/** The ground's own colour over both ends, so that what goes on beyond the picture fades. */
function paintEnds(ink: Ink, { colour }: Theme): void {
  const [left, , right] = ENDS;
  for (const [edge, way] of [
    [-CHEST.top, -1],
    [-CHEST.bottom, 1],
  ] as const) {
    const fall = ink.createLinearGradient(0, edge, 0, edge + way * CLEARS);
    for (let k = 0; k <= STOPS; k++) {
      const gone = 1 - k / STOPS;
      const alpha = Math.round(255 * gone * gone * (3 - 2 * gone));
      fall.addColorStop(k / STOPS, colour.stage + alpha.toString(16).padStart(2, "0"));
    }
    ink.fillStyle = fall;
    ink.fillRect(left, edge - way * BEYOND, right - left, way * (CLEARS + BEYOND));
  }
}

export function thorax(): Thorax {
  const [view, scene] = [new Container(), new Container()];
  const [mask, arrows] = [new Graphics(), new Graphics()];
  const ends = sheet();
  const over = new Container();
  over.scale.set(1, -1);
  over.addChild(ends.view);
  const [under, back, front] = [new Graphics(), new Graphics(), new Graphics()];
  const painted = paintedChest();
  const wall = chestWall();
  painted.organs.mask = wall.mask;
  painted.underDiaphragm.addChild(wall.ribs, under, painted.airways);
  const blood = flowing();
  scene.addChild(
    wall.view,
    wall.mask,
    painted.organs,
    ...overOrgans(painted, blood, { behind: back, front }),
    wall.collar,
  );
  scene.mask = mask;
  // The ends reach over the mask's own edge.
  view.addChild(mask, scene, over, arrows);
  let known: Circulation | null = null;
  let themed: Theme | null = null;
  let laid: readonly Laid[] = [];

  const drawStanding = (circulation: Circulation, theme: Theme): void => {
    laid = layVessels(vesselsIn(circulation));
    blood.follow(laid, circulation);
    ends.paint(ENDS, 1, [0, 0], (ink) => paintEnds(ink, theme));
    for (const ink of [under, back, front]) ink.clear();
    const at = (depth: "under" | "behind" | "before") =>
      laid.filter(({ vessel }) => depth === (vessel.under ? "under" : vessel.behind ? "behind" : "before"));
    drawVessels(under, at("under"), circulation, theme);
    drawThroughLiver(back, at("under"), circulation, theme, BREATH);
    drawVessels(back, at("behind"), circulation, theme);
    drawVessels(front, at("before"), circulation, theme);
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
      // In a Valsalva manoeuvre the throat is shut: whatever presses on the lungs, their air stays in.
      const shut = wordSetting(circulation.request, "breathing") === "valsalva";
      wall.paint(fit.scale * DENSE, theme);
      wall.move(shut ? 1 : lungsAt(circulation, time, still));
      drawArrows(arrows, circulation, time, !shut, theme);
      painted.draw({ circulation, time, still }, fit.scale * DENSE, theme);
      blood.move(time, still, theme);
      // On a small screen a name may reach over an arm.
      return { fit, vessels: laid.filter(({ vessel }) => !vessel.name.includes("Limb")) };
    },
    release() {
      blood.release();
      painted.release();
      wall.release();
      ends.release();
    },
  };
}
