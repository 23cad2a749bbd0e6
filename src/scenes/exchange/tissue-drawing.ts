/** A piece of tissue: capillary above, cells and the space between them, lymph vessel beneath, and the hollow where the rest collects. */
import { Container, Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { numberSetting } from "../../sim/parameters/parameters.ts";
import { RICH } from "../circuit/circuit-blood.ts";
import { placeOn } from "../drawing/curve-drawing.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import { type Streaks, shapeOf, streaks } from "../drawing/streaks.ts";
import type { Box } from "../scene.ts";
import { markColour } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type DayFigures, dropsFor, swelling } from "./day.ts";
import { CAPILLARY, drawCapillary, drawGround, HOLLOW, LYMPH, PLANE, WALL_CELLS } from "./tissue-ground.ts";

/** Where lymph and overflow part from the spaces between cells. */
const LYMPH_MOUTHS = [0.02, 0.12, 0.42] as const;
const GOLDEN = 0.618033988749895;
/** Drops on each of the two ways, and dots of blood, at most. */
const MAX = 90;
const DOTS = 46;
/** Proteins that the blood carries: too large for the gaps. */
const PROTEINS = 22;

interface TissueState {
  readonly circulation: Circulation;
  readonly figures: DayFigures;
  /** mL/h that one drop stands for */
  readonly drop: number;
  /** mL that fill the hollow */
  readonly full: number;
  /** s of blood time */
  readonly time: number;
  readonly still: boolean;
}

export interface TissuePicture {
  readonly view: Container;
  draw(state: TissueState, box: Box, theme: Theme): Fit;
  release(): void;
}

/** A drop's way from the capillary's wall: down between the cells, then into the lymph vessel or the hollow. */
function dropAt(index: number, phase: number, goesToLymph: boolean, out: Float64Array): void {
  const across = ((index + 1) * GOLDEN) % 1;
  // Out by one of the gaps between the wall's cells.
  placeOn(CAPILLARY, (2 + Math.floor((WALL_CELLS - 3) * across)) / WALL_CELLS, out);
  const [x0, y0] = [entryAt(out, 0), entryAt(out, 1) + 34];
  const fall = Math.min(1, phase / 0.5);
  if (goesToLymph) {
    const mouth = entryAt(LYMPH_MOUTHS, index % LYMPH_MOUTHS.length);
    placeOn(LYMPH, phase < 0.5 ? mouth : mouth + ((phase - 0.5) / 0.5) * (1 - mouth), out);
    if (phase >= 0.5) return;
  } else {
    out[0] = HOLLOW.left + 40 + (HOLLOW.right - HOLLOW.left - 80) * across;
    out[1] = HOLLOW.top + 20 + 60 * Math.max(0, (phase - 0.5) / 0.5);
    if (phase >= 0.5) return;
  }
  const wander = Math.sin(Math.PI * fall) * 26 * Math.sin(index * 2.4 + fall * 5);
  out[0] = x0 + (entryAt(out, 0) - x0) * fall ** 1.6 + wander;
  out[1] = y0 + (entryAt(out, 1) - y0) * fall;
}

export function tissuePicture(): TissuePicture {
  const view = new Container();
  const mask = new Graphics().rect(0, 0, PLANE.width, PLANE.height).fill(0xffffff);
  const [ground, vessels] = [new Graphics(), new Graphics()];
  const [drops, blood, proteins] = [streaks(), streaks(), streaks()];
  drops.resize(2 * MAX);
  blood.resize(DOTS);
  proteins.resize(PROTEINS);
  view.addChild(mask, ground, vessels, blood.view, proteins.view, drops.view);
  view.mask = mask;
  let grounded = "";
  let known: Circulation | null = null;
  let themed: Theme | null = null;

  return {
    view,
    draw(state, box, theme) {
      const { circulation, figures, full } = state;
      const fit = fitInto(box, { left: 0, top: 30, right: PLANE.width, bottom: PLANE.height });
      view.scale.set(fit.scale);
      view.position.set(fit.x, fit.y);
      // The ground changes with the figures and the capillary with the circulation, not with every frame.
      const level = `${swelling(figures.interstitialPressure).toFixed(3)} ${(figures.collected / full).toFixed(3)}`;
      if (level !== grounded || themed !== theme) drawGround(ground, figures, full, theme);
      if (known !== circulation || themed !== theme) drawCapillary(vessels, circulation, theme);
      grounded = level;
      known = circulation;
      themed = theme;
      placeBlood(blood, state, theme);
      placeProteins(proteins, state, theme);
      placeDrops(drops, state, theme);
      return fit;
    },
    release() {
      drops.release();
      proteins.release();
      blood.release();
    },
  };
}

/** x, y and unit tangent of the place found last */
const out = new Float64Array(4);

/** Part of the capillary's length by which its blood has moved on. */
const carried = ({ flows, request }: Circulation, time: number): number =>
  ((0.045 * flows.systemic) / request.body.bsa) * time;

/** They go with the blood; those that the wall does not hold back lie between the cells. */
function placeProteins(proteins: Streaks, { circulation, time }: TissueState, { colour }: Theme): void {
  const held = numberSetting(circulation.request, "proteinReflection");
  const tint = Number.parseInt(colour.wallEdge.slice(1), 16);
  for (let i = 0; i < PROTEINS; i++) {
    const leaked = i < (1 - held) * PROTEINS;
    placeOn(CAPILLARY, (((i * GOLDEN) % 1) + carried(circulation, time)) % 1, out);
    const side = (2 * ((i * GOLDEN * 2.3) % 1) - 1) * 21;
    proteins.set(i, {
      x: leaked ? 140 + 720 * ((i * GOLDEN) % 1) : entryAt(out, 0) - entryAt(out, 3) * side,
      y: leaked ? 176 + 260 * ((i * GOLDEN * 2.3) % 1) : entryAt(out, 1) + entryAt(out, 2) * side,
      angle: i,
      length: 26,
      width: 19,
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
function placeDrops(drops: Streaks, { figures, drop, time }: TissueState, theme: Theme): void {
  const lymph = dropsFor(figures.lymph, drop, MAX);
  const over = dropsFor(figures.overflow, drop, MAX);
  const colour = Number.parseInt(theme.colour.pressure.slice(1), 16);
  for (let i = 0; i < 2 * MAX; i++) {
    const toLymph = i < MAX;
    const index = toLymph ? i : i - MAX;
    const shown = index < (toLymph ? lymph : over);
    const phase = (((index * GOLDEN * 1.7) % 1) + time * 0.11) % 1;
    dropAt(index, phase, toLymph, out);
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
