/** The heart's chambers, swollen and shrunk by their computed volumes: displacement, never brightness. */
import type { Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import { bloodColour, groundColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { CHAMBERS } from "./anatomy.ts";
import { saturationOf } from "./circuit-blood.ts";
import { dimOf, type Emphasis, NO_EMPHASIS } from "./emphasis.ts";

/** Linear size against the resting outline: the cube root of volume over its mean. */
export function swelling(volume: number, mean: number): number {
  return mean > 0 ? Math.cbrt(Math.max(volume, 0) / mean) : 1;
}

const average = (values: Float64Array): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

export function drawHeart(
  ink: Graphics,
  circulation: Circulation,
  time: number,
  theme: Theme,
  emphasis: Emphasis = NO_EMPHASIS,
): void {
  const { traces, request } = circulation;
  ink.clear();
  for (const chamber of CHAMBERS[request.stage]) {
    const volume = traces.volumes[chamber.volume];
    const size = volume ? swelling(valueAt(traces, volume, time), average(volume)) : 1;
    const [cx, cy] = chamber.centre;
    const [rx, ry] = [chamber.radii[0] * size, chamber.radii[1] * size];
    const [cos, sin] = [Math.cos(chamber.lean), Math.sin(chamber.lean)];
    const N = 44;
    for (let k = 0; k < N; k++) {
      const angle = (2 * Math.PI * k) / N;
      // A little narrower towards the apex, as a ventricle is.
      const taper = 1 - 0.16 * Math.cos(angle);
      const x = rx * Math.cos(angle);
      const y = ry * Math.sin(angle) * taper;
      if (k === 0) ink.moveTo(cx + x * cos - y * sin, cy + x * sin + y * cos);
      else ink.lineTo(cx + x * cos - y * sin, cy + x * sin + y * cos);
    }
    ink.closePath();
    const { colour } = theme;
    const saturation = saturationOf(circulation, chamber.blood);
    const shown = emphasis.lit.has(chamber.volume);
    const back = (color: string) => mix(color, colour.stage, dimOf(emphasis, chamber.volume));
    const wall = mix(colour.wall, bloodColour(colour, saturation), 0.45);
    ink.fill({ color: back(groundColour(colour, saturation)) });
    ink.stroke({ color: shown ? colour.accent : back(wall), width: shown ? 8 : 5, join: "round" });
  }
}
