/** What a step changes in the scene: the keys of the controls, as a lesson may write them. */
import * as v from "valibot";
import { type Fault, nearestMatch } from "../../sim/faults.ts";
import { findParameter, PARAMETERS } from "../../sim/parameters/parameters.ts";
import {
  BODY_RANGES,
  CASES,
  type ParameterValue,
  STAGES,
  VOLUME_RULES,
} from "../../sim/parameters/request.ts";
import { PRESET_NAMES } from "../../sim/presets.ts";
import { CAMERAS, FOCUSES } from "../../state/places.ts";
import {
  CLOT_SIZES,
  COLOURINGS,
  MAX_BESIDE,
  MAX_CLOTS,
  OVERLAYS,
  PLAY_SPEEDS,
  SCENES,
  SWIPES,
} from "../../state/scene-state.ts";

import { numberAlone } from "../slips/number-slips.ts";

const setting = v.union([v.number(), v.string()]);
/** Parameters by name. */
export const settingsSchema = v.record(v.string(), setting);
const within = ({ min, max }: { readonly min: number; readonly max: number }) =>
  v.pipe(v.number(), v.minValue(min), v.maxValue(max));

const patchEntries = {
  scene: v.optional(v.picklist(SCENES)),
  stage: v.optional(v.picklist(STAGES)),
  preset: v.optional(v.picklist(PRESET_NAMES)),
  case: v.optional(v.picklist(Object.keys(CASES) as (keyof typeof CASES)[])),
  body: v.optional(
    v.strictObject({
      ageYears: within(BODY_RANGES.ageYears),
      bsa: within(BODY_RANGES.bsa),
      haemoglobin: v.optional(within(BODY_RANGES.haemoglobin), BODY_RANGES.haemoglobin.usual),
    }),
  ),
  volumeRule: v.optional(v.picklist(VOLUME_RULES)),
  set: v.optional(settingsSchema),
  view: v.optional(
    v.strictObject({
      colouring: v.optional(v.picklist(COLOURINGS)),
      overlay: v.optional(v.picklist(OVERLAYS)),
      labels: v.optional(v.boolean()),
      handles: v.optional(v.boolean()),
      streamlines: v.optional(v.boolean()),
      gradeLine: v.optional(v.boolean()),
      ledger: v.optional(v.boolean()),
      playSpeed: v.optional(within(PLAY_SPEEDS)),
      dye: v.optional(v.boolean()),
      focus: v.optional(v.nullable(v.picklist(FOCUSES))),
      camera: v.optional(v.picklist(CAMERAS)),
      swipe: v.optional(v.nullable(within(SWIPES))),
      clots: v.optional(v.pipe(v.array(within(CLOT_SIZES)), v.maxLength(MAX_CLOTS))),
    }),
  ),
  beside: v.optional(
    v.pipe(
      v.array(v.strictObject({ stage: v.optional(v.picklist(STAGES)), set: v.optional(settingsSchema) })),
      v.maxLength(MAX_BESIDE),
    ),
  ),
};

/** A named state or the lesson's start. */
export const patchSchema = v.strictObject(patchEntries);
/** A step's scene block. */
export const sceneSchema = v.strictObject({
  from: v.optional(v.string()),
  ...patchEntries,
  seconds: v.optional(within({ min: 1, max: 3600 })),
});

export type ScenePatch = v.InferOutput<typeof sceneSchema>;

export interface SettingFault extends Omit<Fault, "path"> {
  /** of the parameter */
  readonly name: string;
}

/** Faults of `set`: path within the patch, what was found, what is allowed. */
export function settingFaults(set: Readonly<Record<string, ParameterValue>> | undefined): SettingFault[] {
  const faults: SettingFault[] = [];
  for (const [name, value] of Object.entries(set ?? {})) {
    const refuse = (found: string, allowed: string, right?: string) =>
      faults.push({ name, found, allowed, ...(right === undefined ? {} : { fix: [found, right] }) });
    const parameter = findParameter(name);
    if (!parameter) {
      const names = PARAMETERS.map((each) => each.name);
      const near = nearestMatch(name, names);
      refuse(name, near ? `a parameter; nearest: ${near}` : `one of ${names.join(", ")}`);
    } else if (value === "default") {
    } else if (parameter.kind === "word") {
      if (!parameter.words.includes(String(value)))
        refuse(String(value), `${parameter.words.join(", ")}, default`);
    } else if (typeof value !== "number") {
      const { allowed, right } = numberAlone(value);
      refuse(
        value,
        `${parameter.min} to ${parameter.max}, ${allowed} (it is in ${parameter.unit}), or default`,
        right,
      );
    } else if (!(value >= parameter.min && value <= parameter.max)) {
      refuse(String(value), `${parameter.min} to ${parameter.max} ${parameter.unit}, or default`);
    }
  }
  return faults;
}
