/** The only ways to change a SceneState: each takes a state and gives a new one. Values are brought into range here, once. */
import { defaultSetting, findParameter } from "../sim/parameters/parameters.ts";
import type {
  Body,
  CirculationRequest,
  ParameterValue,
  Stage,
  VolumeRule,
} from "../sim/parameters/request.ts";
import { type Beside, MAX_BESIDE, type SceneName, type SceneState, type View } from "./scene-state.ts";

export type Edit = (state: SceneState) => SceneState;

/** The nearest allowed number: within the range and on a whole step from its lower end. */
export function nearestAllowed(
  parameter: { readonly min: number; readonly max: number; readonly step: number },
  value: number,
): number {
  const within = Math.min(parameter.max, Math.max(parameter.min, value));
  const onStep = parameter.min + Math.round((within - parameter.min) / parameter.step) * parameter.step;
  // Removes the rounding error of 0.1 * 3.
  return Number(Math.min(parameter.max, onStep).toPrecision(10));
}

const withRequest = (state: SceneState, change: Partial<CirculationRequest>): SceneState => ({
  ...state,
  request: { ...state.request, ...change },
});

function without<T>(record: Readonly<Record<string, T>>, name: string): Record<string, T> {
  const { [name]: _, ...rest } = record;
  return rest;
}

/** What a person sets is their own, also where it first came with a scene. */
const owned = (state: SceneState, name: string): SceneState =>
  state.lent?.includes(name) ? { ...state, lent: state.lent.filter((each) => each !== name) } : state;

/** Sets a parameter; a value equal to the default is left out, so that equal scenes have equal states. */
export const setParameter =
  (name: string, value: ParameterValue): Edit =>
  (before) => {
    const parameter = findParameter(name);
    if (!parameter) return before;
    const state = owned(before, name);
    const allowed = parameter.kind === "number" ? nearestAllowed(parameter, Number(value)) : value;
    const fallback = defaultSetting(parameter, state.request.stage, state.request.body);
    const rest = without(state.request.set, name);
    return withRequest(state, { set: allowed === fallback ? rest : { ...rest, [name]: allowed } });
  };

/** Back to the default. */
export const clearParameter =
  (name: string): Edit =>
  (state) =>
    withRequest(state, { set: without(state.request.set, name) });

export const clearParameters: Edit = (state) => withRequest(state, { set: {} });

export const setStage =
  (stage: Stage): Edit =>
  (state) =>
    withRequest(state, { stage });

export const setBody =
  (body: Body): Edit =>
  (state) =>
    withRequest(state, { body });

export const setVolumeRule =
  (volumeRule: VolumeRule): Edit =>
  (state) =>
    withRequest(state, { volumeRule });

export const setScene =
  (scene: SceneName): Edit =>
  (state) => ({ ...state, scene });

export const setView =
  (change: Partial<View>): Edit =>
  (state) => ({ ...state, view: { ...state.view, ...change } });

export const setBeside =
  (beside: readonly Beside[]): Edit =>
  (state) => ({ ...state, beside: beside.slice(0, MAX_BESIDE) });

export const releaseDye: Edit = (state) => setView({ dye: state.view.dye + 1 })(state);

export const togglePause: Edit = (state) => setView({ paused: !state.view.paused })(state);
