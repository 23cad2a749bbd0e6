/** The scene that a stop of a talk shows, before anyone changes it. */
import { stepState } from "../../../lesson/model/states.ts";
import { readAddress } from "../../../state/address.ts";
import type { SceneState } from "../../../state/scene-state.ts";
import { personIn } from "./own-person.ts";
import { type DrawnStop, type FoundStop, isDrawn } from "./stops.ts";

export const stateOfStop = (stop: DrawnStop): SceneState =>
  stop.kind === "bench"
    ? personIn(readAddress(stop.state).state, stop.person)
    : stepState(stop.found.lesson, stop.found.index);

/** null where the stop shows no scene */
export const sceneOfStop = (stop: FoundStop): SceneState | null => (isDrawn(stop) ? stateOfStop(stop) : null);
