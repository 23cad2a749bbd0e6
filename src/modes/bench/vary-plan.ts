/** One parameter run over its range, alone or against a second one: which states are solved. */
import { curveOver, type Sweep } from "../../chain/running-sweep.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { NumberParameter } from "../../sim/parameters/parameter.ts";
import { actsIn, PARAMETERS } from "../../sim/parameters/parameters.ts";
import type { CirculationRequest, Stage } from "../../sim/parameters/request.ts";

/** Points of a single curve, and of each side of a map. */
const POINTS = 7;
const SIDE = 5;

export const numberParameters = (stage: Stage): readonly NumberParameter[] =>
  PARAMETERS.filter(
    (parameter): parameter is NumberParameter => parameter.kind === "number" && actsIn(parameter, stage),
  );

/** `count` values from the least to the greatest, on the parameter's own steps, each once. */
export function valuesOver({ min, max, step }: NumberParameter, count: number): readonly number[] {
  const values = Array.from({ length: count }, (_, i) => {
    const value = min + ((max - min) * i) / (count - 1);
    return Number((min + Math.round((value - min) / step) * step).toFixed(6));
  });
  return [...new Set(values)];
}

/** Curve "0" alone, or one curve for each value of `down`, named by its index. */
export function planVary(
  request: CirculationRequest,
  across: NumberParameter,
  down: NumberParameter | null,
): Sweep {
  const values = valuesOver(across, down ? SIDE : POINTS);
  const curves = down
    ? valuesOver(down, SIDE).map((value, i) =>
        curveOver(
          String(i),
          { ...request, set: { ...request.set, [down.name]: value } },
          across.name,
          values,
        ),
      )
    : [curveOver("0", request, across.name, values)];
  return { over: across.name, progress: 0, curves };
}

/** Index of the value nearest to what is set. */
export const nearestIndex = (values: readonly number[], value: number): number =>
  values.reduce(
    (best, each, i) => (Math.abs(each - value) < Math.abs(entryAt(values, best) - value) ? i : best),
    0,
  );
