/** The colour of each tracer, by what the view asks to see. */
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Tracers } from "../../sim/tracers/tracers.ts";
import type { Colouring } from "../../state/scene-state.ts";
import { bloodColour, mix, rgb } from "../theme/colour.ts";
import { LEGIBLE, mapTable, packed } from "../theme/maps.ts";
import type { Theme } from "../theme/theme.ts";

/** Ends of the scale that a legend names: m/s for speed, s for age. */
export interface TintScale {
  readonly speed: number;
  readonly age: number;
}

/** Saturation (%) of what comes from the upper body, the liver and the legs; the model keeps one for the lower body. */
export const saturationsByOrigin = (circulation: Circulation | null): readonly [number, number, number] => {
  const { svc, ivc } = circulation?.saturations ?? { svc: 60, ivc: 60 };
  return [svc, ivc, ivc];
};

/** How far undyed blood draws back into the lumen while a dye pulse runs: dye is told by lightness too. */
const UNDYED = 0.6;

/** The colour of undyed blood while a dye pulse runs. */
export const beside = (hex: string, { colour }: Theme): string => mix(hex, colour.lumen, UNDYED);

/**
 * Fills `out` [count] with packed colours. Dyed tracers keep the dye's colour whatever is asked.
 * @param dyeing a dye pulse is running
 */
export function tint(
  tracers: Tracers,
  colouring: Colouring,
  scale: TintScale,
  circulation: Circulation | null,
  theme: Theme,
  dyeing: boolean,
  out: Uint32Array,
): void {
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
      for (let i = 0; i < count; i++) out[i] = table[origin[i]!]!;
      break;
    }
    case "speed":
    case "age": {
      const [from, to] = LEGIBLE[theme.name];
      const table = mapTable(colouring, from, to);
      const values = colouring === "speed" ? speed : age;
      const scaling = 255 / scale[colouring];
      for (let i = 0; i < count; i++) out[i] = table[Math.min(255, (values[i]! * scaling) | 0)]!;
      break;
    }
  }
  const dye = packed(rgb(colour.dye));
  for (let i = 0; i < count; i++) if (dyed[i]) out[i] = dye;
}

const NICE = [1, 1.5, 2, 3, 5, 8];

/** The smallest of 1, 1.5, 2, 3, 5, 8 times a power of ten that is at least `value`; keeps `before` while that still fits well. */
export function niceCeiling(value: number, before?: number): number {
  if (before !== undefined && value <= before && value > 0.45 * before) return before;
  const power = 10 ** Math.floor(Math.log10(Math.max(1e-6, value)));
  for (const step of NICE) if (step * power >= value) return step * power;
  return 10 * power;
}

/** The value below which 98 of 100 lie, from a sample of at most 1,000. */
export function nearlyLargest(values: Float32Array, count: number): number {
  const stride = Math.max(1, Math.floor(count / 1000));
  const sample: number[] = [];
  for (let i = 0; i < count; i += stride) sample.push(values[i]!);
  sample.sort((a, b) => a - b);
  return sample[Math.floor(0.98 * sample.length)] ?? 0;
}
