/** A request that begins with a named person: what the preset says, and over it whatever else is asked. */

import type { Fault } from "../faults.ts";
import { isRecord, oneOf } from "../input-checks.ts";
import { PRESET_NAMES, PRESETS, type PresetName } from "../presets.ts";
import type { Schema } from "./kind.ts";

/** A request with its preset person filled in; what the request itself sets wins. */
export function withPreset(input: Record<string, unknown>): {
  readonly rest: Record<string, unknown>;
  readonly faults: readonly Fault[];
} {
  if (input.preset === undefined) return { rest: input, faults: [] };
  const { preset, ...rest } = input;
  const faults: Fault[] = [];
  const name = oneOf<PresetName>(preset, PRESET_NAMES, "preset", faults);
  if (!name) return { rest, faults };
  const person = PRESETS[name];
  return { rest: { ...person, ...rest, set: overlaid(person.set, rest.set) }, faults };
}

/** What is no record is left for the check to refuse. */
const overlaid = (set: object, asked: unknown): unknown =>
  asked === undefined ? set : isRecord(asked) ? { ...set, ...asked } : asked;

/** The schema with the wish for a preset person added. */
export const presetSchema = (schema: Schema): Schema => ({
  ...schema,
  required: ["kind"],
  anyOf: [{ required: ["stage", "body"] }, { required: ["preset"] }],
  properties: {
    ...(schema.properties as object),
    preset: {
      enum: PRESET_NAMES,
      description: "a person after completion to begin with, in place of stage and body; set is laid over it",
    },
  },
});
