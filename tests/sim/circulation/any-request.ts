/** Random requests inside all stated bounds, and what would be wrong with their answers. */
import fc from "fast-check";
import { PARAMETERS } from "../../../src/sim/parameters/parameters.ts";
import {
  BODY_RANGES,
  type ParameterValue,
  STAGES,
  VOLUME_RULES,
} from "../../../src/sim/parameters/request.ts";

/** Paths at which a number is not finite; typed arrays included. */
export function notFinite(value: unknown, path = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [path];
  if (value instanceof Float64Array) return value.every(Number.isFinite) ? [] : [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) => notFinite(part, `${path}.${key}`));
}

/** Evenly spread over the stated bounds, a thousand steps each. */
const within = (min: number, max: number) =>
  fc.integer({ min: 0, max: 997 }).map((step) => min + ((max - min) * step) / 997);

export const anyRequest = fc.noBias(
  fc.record({
    kind: fc.constant("circulation" as const),
    stage: fc.constantFrom(...STAGES),
    body: fc.record({
      ageYears: within(BODY_RANGES.ageYears.min, BODY_RANGES.ageYears.max),
      bsa: within(BODY_RANGES.bsa.min, BODY_RANGES.bsa.max),
      haemoglobin: within(BODY_RANGES.haemoglobin.min, BODY_RANGES.haemoglobin.max),
    }),
    volumeRule: fc.constantFrom(...VOLUME_RULES),
    set: fc.record(
      Object.fromEntries(
        PARAMETERS.map((parameter): [string, fc.Arbitrary<ParameterValue>] => [
          parameter.name,
          parameter.kind === "number"
            ? within(parameter.min, parameter.max)
            : fc.constantFrom(...parameter.words),
        ]),
      ),
      { requiredKeys: [] },
    ) as fc.Arbitrary<Record<string, ParameterValue>>,
  }),
);
