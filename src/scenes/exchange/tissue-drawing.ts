/** A piece of tissue: capillary above, cells in the interstitium, lymph vessels beneath, and the serous cavity where the rest collects. */
import { Container, Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { filtrationAlong } from "../../sim/exchange/index.ts";
import { servesAt, sheet } from "../anatomy/painted-sheet.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";
import { proteinsInBlood, showRedCells } from "./capillary-blood.ts";
import { type DayFigures, swelling } from "./day.ts";
import { type Inset, insetIn, paintInset } from "./duct-inset.ts";
import { leakedProteins, showArrows, showDrops } from "./fluid-drops.ts";
import { drawGauge, drawScales, levelAt } from "./fluid-gauge.ts";
import { marks } from "./marks.ts";
import { paintCapillary } from "./paint-capillary.ts";
import { drawTears, paintDrainage, paintGround, paintTissue } from "./paint-tissue.ts";
import { tissueCells } from "./tissue-cells.ts";
import { CLEFTS, type TissuePlan, tissuePlan, WIDTH } from "./tissue-plan.ts";

interface TissueState {
  readonly circulation: Circulation;
  readonly figures: DayFigures;
  /** mL/h that one drop stands for */
  readonly drop: number;
  /** mL that fill the cavity */
  readonly full: number;
  /** s of blood time */
  readonly time: number;
  /** CSS px of the words in the inset */
  readonly type: number;
}

/** How the plane lies in its box, and what stands on it. */
export interface TissueFit extends Fit {
  readonly plan: TissuePlan;
  /** where lymph goes; null where there is no room for it */
  readonly inset: Inset | null;
  /** plane units: where arrows stand */
  readonly arrows: readonly Box[];
}

export interface TissuePicture {
  readonly view: Container;
  draw(state: TissueState, box: Box, theme: Theme): TissueFit;
  release(): void;
}

/** Device pixels of a CSS pixel for which the tissue is painted. */
const DENSE = 1.25;
/** Whether there is little room for plates, and none for the numbers of scale bars; `type` in CSS px. */
export const isSmall = (scale: number, type: number): boolean => scale < 0.0346 * type;
/** Plane units by which the plan's height is fitted to its room. */
const STEP = 20;

export function tissuePicture(): TissuePicture {
  const view = new Container();
  const [mask, fluid, tears] = [new Graphics(), new Graphics(), new Graphics()];
  const [ground, tissue, drainage, vessel, duct] = [sheet(), sheet(), sheet(), sheet(), sheet()];
  const cells = tissueCells();
  const [drops, arrows, blood, proteins] = [marks(), marks(), marks(), marks()];
  // Sheets are painted with y up.
  for (const each of [ground, tissue, drainage, vessel, duct]) each.view.scale.y = -1;
  view.addChild(mask, ground.view, cells.view, tissue.view, fluid, drainage.view, vessel.view);
  view.addChild(blood.view, proteins.view, drops.view, tears, arrows.view, duct.view);
  view.mask = mask;
  let [plan, asked] = [tissuePlan(0), 0];
  let [spread, filled, fine] = ["", "", 0];
  let known: Circulation | null = null;
  let themed: Theme | null = null;

  const paintSurroundings = (density: number, theme: Theme): void => {
    const { height } = plan;
    mask.clear().roundRect(0, 0, WIDTH, height, 20).fill(0xffffff);
    for (const [each, paint] of [
      [ground, paintGround],
      [tissue, paintTissue],
    ] as const)
      each.paint([0, -height, WIDTH, 0], density, [0, 0], (ink) => {
        ink.scale(1, -1);
        paint(ink, plan, theme);
      });
    // As high above the chest wall as the drain lies.
    drainage.paint([500, -height, WIDTH, 60 - plan.cavity.bottom], density, [0, 0], (ink) => {
      ink.scale(1, -1);
      paintDrainage(ink, plan, theme);
    });
    cells.paint(plan, density, theme);
    drawTears(tears, plan, theme);
    [spread, filled] = ["", ""];
  };

  const paintVessel = (circulation: Circulation, density: number, theme: Theme): void =>
    vessel.paint([0, -260, WIDTH, 0], density, [0, 0], (ink) => {
      ink.scale(1, -1);
      paintCapillary(ink, circulation, theme);
    });

  const paintDuct = (inset: Inset, circulation: Circulation, density: number, theme: Theme): void => {
    const { x, y, width, from } = inset;
    duct.paint([0, -(from + 2), x + width + 2, 2 - y], density, [0, 0], (ink) => {
      ink.scale(1, -1);
      paintInset(ink, inset, circulation, theme);
    });
  };

  return {
    view,
    draw({ circulation, figures, drop, full, time, type }, box, theme) {
      const wanted = STEP * Math.floor((WIDTH * box.height) / box.width / STEP);
      const changed = wanted !== asked;
      if (changed) plan = tissuePlan(wanted);
      asked = wanted;
      const fit = fitInto(box, { left: 0, top: 0, right: WIDTH, bottom: plan.height });
      view.scale.set(fit.scale);
      view.position.set(fit.x, fit.y);
      const density = fit.scale * DENSE;
      const anew = changed || themed !== theme || !servesAt(fine, density);
      if (anew) [themed, fine] = [theme, density];
      if (anew) paintSurroundings(fine, theme);
      const inset = insetIn(plan, fit, type);
      const appears = inset !== null && !duct.view.visible;
      duct.view.visible = inset !== null;
      const other = anew || known !== circulation;
      if (other) paintVessel(circulation, fine, theme);
      if (inset && (other || appears)) paintDuct(inset, circulation, fine, theme);
      known = circulation;
      const size = swelling(figures.interstitialPressure);
      if (size.toFixed(3) !== spread) cells.spread(size);
      spread = size.toFixed(3);
      const level = levelAt(plan, figures.collected, full);
      const gauge = `${level.toFixed(1)} ${full} ${type / fit.scale}`;
      if (gauge !== filled) {
        drawGauge(fluid, plan, { level, full, type: type / fit.scale }, theme);
        if (!isSmall(fit.scale, type)) drawScales(fluid, plan, theme);
      }
      filled = gauge;
      showRedCells(blood, circulation, time, theme);
      const along = filtrationAlong(figures.filtration, circulation, CLEFTS.length);
      const water = { figures, drop, level, time, size, along };
      proteins.show([...proteinsInBlood(circulation, time, theme), ...leakedProteins(plan, water, theme)]);
      showDrops(drops, plan, water, theme);
      const stand = showArrows(arrows, plan, { figures, drop, along }, theme);
      return { ...fit, plan, inset, arrows: stand };
    },
    release() {
      for (const each of [ground, tissue, drainage, vessel, duct, cells, drops, arrows, proteins, blood])
        each.release();
    },
  };
}
