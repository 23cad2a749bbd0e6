/** The persons of presets.ts as edits of a scene, and which of them a scene shows. */
import { type CirculationRequest, PATHWAY_STAGES, type Stage } from "../sim/parameters/request.ts";
import { PRESET_NAMES, PRESET_SETTINGS, PRESETS, type PresetName } from "../sim/presets.ts";
import type { Edit } from "./edit.ts";

export type PersonName = PresetName;
export const PERSONS: readonly PersonName[] = PRESET_NAMES;

const completed = (stage: Stage): boolean => (PATHWAY_STAGES as readonly Stage[]).includes(stage);

/** Their body, heart and lungs; pathway, breath and effort stay, as far as they are after completion. */
export const setPerson =
  (name: PersonName): Edit =>
  (state) => {
    const { stage, set } = state.request;
    const others = Object.entries(set).filter(([setting]) => !PRESET_SETTINGS.includes(setting));
    const person: CirculationRequest = PRESETS[name];
    return {
      ...state,
      request: {
        ...person,
        stage: completed(stage) ? stage : person.stage,
        set: { ...Object.fromEntries(others), ...person.set },
      },
    };
  };

/** Null where the scene shows none of them. */
export function personOf({ stage, body, volumeRule, set }: CirculationRequest): PersonName | null {
  const shows = (name: PersonName): boolean => {
    const person: CirculationRequest = PRESETS[name];
    return (
      volumeRule === person.volumeRule &&
      body.bsa === person.body.bsa &&
      body.haemoglobin === person.body.haemoglobin &&
      PRESET_SETTINGS.every((setting) => set[setting] === person.set[setting])
    );
  };
  return completed(stage) ? (PERSONS.find(shows) ?? null) : null;
}
