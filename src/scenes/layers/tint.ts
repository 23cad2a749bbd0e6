/** The colour of each tracer, by what the view asks to see. */

import { present } from "../../sim/checked/present.ts";
import type { Tracers } from "../../sim/tracers/tracers.ts";
import type { Colouring } from "../../state/scene-state.ts";
import { bloodColour, chamberColour, mix, rgb } from "../theme/colour.ts";
import { LEGIBLE, mapTable, packed } from "../theme/maps.ts";
import type { Theme } from "../theme/theme.ts";
import { type Saturated, saturationsOf } from "../theme/unsolved.ts";
import { mapStep } from "./scales.ts";

/** Saturation (%) of what comes from the upper body, the liver and the legs; the model keeps one for the lower body. */
export const saturationsByOrigin = (circulation: Saturated | null): readonly [number, number, number] => {
  const { svc, ivc } = saturationsOf(circulation);
  return [svc, ivc, ivc];
};

/** How far undyed blood draws back into the lumen while a dye pulse runs: dye shows by lightness too. */
const UNDYED = 0.6;

/** The colour of undyed blood while a dye pulse runs. */
export const beside = (hex: string, { colour }: Theme): string => mix(hex, colour.lumen, UNDYED);

/** What determines the colour of blood. */
export interface Tinting {
  readonly colouring: Colouring;
  readonly circulation: Saturated | null;
  /** a dye pulse is running */
  readonly dyeing: boolean;
}

/** Fills `out` [count] with packed colours. Dyed tracers keep the dye's colour whatever is asked. */
export function tint(tracers: Tracers, asked: Tinting, theme: Theme, out: Uint32Array): void {
  const { colouring, circulation, dyeing } = asked;
  const { count, origin, speed, age, dyed } = tracers;
  const { colour } = theme;
  switch (colouring) {
    case "origin":
    case "oxygen": {
      const hexes =
        colouring === "origin"
          ? colour.origin
          : saturationsByOrigin(circulation).map((saturation) => bloodColour(colour, saturation));
      const table = Uint32Array.from(hexes, (hex) => packed(rgb(dyeing ? beside(hex, theme) : hex)));
      for (let i = 0; i < count; i++) out[i] = present(table[origin[i]!]);
      break;
    }
    case "speed":
    case "age": {
      const [from, to] = LEGIBLE[theme.name];
      const table = mapTable(colouring, from, to);
      const values = colouring === "speed" ? speed : age;
      for (let i = 0; i < count; i++) out[i] = table[mapStep(colouring, values[i]!)]!;
      break;
    }
  }
  const dye = packed(rgb(colour.dye));
  for (let i = 0; i < count; i++) if (dyed[i]) out[i] = dye;
}

/** Blood from the lungs (1) and in the heart (2) keeps the colour of its oxygen, whatever its origin; what mixes goes over into the heart's. From index `first` on. */
export function tintRich(
  { rich, unmixed }: { readonly rich: Uint8Array; readonly unmixed: Float32Array },
  first: number,
  { colouring, circulation }: Tinting,
  { colour }: Theme,
  out: Uint32Array,
): void {
  if (colouring !== "origin" && colouring !== "oxygen") return;
  const { pulmonaryVein, arterial } = saturationsOf(circulation);
  const [lungs, heart] = [pulmonaryVein, arterial].map((each) => packed(rgb(bloodColour(colour, each))));
  for (let i = 0; i < rich.length; i++) {
    if (rich[i]) out[first + i] = present(rich[i] === 2 ? heart : lungs);
    if (unmixed[i]! < 1) out[first + i] = blended(present(heart), out[first + i]!, unmixed[i]!);
  }
}

/** From one packed colour to another, which keeps its highest byte. */
function blended(from: number, to: number, part: number): number {
  let mixed = to & 0xff000000;
  for (const shift of [0, 8, 16]) {
    const start = (from >>> shift) & 255;
    mixed |= Math.round(start + (((to >>> shift) & 255) - start) * part) << shift;
  }
  return mixed >>> 0;
}

/** Mixes each tracer's colour into the atrium's by the part of its blood that is still its own, 1..0. */
export function diluted(
  count: number,
  undiluted: Float32Array,
  circulation: Saturated | null,
  { colour, name }: Theme,
  colours: Uint32Array,
): void {
  const around = packed(rgb(chamberColour(colour, name, saturationsOf(circulation).arterial)));
  for (let i = 0; i < count; i++) colours[i] = blended(around, colours[i]!, undiluted[i]!);
}
