/** The one scale of each thing that colours measure: it never changes by itself, so that two pictures can be held side by side. */
import type { MapName } from "../theme/maps.ts";

export interface Scale {
  /** What lies beyond an end takes the end's colour. */
  readonly least: number;
  readonly most: number;
  readonly unit: string;
  readonly digits: number;
}

/** Set so that a child and an adult at rest and at 3 MET keep within them, and a narrowing or the fenestration goes beyond. */
export const SCALES: Readonly<Record<MapName, Scale>> = {
  speed: { least: 0, most: 0.5, unit: "m/s", digits: 1 },
  pressure: { least: -0.5, most: 1.5, unit: "mmHg", digits: 1 },
  loss: { least: 0, most: 120, unit: "W/m³", digits: 0 },
  age: { least: 0, most: 5, unit: "s", digits: 0 },
};

/** Which of a map's 256 colours a value takes. */
export function mapStep(map: MapName, value: number): number {
  const { least, most } = SCALES[map];
  return Math.max(0, Math.min(255, Math.trunc(((value - least) * 255) / (most - least))));
}
