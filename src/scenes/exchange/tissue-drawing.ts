/** A piece of tissue: capillary above, cells in the interstitium, lymph vessels beneath, and the serous cavity where the rest collects. */
import { Container, Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { numberSetting } from "../../sim/parameters/parameters.ts";
import { servesAt, sheet } from "../anatomy/painted-sheet.ts";
import { RICH } from "../circuit/circuit-blood.ts";
import { GOLDEN, placeOn } from "../drawing/curve-drawing.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import { type Streaks, shapeOf, streaks } from "../drawing/streaks.ts";
import type { Box } from "../scene.ts";
import { markColour } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type DayFigures, dropsFor, swelling } from "./day.ts";
import { paintCapillary, WALL_CELLS } from "./paint-capillary.ts";
import { paintTissue } from "./paint-tissue.ts";
import { tissueCells } from "./tissue-cells.ts";
import { CAPILLARY, type TissuePlan, tissuePlan, WIDTH } from "./tissue-plan.ts";

/** Where on the collecting vessel lymph comes in, as parts of its length. */
const LYMPH_MOUTHS = [0.02, 0.12, 0.42] as const;
/** Drops on each of the two ways, and dots of blood, at most. */
const MAX = 90;
const DOTS = 46;
/** Proteins that the blood carries: too large for the gaps. */
const PROTEINS = 44;

interface TissueState {
  readonly circulation: Circulation;
  readonly figures: DayFigures;
  /** mL/h that one drop stands for */
  readonly drop: number;
  /** mL that fill the cavity */
  readonly full: number;
  /** s of blood time */
  readonly time: number;
  readonly still: boolean;
}

/** How the plane lies in its box, and where a place of a plan 760 high lies on it. */
export interface TissueFit extends Fit {
  readonly down: TissuePlan["down"];
}

export interface TissuePicture {
  readonly view: Container;
  draw(state: TissueState, box: Box, theme: Theme): TissueFit;
  release(): void;
}

/** Device pixels of a CSS pixel for which the tissue is painted. */
const DENSE = 1.25;
/** Plane units by which the plan's height is fitted to its room. */
const STEP = 20;
const FLUID = 30;

/** x, y and unit tangent of the place found last */
const out = new Float64Array(4);

/** A drop's way from the capillary's wall: down between the cells, then into the lymph vessel or the cavity. */
function dropAt({ lymph, cavity }: TissuePlan, index: number, phase: number, goesToLymph: boolean): void {
  const across = ((index + 1) * GOLDEN) % 1;
  // Out by one of the gaps between the wall's cells.
  placeOn(CAPILLARY, (2 + Math.floor((WALL_CELLS - 3) * across)) / WALL_CELLS, out);
  const [x0, y0] = [entryAt(out, 0), entryAt(out, 1) + 34];
  const fall = Math.min(1, phase / 0.5);
  if (goesToLymph) {
    const mouth = entryAt(LYMPH_MOUTHS, index % LYMPH_MOUTHS.length);
    placeOn(lymph, phase < 0.5 ? mouth : mouth + ((phase - 0.5) / 0.5) * (1 - mouth), out);
    if (phase >= 0.5) return;
  } else {
    out[0] = cavity.left + 40 + (cavity.right - cavity.left - 80) * across;
    out[1] = cavity.top + 20 + 60 * Math.max(0, (phase - 0.5) / 0.5);
    if (phase >= 0.5) return;
  }
  const wander = Math.sin(Math.PI * fall) * 26 * Math.sin(index * 2.4 + fall * 5);
  out[0] = x0 + (entryAt(out, 0) - x0) * fall ** 1.6 + wander;
  out[1] = y0 + (entryAt(out, 1) - y0) * fall;
}

export function tissuePicture(): TissuePicture {
  const view = new Container();
  const [mask, fluid] = [new Graphics(), new Graphics()];
  const [ground, vessel] = [sheet(), sheet()];
  const cells = tissueCells();
  const [drops, blood, proteins] = [streaks(), streaks(), streaks()];
  drops.resize(2 * MAX);
  blood.resize(DOTS);
  proteins.resize(PROTEINS);
  // Sheets are painted with y up.
  for (const each of [ground, vessel]) each.view.scale.y = -1;
  view.addChild(mask, ground.view, fluid, cells.view, vessel.view, blood.view, proteins.view, drops.view);
  view.mask = mask;
  let [plan, asked] = [tissuePlan(0), 0];
  let [spread, filled, fine] = ["", "", 0];
  let known: Circulation | null = null;
  let themed: Theme | null = null;

  const paintSurroundings = (density: number, theme: Theme): void => {
    const { height } = plan;
    mask.clear().roundRect(0, 0, WIDTH, height, 20).fill(0xffffff);
    ground.paint([0, -height, WIDTH, 0], density, [0, 0], (ink) => {
      ink.scale(1, -1);
      paintTissue(ink, plan, theme);
    });
    cells.paint(plan, density, theme);
    [spread, filled] = ["", ""];
  };

  const paintVessel = (circulation: Circulation, density: number, theme: Theme): void =>
    vessel.paint([0, -200, WIDTH, 0], density, [0, 0], (ink) => {
      ink.scale(1, -1);
      paintCapillary(ink, circulation, theme);
    });

  return {
    view,
    draw(state, box, theme) {
      const { circulation, figures, full } = state;
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
      if (anew || known !== circulation) paintVessel(circulation, fine, theme);
      known = circulation;
      const size = swelling(figures.interstitialPressure);
      if (size.toFixed(3) !== spread) cells.spread(size);
      spread = size.toFixed(3);
      const level = (figures.collected / (full || 1)).toFixed(3);
      if (level !== filled) drawFluid(fluid, plan, Number(level), theme);
      filled = level;
      placeBlood(blood, state, theme);
      placeProteins(proteins, plan, state, theme);
      placeDrops(drops, plan, state, theme);
      return { ...fit, down: plan.down };
    },
    release() {
      for (const each of [ground, vessel, cells, drops, proteins, blood]) each.release();
    },
  };
}

/** In the cavity. @param filled part of it that is, 0..1 */
function drawFluid(ink: Graphics, { cavity }: TissuePlan, filled: number, { colour }: Theme): void {
  const { left, right, top, bottom } = cavity;
  const height = Math.max(6, (bottom - top - FLUID) * Math.min(1, filled));
  const round = Math.min(FLUID, height);
  ink
    .clear()
    .moveTo(left, bottom - height)
    .lineTo(left, bottom - round)
    .arcTo(left, bottom, left + round, bottom, round)
    .lineTo(right - round, bottom)
    .arcTo(right, bottom, right, bottom - round, round)
    .lineTo(right, bottom - height)
    .closePath()
    .fill({ color: colour.pressure, alpha: 0.34 });
  ink
    .moveTo(left, bottom - height)
    .lineTo(right, bottom - height)
    .stroke({ color: colour.pressure, width: 3 });
}

/** Part of the capillary's length by which its blood has moved on. */
const carried = ({ flows, request }: Circulation, time: number): number =>
  ((0.045 * flows.systemic) / request.body.bsa) * time;

/** They go with the blood; those that the wall does not hold back lie between the cells. */
function placeProteins(
  proteins: Streaks,
  { down }: TissuePlan,
  { circulation, time }: TissueState,
  { colour, name }: Theme,
): void {
  const held = numberSetting(circulation.request, "proteinReflection");
  const tint = Number.parseInt((name === "dark" ? colour.wallEdge : colour.wall).slice(1), 16);
  for (let i = 0; i < PROTEINS; i++) {
    const leaked = i < (1 - held) * PROTEINS;
    placeOn(CAPILLARY, (((i * GOLDEN) % 1) + carried(circulation, time)) % 1, out);
    const side = (2 * ((i * GOLDEN * 2.3) % 1) - 1) * 21;
    proteins.set(i, {
      x: leaked ? 140 + 720 * ((i * GOLDEN) % 1) : entryAt(out, 0) - entryAt(out, 3) * side,
      y: leaked ? down(176 + 260 * ((i * GOLDEN * 2.3) % 1)) : entryAt(out, 1) + entryAt(out, 2) * side,
      angle: i,
      length: 12,
      width: 10,
      colour: tint,
      shape: "drop",
    });
  }
}

/** Dots that follow the capillary, in the colour that their blood has there. */
function placeBlood(blood: Streaks, { circulation, time, still }: TissueState, theme: Theme): void {
  const { saturations } = circulation;
  for (let i = 0; i < DOTS; i++) {
    const along = ((i + 0.5) / DOTS + carried(circulation, time)) % 1;
    placeOn(CAPILLARY, along, out);
    const side = (2 * ((i * GOLDEN) % 1) - 1) * 24;
    const saturation = saturations.arterial + (saturations.ivc - saturations.arterial) * along;
    blood.set(i, {
      x: entryAt(out, 0) - entryAt(out, 3) * side,
      y: entryAt(out, 1) + entryAt(out, 2) * side,
      angle: Math.atan2(entryAt(out, 3), entryAt(out, 2)),
      length: 17,
      width: 12,
      colour: Number.parseInt(markColour(theme.colour, saturation).slice(1), 16),
      shape: shapeOf(saturation >= RICH, still),
    });
  }
}

/** Drops on their two ways, as many as the flows of the day ask for. */
function placeDrops(
  drops: Streaks,
  plan: TissuePlan,
  { figures, drop, time }: TissueState,
  theme: Theme,
): void {
  const lymph = dropsFor(figures.lymph, drop, MAX);
  const over = dropsFor(figures.overflow, drop, MAX);
  const colour = Number.parseInt(theme.colour.pressure.slice(1), 16);
  for (let i = 0; i < 2 * MAX; i++) {
    const toLymph = i < MAX;
    const index = toLymph ? i : i - MAX;
    const shown = index < (toLymph ? lymph : over);
    const phase = (((index * GOLDEN * 1.7) % 1) + time * 0.11) % 1;
    dropAt(plan, index, phase, toLymph);
    drops.set(i, {
      x: entryAt(out, 0),
      y: entryAt(out, 1),
      angle: 0,
      length: 16,
      width: 16,
      colour,
      shape: "drop",
      alpha: shown ? 1 : 0,
    });
  }
}
