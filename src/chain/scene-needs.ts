/** What single scenes need beside circulation and field: sweeps, the days after an operation, the leg veins' valves. */
import type { Circulation } from "../sim/circulation/answer.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import type { SceneName, SceneState } from "../state/scene-state.ts";
import { exchangeCourses } from "./exchange-courses.ts";
import type { Pane } from "./frame.ts";
import { legValves } from "./leg-valves.ts";
import { followSweep, type Sweep } from "./running-sweep.ts";

export interface SceneNeeds {
  follow(state: SceneState): void;
  /** The pane with what its scene needs more. */
  complete(scene: SceneName, index: number, pane: Pane, time: number): Pane;
  sweep(): Sweep | null;
  release(): void;
}

export function sceneNeeds(answer: (request: CirculationRequest) => Promise<Circulation>): SceneNeeds {
  const sweeps = followSweep(answer);
  const courses = exchangeCourses();
  const valves: ReturnType<typeof legValves>[] = [];
  return {
    follow: sweeps.follow,
    complete(scene, index, pane, time) {
      if (scene === "exchange") return { ...pane, exchange: courses.of(pane.circulation) };
      if (scene !== "calf") return pane;
      valves[index] ??= legValves();
      return { ...pane, legValves: valves[index].follow(pane.circulation, time) };
    },
    sweep: sweeps.current,
    release: sweeps.release,
  };
}
