/** What single scenes need beside circulation and field: sweeps, the days after an operation, the leg veins' valves. */
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import type { SceneName, SceneState } from "../state/scene-state.ts";
import type { ExchangeCourses } from "./exchange-courses.ts";
import type { Pane } from "./frame.ts";
import type { legValves } from "./leg-valves.ts";
import { followSweep, type Sweep } from "./running-sweep.ts";

export interface SceneNeeds {
  follow(state: SceneState): void;
  /** Resolved once this scene's panes with these circulations can be completed, or cannot. */
  ready(scene: SceneName, circulations?: readonly Circulation[]): Promise<void>;
  /** The pane with what its scene needs more: null until that has been fetched. */
  complete(scene: SceneName, index: number, pane: Pane, time: number): Pane;
  /** s of the cycle that a picture shows which never moved. */
  still(scene: SceneName, circulation: Circulation | null | undefined): number;
  sweep(): Sweep | null;
  release(): void;
}

export function sceneNeeds(answer: (request: CirculationRequest) => Promise<Circulation>): SceneNeeds {
  const sweeps = followSweep(answer);
  const valves: ReturnType<typeof legValves>[] = [];
  let later: typeof import("./later-needs.ts") | null = null;
  let courses: ExchangeCourses | null = null;
  const ready: SceneNeeds["ready"] = async (scene, circulations = []) => {
    if (scene !== "exchange" && scene !== "calf") return;
    // What did not come is asked for again with the next change of the scene.
    later ??= await import("./later-needs.ts").catch(() => null);
    courses ??= later?.exchangeCourses(answer) ?? null;
    if (scene === "exchange") await Promise.all(circulations.map((each) => courses?.begin(each)));
  };
  return {
    follow(state) {
      void ready(state.scene);
      sweeps.follow(state);
    },
    ready,
    complete(scene, index, pane, time) {
      if (scene === "exchange") return { ...pane, exchange: courses?.of(pane.circulation) ?? null };
      if (scene !== "calf") return pane;
      if (!later) return { ...pane, legValves: null };
      valves[index] ??= later.legValves();
      return { ...pane, legValves: valves[index].follow(pane.circulation, time) };
    },
    still: (scene, circulation) =>
      (scene === "calf" && circulation && later?.squeezeMoment(circulation.traces)) || 0,
    sweep: sweeps.current,
    release: sweeps.release,
  };
}
