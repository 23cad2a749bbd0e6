/** The heart's chambers, swollen and shrunk by their computed volumes: displacement, never brightness. */
import type { Graphics } from "pixi.js";
import type { Circulation } from "../../sim/circulation/answer.ts";
import { valueAt } from "../drawing/passage.ts";
import { bloodColour, mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import { CHAMBERS } from "./anatomy.ts";
import { saturationOf } from "./blood.ts";

/** Linear size against the resting outline: the cube root of volume over its mean. */
export function swelling(volume: number, mean: number): number {
  return mean > 0 ? Math.cbrt(Math.max(volume, 0) / mean) : 1;
}

const average = (values: Float64Array): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

export function drawHeart(ink: Graphics, circulation: Circulation, time: number, theme: Theme): void {
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
    const blood = bloodColour(theme.colour, saturationOf(circulation, chamber.blood));
    ink.fill({ color: mix(theme.colour.lumen, blood, 0.42) });
    ink.stroke({ color: mix(theme.colour.wall, blood, 0.45), width: 5, join: "round" });
  }
}
