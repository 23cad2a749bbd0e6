/** A frame of a state without going there. */
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import { pathwayGeometry } from "../sim/geometry/pathways/index.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import { paneRequests, type SceneState } from "../state/scene-state.ts";
import type { Frame, Pane } from "./frame.ts";
import { createSweep, planSweep, type Sweep } from "./running-sweep.ts";
import type { SceneNeeds } from "./scene-needs.ts";
import { stillMoment } from "./still-moment.ts";

type Answer = (request: CirculationRequest) => Promise<Circulation>;
type Needs = Pick<SceneNeeds, "ready" | "complete">;

/** A frame of a state that nobody has gone to: answered, still, and without a flow that has run. */
export async function stillFrame(state: SceneState, needs: Needs, answer: Answer): Promise<Frame> {
  const requests = paneRequests(state);
  const plan = planSweep(state);
  const [sweep, circulations] = await Promise.all([
    plan && solved(plan, answer),
    Promise.all(requests.map(answer)),
  ]);
  await needs.ready(state.scene, circulations);
  const time = stillMoment(state, circulations[0] ?? null);
  const panes = circulations.map((circulation, index) =>
    needs.complete(
      state.scene,
      index,
      { ...EMPTY_PANE, circulation, geometry: pathwayGeometry(circulation.request) },
      time,
    ),
  );
  return { state, panes, sweep, time, pace: 0, degraded: [], still: true };
}

/** Of a pane for which nothing has been computed yet. */
export const EMPTY_PANE: Pane = {
  circulation: null,
  geometry: null,
  shape: null,
  field: null,
  tracers: null,
  clots: [],
  washOut: null,
};

const solved = (plan: Sweep, answer: Answer): Promise<Sweep> =>
  new Promise((end) => {
    const running = createSweep(plan, answer, { onEnd: () => end(running.sweep.peek()) });
  });
