/** A frame as another scene would show it: its own needs met, without going there. */
import { entryAt } from "../sim/checked/present.ts";
import type { Circulation } from "../sim/circulation/answer.ts";
import { pathwayGeometry } from "../sim/geometry/pathways/index.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import type { SceneName } from "../state/scene-state.ts";
import type { Frame } from "./frame.ts";
import { createSweep, planSweep, type Sweep } from "./running-sweep.ts";
import type { SceneNeeds } from "./scene-needs.ts";

type Answer = (request: CirculationRequest) => Promise<Circulation>;

/** Of the first pane alone; a sweep has come to its end. */
export async function previewOf(
  frame: Frame,
  scene: SceneName,
  needs: Pick<SceneNeeds, "complete">,
  answer: Answer,
): Promise<Frame> {
  const state = { ...frame.state, scene, beside: [] };
  const plan = planSweep(state);
  const sweep = plan && (await solved(plan, answer));
  const pane = entryAt(frame.panes, 0);
  const geometry = pane.geometry ?? pathwayGeometry(state.request);
  return {
    ...frame,
    state,
    sweep,
    panes: [{ ...needs.complete(scene, 0, pane, frame.time), geometry, before: undefined }],
  };
}

const solved = (plan: Sweep, answer: Answer): Promise<Sweep> =>
  new Promise((end) => {
    const running = createSweep(plan, answer, { onEnd: () => end(running.sweep.peek()) });
  });
