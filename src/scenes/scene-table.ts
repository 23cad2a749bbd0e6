/** Which drawing shows a frame; the pathway's comes with the stage, each other one when it is first shown. */
import type { Frame } from "../chain/frame.ts";
import { hasPlane } from "../sim/parameters/request.ts";
import { paneRequest, type SceneName, swipeOf } from "../state/scene-state.ts";
import { makePathway } from "./pathway/pathway-scene.ts";
import type { MakeScene } from "./scene.ts";

/**
 * A scene's name; `pumped`: the pathway's scene where blood of a pane reaches the lungs through a pump; `joined`: where a pane needs more
 * than a conduit's painters; `swiped`: with two pathways one over the other.
 */
export type DrawingName = SceneName | "pumped" | "joined" | "swiped";

const LATER: Readonly<Record<Exclude<DrawingName, "pathway">, () => Promise<MakeScene>>> = {
  async joined() {
    await import("./anatomy/stages/index.ts");
    return makePathway;
  },
  async pumped() {
    const { heartView } = await import("./pathway/heart-view.ts");
    return () => makePathway({ makeHeart: heartView });
  },
  async swiped() {
    const [{ swipe }] = await Promise.all([
      import("./pathway/swipe.ts"),
      import("./anatomy/stages/index.ts"),
    ]);
    return () => makePathway({ swipe: swipe() });
  },
  circuit: async () => (await import("./circuit/circuit-scene.ts")).makeCircuit,
  breathing: async () => (await import("./breathing/breathing-scene.ts")).makeBreathing,
  calf: async () => (await import("./calf/calf-scene.ts")).makeCalf,
  exchange: async () => (await import("./exchange/exchange-scene.ts")).makeExchange,
  growth: async () => (await import("./growth/growth-scene.ts")).makeGrowth,
  exercise: async () => (await import("./exercise/exercise-scene.ts")).makeExercise,
};

const makers = new Map<DrawingName, MakeScene>([["pathway", makePathway]]);

/** Of what is asked for, and of what still stands until that is solved. */
export function drawingOf({ state, panes }: Frame): DrawingName {
  if (state.scene !== "pathway") return state.scene;
  const asked = panes.map((_, i) => paneRequest(state, i).stage);
  const shown = panes.flatMap(({ circulation }) => (circulation ? [circulation.request.stage] : []));
  const stages = [...asked, ...shown];
  if (!stages.every(hasPlane)) return "pumped";
  if (swipeOf(state) !== null && panes.every(({ geometry }) => geometry)) return "swiped";
  // Once the painters have come there is no need to make the scene anew.
  return makers.has("joined") || stages.some((stage) => stage !== "extracardiac") ? "joined" : "pathway";
}

/** What makes this drawing; null until it has been fetched. */
export const makerOf = (name: DrawingName): MakeScene | null => makers.get(name) ?? null;

/** Rejects where the drawing cannot be fetched. */
export async function fetchMaker(name: DrawingName): Promise<MakeScene> {
  const known = makerOf(name);
  if (known || name === "pathway") return known ?? makePathway;
  const made = await LATER[name]();
  makers.set(name, made);
  return made;
}
