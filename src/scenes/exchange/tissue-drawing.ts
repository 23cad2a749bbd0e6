/** A piece of tissue: capillary above, cells and the space between them, lymph vessel beneath, and the hollow where the rest collects. */
import { Container, Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { RICH } from "../circuit/circuit-blood.ts";
import { curve, placeOn, spots } from "../drawing/curve-drawing.ts";
import { type Fit, fitInto } from "../drawing/split.ts";
import { shapeOf, streaks } from "../drawing/streaks.ts";
import type { Box } from "../scene.ts";
import { groundColour, markColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { type DayFigures, dropsFor, swelling } from "./day.ts";

const PLANE = { width: 1000, height: 760 } as const;
const CAPILLARY = curve(spots("-20 96, 160 92, 340 120, 520 108, 700 124, 860 96, 1020 100"));
const LYMPH = curve(spots("720 470, 560 500, 380 482, 220 470, 90 420, 20 330, -20 240"));
const FINGERS = ["720 470, 800 440, 850 404", "640 490, 700 540, 770 548", "420 486, 470 440, 480 400"].map(
  (way) => curve(spots(way)),
);
const HOLLOW = { left: 520, right: 900, top: 610, bottom: 744 } as const;
const DRAIN = curve(spots("880 716, 950 726, 1000 744, 1030 770"));
/** Where lymph and overflow part from the spaces between cells. */
const LYMPH_MOUTHS = [0.02, 0.12, 0.42] as const;
const GOLDEN = 0.618033988749895;
const CELLS = [
  [110, 250, 62, 34],
  [250, 236, 58, 36],
  [390, 262, 60, 34],
  [540, 240, 62, 36],
  [690, 262, 58, 34],
  [840, 244, 62, 36],
  [170, 344, 60, 36],
  [320, 352, 58, 34],
  [610, 352, 60, 34],
  [750, 350, 52, 32],
  [910, 350, 56, 36],
  [940, 480, 52, 40],
] as const;
const MAX = 90;
const DOTS = 70;

export interface TissuePicture {
  readonly view: Container;
  /** `each`: mL/h that one drop stands for; `full`: mL that fill the hollow. */
  draw(
    circulation: Circulation,
    figures: DayFigures,
    each: number,
    full: number,
    time: number,
    still: boolean,
    box: Box,
    theme: Theme,
  ): Fit;
  release(): void;
}

/** A drop's way from the capillary's wall: down between the cells, then into the lymph vessel or the hollow. */
function dropAt(index: number, phase: number, goesToLymph: boolean, out: Float64Array): void {
  const across = ((index + 1) * GOLDEN) % 1;
  placeOn(CAPILLARY, 0.16 + 0.68 * across, out);
  const [x0, y0] = [out[0]!, out[1]! + 34];
  const fall = Math.min(1, phase / 0.5);
  if (goesToLymph) {
    const mouth = LYMPH_MOUTHS[index % LYMPH_MOUTHS.length]!;
    placeOn(LYMPH, phase < 0.5 ? mouth : mouth + ((phase - 0.5) / 0.5) * (1 - mouth), out);
    if (phase >= 0.5) return;
  } else {
    out[0] = HOLLOW.left + 40 + (HOLLOW.right - HOLLOW.left - 80) * across;
    out[1] = HOLLOW.top + 20 + 60 * Math.max(0, (phase - 0.5) / 0.5);
    if (phase >= 0.5) return;
  }
  const wander = Math.sin(Math.PI * fall) * 26 * Math.sin(index * 2.4 + fall * 5);
  out[0] = x0 + (out[0]! - x0) * fall ** 1.6 + wander;
  out[1] = y0 + (out[1]! - y0) * fall;
}

export function tissuePicture(): TissuePicture {
  const view = new Container();
  const mask = new Graphics().rect(0, 0, PLANE.width, PLANE.height).fill(0xffffff);
  const [ground, vessels] = [new Graphics(), new Graphics()];
  const [drops, blood] = [streaks(), streaks()];
  drops.resize(2 * MAX);
  blood.resize(DOTS);
  view.addChild(mask, ground, vessels, blood.view, drops.view);
  view.mask = mask;
  const out = new Float64Array(4);
  let grounded = "";
  let known: Circulation | null = null;
  let themed: Theme | null = null;

  const stroke = (
    ink: Graphics,
    line: { x: Float64Array; y: Float64Array },
    color: string,
    width: number,
    alpha = 1,
  ) => {
    ink.moveTo(line.x[0]!, line.y[0]!);
    for (let i = 1; i < line.x.length; i++) ink.lineTo(line.x[i]!, line.y[i]!);
    ink.stroke({ color, width, alpha, cap: "round", join: "round" });
  };

  const drawGround = (figures: DayFigures, full: number, theme: Theme): void => {
    const { colour } = theme;
    const size = swelling(figures.interstitialPressure);
    ground.clear();
    for (const [x, y, rx, ry] of CELLS) {
      // As the spaces fill, the cells move apart from the middle of the tissue.
      const [cx, cy] = [500 + (x - 500) * size, 330 + (y - 330) * size];
      ground
        .ellipse(cx, cy, rx, ry)
        .fill({ color: colour.backdrop })
        .stroke({ color: colour.backdropEdge, width: 2 });
      ground.circle(cx + rx * 0.2, cy, ry * 0.3).fill({ color: colour.backdropEdge, alpha: 0.7 });
    }
    const { left, right, top, bottom } = HOLLOW;
    const level = bottom - 6 - (bottom - top - 30) * Math.min(1, figures.collected / (full || 1));
    ground
      .roundRect(left, level, right - left, bottom - level, 14)
      .fill({ color: colour.pressure, alpha: 0.34 });
    ground
      .moveTo(left + 6, level)
      .lineTo(right - 6, level)
      .stroke({ color: colour.pressure, width: 3 });
    ground
      .moveTo(left, top)
      .lineTo(left, bottom - 20)
      .quadraticCurveTo(left, bottom, left + 20, bottom)
      .lineTo(right - 20, bottom)
      .quadraticCurveTo(right, bottom, right, bottom - 20)
      .lineTo(right, top)
      .stroke({ color: colour.hair, width: 3, cap: "round" });
    stroke(ground, DRAIN, colour.hair, 26);
    stroke(ground, DRAIN, colour.stage, 20);
    for (const line of [LYMPH, ...FINGERS])
      stroke(ground, line, mix(colour.stage, colour.origin[2], 0.75), 34);
    for (const line of [LYMPH, ...FINGERS])
      stroke(ground, line, mix(colour.lumen, colour.origin[2], 0.22), 28);
  };

  const drawCapillary = (circulation: Circulation, theme: Theme): void => {
    const { colour } = theme;
    const from = circulation.saturations.arterial;
    const to = circulation.saturations.ivc;
    vessels.clear();
    stroke(vessels, CAPILLARY, colour.wall, 78, 0.9);
    const PIECES = 40;
    const last = CAPILLARY.x.length - 1;
    for (let k = 0; k < PIECES; k++) {
      const [a, b] = [
        Math.round((k * last) / PIECES),
        Math.min(last, Math.round(((k + 1) * last) / PIECES) + 1),
      ];
      vessels.moveTo(CAPILLARY.x[a]!, CAPILLARY.y[a]!).lineTo(CAPILLARY.x[b]!, CAPILLARY.y[b]!);
      vessels.stroke({
        color: groundColour(colour, from + ((to - from) * k) / PIECES),
        width: 68,
      });
    }
    // Gaps between the wall's cells, through which water passes.
    for (let k = 4; k < PIECES - 2; k += 2) {
      placeOn(CAPILLARY, k / PIECES, out);
      vessels
        .moveTo(out[0]! - out[3]! * 30, out[1]! + out[2]! * 30)
        .lineTo(out[0]! - out[3]! * 41, out[1]! + out[2]! * 41);
      vessels.stroke({ color: colour.stage, width: 4 });
    }
  };

  return {
    view,
    draw(circulation, figures, each, full, time, still, box, theme) {
      const fit = fitInto(box, { left: 0, top: 30, right: PLANE.width, bottom: PLANE.height });
      view.scale.set(fit.scale);
      view.position.set(fit.x, fit.y);
      // The ground changes with the figures and the capillary with the circulation, not with every frame.
      const level = `${swelling(figures.interstitialPressure).toFixed(3)} ${(figures.collected / full).toFixed(3)}`;
      if (level !== grounded || themed !== theme) drawGround(figures, full, theme);
      if (known !== circulation || themed !== theme) drawCapillary(circulation, theme);
      grounded = level;
      known = circulation;
      themed = theme;
      const perSecond = (0.045 * circulation.flows.systemic) / circulation.request.body.bsa;
      for (let i = 0; i < DOTS; i++) {
        const along = ((i + 0.5) / DOTS + perSecond * time) % 1;
        placeOn(CAPILLARY, along, out);
        const side = (2 * ((i * GOLDEN) % 1) - 1) * 24;
        const saturation =
          circulation.saturations.arterial +
          (circulation.saturations.ivc - circulation.saturations.arterial) * along;
        blood.set(
          i,
          out[0]! - out[3]! * side,
          out[1]! + out[2]! * side,
          Math.atan2(out[3]!, out[2]!),
          17,
          12,
          Number.parseInt(markColour(theme.colour, saturation).slice(1), 16),
          shapeOf(saturation >= RICH, still),
        );
      }
      const lymph = dropsFor(figures.lymph, each, MAX);
      const over = dropsFor(figures.overflow, each, MAX);
      const water = Number.parseInt(theme.colour.pressure.slice(1), 16);
      for (let i = 0; i < 2 * MAX; i++) {
        const toLymph = i < MAX;
        const index = toLymph ? i : i - MAX;
        const shown = index < (toLymph ? lymph : over);
        const phase = (((index * GOLDEN * 1.7) % 1) + time * 0.11) % 1;
        dropAt(index, phase, toLymph, out);
        drops.set(i, out[0]!, out[1]!, 0, 9, 9, water, "drop", shown ? 1 : 0);
      }
      return fit;
    },
    release() {
      drops.release();
      blood.release();
    },
  };
}
