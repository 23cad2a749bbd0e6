/** Going to a scene by hand: settings that it is shown with where the person has none of their own come with it, and go with it. */
import type { ParameterValue } from "../sim/parameters/request.ts";
import { type Edit, setScene } from "./edit.ts";
import type { SceneName } from "./scene-state.ts";

/** A calf that rests shows nothing of the pump: mmHg. */
const SHOWN_WITH: Partial<Readonly<Record<SceneName, Readonly<Record<string, ParameterValue>>>>> = {
  calf: { calfPumpPressure: 60 },
};

export const enterScene =
  (scene: SceneName): Edit =>
  (state) => {
    const { lent = [], ...rest } = setScene(scene)(state);
    if (scene === state.scene) return state;
    const { request } = rest;
    const own = Object.fromEntries(Object.entries(request.set).filter(([name]) => !lent.includes(name)));
    const set = { ...SHOWN_WITH[scene], ...own };
    const comes = Object.keys(set).filter((name) => !(name in own));
    if (lent.length + comes.length === 0) return rest;
    return { ...rest, request: { ...request, set }, ...(comes.length > 0 ? { lent: comes } : {}) };
  };
