/** What a step changes in the scene, laid over another state. */
import { actsIn, findParameter } from "../../sim/parameters/parameters.ts";
import { CASES, type ParameterValue, type Stage } from "../../sim/parameters/request.ts";
import { clearParameter, setParameter } from "../../state/edit.ts";
import { setPerson } from "../../state/person.ts";
import type { SceneState, View } from "../../state/scene-state.ts";
import type { ScenePatch } from "../format/scene-patch.ts";

/** `state` with the patch laid over it. */
export function applyPatch(state: SceneState, patch: ScenePatch): SceneState {
  const { request } = patch.preset ? setPerson(patch.preset)(state) : state;
  const body = patch.body ?? (patch.case ? CASES[patch.case] : request.body);
  const stage = patch.stage ?? request.stage;
  let next: SceneState = {
    ...state,
    scene: patch.scene ?? state.scene,
    request: {
      ...request,
      stage,
      body,
      volumeRule: patch.volumeRule ?? request.volumeRule,
      set: actingIn(stage, request.set),
    },
    view: applyView(state.view, patch.view),
    beside:
      patch.beside?.map(({ stage: other, set }) => ({
        ...(other ? { stage: other } : {}),
        ...(set ? { set: resolved(set, other ?? stage, body) } : {}),
      })) ?? state.beside,
  };
  for (const [name, value] of Object.entries(patch.set ?? {})) {
    next = value === "default" ? clearParameter(name)(next) : setParameter(name, value)(next);
  }
  return next;
}

/** "default" beside another value of the first pane must stand as a number, since a pane is laid over the first. */
function resolved(
  set: Readonly<Record<string, ParameterValue>>,
  stage: Stage,
  body: SceneState["request"]["body"],
) {
  const fallback = (name: string): ParameterValue => {
    const parameter = findParameter(name);
    if (!parameter) return "default";
    return typeof parameter.default === "function" ? parameter.default(stage, body) : parameter.default;
  };
  return Object.fromEntries(
    Object.entries(set).map(([name, value]) => [name, value === "default" ? fallback(name) : value]),
  );
}

function actingIn(
  stage: Stage,
  set: Readonly<Record<string, ParameterValue>>,
): Readonly<Record<string, ParameterValue>> {
  return Object.fromEntries(
    Object.entries(set).filter(([name]) => {
      const parameter = findParameter(name);
      return parameter !== undefined && actsIn(parameter, stage);
    }),
  );
}

function applyView(view: View, patch: ScenePatch["view"]): View {
  if (!patch) return view;
  const { dye, ...rest } = patch;
  return { ...view, ...(rest as Partial<View>), dye: view.dye + (dye ? 1 : 0) };
}
