/** The chest: the circuit's own schematic from close by, with lungs, ribs and diaphragm that move with the breath. */
import { Container, Graphics } from "pixi.js";
import { entryAt, present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { smoothStep } from "../../sim/geometry/centreline.ts";
import { type Bounds, type Ink, servesAt, sheet } from "../anatomy/painted-sheet.ts";
import { lungsAt } from "../anatomy/standing.ts";
import { drawAirways } from "../circuit/airways.ts";
import { vesselsOf } from "../circuit/anatomy.ts";
import { drawVessels } from "../circuit/body-drawing.ts";
import { CHEST_AT } from "../circuit/chest-plan.ts";
import { fenestrated } from "../circuit/circuit-pane.ts";
import { type Laid, layVessels } from "../circuit/dots.ts";
import { flowing } from "../circuit/flowing.ts";
import { PAINTED } from "../circuit/outlines.ts";
import { overOrgans, paintedChest } from "../circuit/painted-chest.ts";
import { drawThroughLiver } from "../circuit/silhouette.ts";
import type { Vessel } from "../circuit/vessel.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { drawArrows } from "./arrows.ts";
import { type BreathEnd, breathEnds } from "./breath-end.ts";
import { chestWall, inMillimetres } from "./chest-wall.ts";
import { isInLiver, LIVER_BOUNDS, paintLiverVeins, widthBefore } from "./in-liver.ts";
import { drawnLarger, largerOf } from "./larger.ts";
import { MIDLINE } from "./torso.ts";

/** From the neck to below the liver. */
const CHEST = { left: 116, top: 24, right: 884, bottom: 738 } as const;
/** Plane units over which the picture clears at its upper and lower end. */
const CLEARS = 84;
const BEYOND = 4;
const STOPS = 8;
/** y up, as sheets are painted */
const ENDS: Bounds = [CHEST.left - 16, -CHEST.bottom - BEYOND, CHEST.right + 16, -CHEST.top + BEYOND];

const HIDDEN = /Kidney|Leg|Thigh|Hand|Head|gut|portal|liver|coeliac|hepaticLeftBranch|hepaticTwig|aorticFork/;
/** Plane units from the midline where the shoulder begins, and the ways through the left arm from there, to where it fades. */
const SHOULDER = 240;
const ARM = {
  arterial: spots("774 236, 812 292, 834 352, 845 464"),
  svc: spots("784 212, 828 250, 850 302, 862 360, 870 464"),
} as const;
/** Plane units by which the liver's veins are drawn lower, to keep below the diaphragm in a quiet breath, which moves that by 15; a deep one does by 37. */
const BREATH = 20;
/** Plane units by which the liver stands lower in the middle of a breath, and at the end of a deep one. */
const LIVER = { middle: 26, lowest: 46 } as const;
/** Plane units over which they come up to where they open. */
const OPENS = 30;
/** Device pixels of a CSS pixel for which the chest is painted. */
const DENSE = 1.25;

/** Where the plane lies in its box, and the vessels on it. */
export interface Shown {
  readonly fit: Fit;
  readonly vessels: readonly Laid[];
  /** the dashed outline */
  readonly end: BreathEnd | null;
  /** by which the movement is drawn */
  readonly larger: number;
}

export interface Thorax {
  readonly view: Container;
  draw(circulation: Circulation, time: number, still: boolean, box: Box, theme: Theme): Shown;
  release(): void;
}

/** What of the circuit's vessels lies in the picture. */
function vesselsIn(circulation: Circulation): readonly Vessel[] {
  const vessels = vesselsOf(circulation.request.stage, fenestrated(circulation)).filter(
    ({ name, painted }) => painted || !HIDDEN.test(name),
  );
  const veins = vessels.filter(isInLiver);
  return vessels.map((vessel) =>
    vessel.name.includes("Limb")
      ? inArm(vessel)
      : isInLiver(vessel)
        ? inLiver(vessel, veins)
        : vessel.name === "descending"
          ? { ...vessel, covers: [behindLiver(0), behindLiver(LIVER.middle)] }
          : vessel,
  );
}

/** The liver's outline. @param down plane units by which the breath has moved it */
const behindLiver = (down: number): readonly Spot[] =>
  present(PAINTED.find(({ name }) => name === "liver")).points.map(([x, y]): Spot => [x, y + down]);

/** The arms end here, in the picture. */
function inArm(vessel: Vessel): Vessel {
  const inner = vessel.points.filter(([x]) => Math.abs(x - MIDLINE) < SHOULDER);
  const side = Math.sign(entryAt(inner, Math.floor(inner.length / 2))[0] - MIDLINE);
  const arterial = vessel.blood === "arterial";
  const arm = ARM[arterial ? "arterial" : "svc"].map(([x, y]): Spot => [MIDLINE + side * (x - MIDLINE), y]);
  return arterial
    ? { ...vessel, points: [...inner, ...arm], fades: "end" }
    : { ...vessel, points: [...arm.toReversed(), ...inner], fades: "start" };
}

/** The liver goes down here; its veins' ends are lost in it. */
const inLiver = (vessel: Vessel, veins: readonly Vessel[]): Vessel => ({
  ...vessel,
  ...(widthBefore(vessel, veins) > 0 ? {} : { fades: "start" }),
  points: vessel.points.map(
    ([x, y]): Spot => [x, y + BREATH * Math.min(1, Math.abs(x - CHEST_AT.x) / OPENS)],
  ),
});

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
      const alpha = Math.round(255 * smoothStep(0, 1, gone));
      fall.addColorStop(k / STOPS, colour.stage + alpha.toString(16).padStart(2, "0"));
    }
    ink.fillStyle = fall;
    ink.fillRect(left, edge - way * BEYOND, right - left, way * (CLEARS + BEYOND));
  }
}

export function thorax(): Thorax {
  const [view, scene] = [new Container(), new Container()];
  const [mask, arrows] = [new Graphics(), new Graphics()];
  const clearing = sheet();
  clearing.view.scale.y = -1;
  const [under, back, front] = [new Graphics(), new Graphics(), new Graphics()];
  const painted = paintedChest();
  const wall = chestWall();
  const ends = breathEnds();
  const liverVeins = sheet();
  painted.organs.mask = wall.mask;
  painted.underDiaphragm.addChild(wall.ribs, under);
  const blood = flowing();
  const vessels = new Container();
  vessels.addChild(front, inMillimetres(liverVeins.view));
  scene.addChild(
    wall.view,
    wall.mask,
    painted.organs,
    ends.view,
    ...overOrgans(painted, blood, { behind: back, front: vessels }),
    wall.collar,
  );
  scene.mask = mask;
  // The ends reach over the mask's own edge.
  view.addChild(mask, scene, clearing.view, arrows);
  let known: Circulation | null = null;
  let themed: Theme | null = null;
  let laid: readonly Laid[] = [];
  let [fine, larger] = [0, 1];
  const drawLiverVeins = (circulation: Circulation, density: number, theme: Theme): void => {
    fine = density;
    const veins = laid.filter(({ vessel }) => isInLiver(vessel));
    liverVeins.paint(LIVER_BOUNDS, density * CHEST_AT.scale, [0, 0], (ink) =>
      paintLiverVeins(ink, veins, circulation, theme),
    );
  };
  const drawStanding = (circulation: Circulation, theme: Theme): void => {
    laid = layVessels(vesselsIn(circulation));
    larger = largerOf(circulation.traces);
    blood.follow(laid, circulation, larger);
    clearing.paint(ENDS, 1, [0, 0], (ink) => paintEnds(ink, theme));
    for (const ink of [under, back, front]) ink.clear();
    const at = (depth: "under" | "behind" | "before") =>
      laid.filter(({ vessel }) => depth === (vessel.under ? "under" : vessel.behind ? "behind" : "before"));
    drawAirways(under, theme);
    drawVessels(under, at("under"), circulation, theme);
    // The aorta lies behind the liver, apart from it; the lower vein in a groove of it.
    const groove = at("under").filter(({ vessel }) => vessel.name !== "descending");
    drawThroughLiver(back, groove, circulation, theme, LIVER.lowest);
    drawVessels(back, at("behind"), circulation, theme);
    const bare = at("before").filter(({ vessel }) => !isInLiver(vessel));
    drawVessels(front, bare, circulation, theme);
    ends.set(circulation, theme);
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
        fine = 0;
        drawStanding(circulation, theme);
      }
      const density = fit.scale * DENSE;
      if (!servesAt(fine, density)) drawLiverVeins(circulation, density, theme);
      wall.paint(density, theme);
      // Also in a still picture it is the chest of the moment that the curves mark.
      wall.move(drawnLarger(lungsAt(circulation, time, false), larger));
      const end = ends.move(circulation, time);
      drawArrows(arrows, circulation, time, theme);
      painted.draw({ circulation, time, still: false, larger }, density, theme);
      blood.move(time, still, theme);
      // On a small screen a name may reach over an arm.
      return { fit, end, larger, vessels: laid.filter(({ vessel }) => !vessel.name.includes("Limb")) };
    },
    release() {
      blood.release();
      painted.release();
      wall.release();
      clearing.release();
      liverVeins.release();
    },
  };
}
