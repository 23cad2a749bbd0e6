/** Which scene draws which name of the state; the pathway's comes with the stage, each other one when it is first shown. */
import type { SceneName } from "../state/scene-state.ts";
import { makePathway } from "./pathway/pathway-scene.ts";
import type { MakeScene } from "./scene.ts";

const LATER: Readonly<Record<Exclude<SceneName, "pathway">, () => Promise<MakeScene>>> = {
  circuit: async () => (await import("./circuit/circuit-scene.ts")).makeCircuit,
  breathing: async () => (await import("./breathing/breathing-scene.ts")).makeBreathing,
  calf: async () => (await import("./calf/calf-scene.ts")).makeCalf,
  exchange: async () => (await import("./exchange/exchange-scene.ts")).makeExchange,
  growth: async () => (await import("./growth/growth-scene.ts")).makeGrowth,
  exercise: async () => (await import("./exercise/exercise-scene.ts")).makeExercise,
};

const makers = new Map<SceneName, MakeScene>([["pathway", makePathway]]);

/** What makes the scene of this name; null until it has been fetched. */
export const makerOf = (name: SceneName): MakeScene | null => makers.get(name) ?? null;

/** Rejects where the scene's drawing cannot be fetched. */
export async function fetchMaker(name: SceneName): Promise<MakeScene> {
  const known = makerOf(name);
  if (known || name === "pathway") return known ?? makePathway;
  const made = await LATER[name]();
  makers.set(name, made);
  return made;
}
