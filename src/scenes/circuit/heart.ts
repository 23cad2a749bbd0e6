/** The heart's chambers, swollen and shrunk by their computed volumes: displacement, never brightness. */
import type { Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Stage } from "../../sim/parameters/request.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { chamberSize } from "../anatomy/standing.ts";
import { roundOf } from "../anatomy/tones.ts";
import { traceCurve } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { CHAMBERS } from "./anatomy.ts";
import { chestFrame, onPlane } from "./chest-plan.ts";
import { saturationOf } from "./circuit-blood.ts";
import { dimOf, type Emphasis, NO_EMPHASIS } from "./emphasis.ts";

/** The chambers that are not painted, and the light around those that are. */
export function drawHeart(
  ink: Graphics,
  circulation: Circulation,
  time: number,
  theme: Theme,
  emphasis: Emphasis = NO_EMPHASIS,
): void {
  const { colour } = theme;
  ink.clear();
  for (const chamber of CHAMBERS[circulation.request.stage]) {
    const size = chamberSize(circulation, chamber.volume, time);
    const saturation = saturationOf(circulation, chamber.blood);
    const shown = emphasis.lit.has(chamber.volume);
    const back = (color: string) => mix(color, colour.stage, dimOf(emphasis, chamber.volume));
    const { wall, edge, body, light } = roundOf(saturation, theme);
    const [x, y] = chamber.about;
    const swollen = (by: number) => {
      traceCurve(ink, {
        x: chamber.outline.x.map((px) => x + by * (px - x)),
        y: chamber.outline.y.map((py) => y + by * (py - y)),
      });
      ink.closePath();
    };
    swollen(size);
    ink.fill({ color: back(edge) });
    ink.stroke({ color: shown ? colour.accent : back(wall), width: shown ? 8 : 4, join: "round" });
    // Round: lighter towards its middle.
    for (let k = 1; k <= ROUNDS; k++) {
      const depth = k / ROUNDS;
      swollen(size * (1 - 0.7 * depth));
      ink.fill({ color: back(depth < 0.7 ? mix(edge, body, depth / 0.7) : mix(body, light, depth - 0.7)) });
    }
  }
}

/** Fills of which a chamber's round is made. */
const ROUNDS = 10;

/** Where the painted atrium or ventricle is pointed at, a light around it. */
export function drawHeartLight(ink: Graphics, stage: Stage, lit: ReadonlySet<string>, theme: Theme): void {
  ink.clear();
  for (const { name, outline } of anatomyOf(chestFrame(stage)).parts) {
    if (!HEART.includes(name) || !lit.has(name)) continue;
    ink.poly(outline.flatMap(onPlane)).stroke({ color: theme.colour.accent, width: 8, join: "round" });
  }
}

const HEART: readonly string[] = ["atrium", "ventricle"];
