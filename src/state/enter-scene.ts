/** Going to a scene by hand: settings that it is shown with where the person has none of their own come with it, and go with it. */
import type { ParameterValue } from "../sim/parameters/request.ts";
import { type Edit, setScene } from "./edit.ts";
import type { SceneName, SceneState } from "./scene-state.ts";

type Settings = Readonly<Record<string, ParameterValue>>;

/** A calf that rests shows nothing of the pump: mmHg. */
const SHOWN_WITH: Partial<Readonly<Record<SceneName, Settings>>> = {
  calf: { calfPumpPressure: 60 },
};

/** What the scene is shown with where the person has none of their own; nothing where all is there. */
function lending(
  scene: SceneName,
  own: Settings,
): { readonly set: Settings; readonly lent?: readonly string[] } {
  const set = { ...SHOWN_WITH[scene], ...own };
  const lent = Object.keys(set).filter((name) => !(name in own));
  return lent.length > 0 ? { set, lent } : { set: own };
}

/** A scene come to by a bare link. */
export const arriveAtScene: Edit = (state) => {
  const { set, lent } = lending(state.scene, state.request.set);
  return lent ? { ...state, request: { ...state.request, set }, lent } : state;
};

/** Whether nothing would be lent. */
export const isComplete = ({ scene, request }: SceneState): boolean => !lending(scene, request.set).lent;

export const enterScene =
  (scene: SceneName): Edit =>
  (state) => {
    const { lent = [], ...rest } = setScene(scene)(state);
    if (scene === state.scene) return state;
    const { request } = rest;
    const own = Object.fromEntries(Object.entries(request.set).filter(([name]) => !lent.includes(name)));
    const comes = lending(scene, own);
    if (lent.length === 0 && !comes.lent) return rest;
    return { ...rest, request: { ...request, set: comes.set }, ...(comes.lent ? { lent: comes.lent } : {}) };
  };
