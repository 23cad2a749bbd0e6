/** Which scene draws which name of the state. */
import type { SceneName } from "../state/scene-state.ts";
import { makeBreathing } from "./breathing/breathing-scene.ts";
import { makeCalf } from "./calf/calf-scene.ts";
import { makeCircuit } from "./circuit/circuit-scene.ts";
import { makeExchange } from "./exchange/exchange-scene.ts";
import { makeExercise } from "./exercise/exercise-scene.ts";
import { makeGrowth } from "./growth/growth-scene.ts";
import { makePathway } from "./pathway/pathway-scene.ts";
import type { MakeScene } from "./scene.ts";

export const SCENE_MAKERS: Readonly<Partial<Record<SceneName, MakeScene>>> = {
  pathway: makePathway,
  circuit: makeCircuit,
  breathing: makeBreathing,
  calf: makeCalf,
  exchange: makeExchange,
  growth: makeGrowth,
  exercise: makeExercise,
};
