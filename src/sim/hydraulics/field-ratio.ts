/** What a settled field was found to lose, over what the handbook says: tabulated beforehand, interpolated at once. */
import { numberSetting } from "../parameters/parameters.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import { toLitresPerMinute } from "../units.ts";
import measured from "./field-ratios.json" with { type: "json" };

/** Where the ratio was tabulated: mm to either side, % of diameter, L/min/m2 through both lungs; a 5-year-old's default sizes otherwise. */
export const GRID = { cavalOffset: [0, 8], pathwayNarrowing: [0, 20, 40], index: [2, 3.5, 6] } as const;

type Ratios = Readonly<Record<string, readonly (number | null)[]>>;

export interface FieldRatios {
  readonly cavalOffset: readonly number[];
  readonly pathwayNarrowing: readonly number[];
  readonly index: readonly number[];
  readonly cellsAcross: number;
  /**
   * by stage, [offset][narrowing][index] flattened; the chamber has one narrowing, 0; null where the field's energy budget did not close:
   * power lost, and total-pressure drop from the lower vein to the pulmonary arteries
   */
  readonly powers: Ratios;
  readonly drops: Ratios;
  /** energy audit of each field, % of its loss */
  readonly audits: Readonly<Record<string, readonly number[]>>;
}

/** What the field loses over what the handbook says, dimensionless. */
export interface FieldRatio {
  readonly power: number;
  readonly drop: number;
}

/** Written by `src/cli/field-ratios.ts`. */
export const fieldRatios: FieldRatios = measured;

/**
 * Field over handbook loss; multiplied with the handbook's it says what a field would show. Linear between the tabulated points and held
 * at the table's edge beyond them; undefined where there is no table or no trustworthy field next to the point.
 * @param lungFlow m3/s through both lungs
 */
export function fieldRatio(request: CirculationRequest, lungFlow: number): FieldRatio | undefined {
  const { cavalOffset, pathwayNarrowing, index, powers, drops } = fieldRatios;
  const count = powers[request.stage]?.length;
  if (count === undefined) return undefined;
  const narrowings = count / (cavalOffset.length * index.length);
  const offset = between(cavalOffset, Math.abs(numberSetting(request, "cavalOffset")));
  const narrowing = between(
    pathwayNarrowing.slice(0, narrowings),
    numberSetting(request, "pathwayNarrowing"),
  );
  const flow = between(index, toLitresPerMinute(lungFlow) / request.body.bsa);
  let power = 0;
  let drop = 0;
  for (const [i, a] of offset) {
    for (const [j, b] of narrowing) {
      for (const [k, c] of flow) {
        const weight = a * b * c;
        if (weight === 0) continue;
        const at = (i * narrowings + j) * index.length + k;
        const [onePower, oneDrop] = [powers[request.stage]?.[at], drops[request.stage]?.[at]];
        if (typeof onePower !== "number" || typeof oneDrop !== "number") return undefined;
        power += weight * onePower;
        drop += weight * oneDrop;
      }
    }
  }
  return { power, drop };
}

/** The tabulated points about a value, with their weights. */
function between(points: readonly number[], value: number): readonly (readonly [number, number])[] {
  if (value <= points[0]!) return [[0, 1]];
  for (let i = 1; i < points.length; i++) {
    const part = (value - points[i - 1]!) / (points[i]! - points[i - 1]!);
    if (part <= 1)
      return [
        [i - 1, 1 - part],
        [i, part],
      ];
  }
  return [[points.length - 1, 1]];
}
