/** A frame as another scene would show it: its own needs met, without going there. */
import { entryAt } from "../sim/checked/present.ts";
import type { Circulation } from "../sim/circulation/answer.ts";
import { pathwayGeometry } from "../sim/geometry/pathways/index.ts";
import type { CirculationRequest } from "../sim/parameters/request.ts";
import { paneRequests, type SceneName, type SceneState } from "../state/scene-state.ts";
import type { Frame, Pane } from "./frame.ts";
import { coarseFirst, createSweep, planSweep, type Sweep } from "./running-sweep.ts";
import type { SceneNeeds } from "./scene-needs.ts";

type Answer = (request: CirculationRequest) => Promise<Circulation>;
type Needs = Pick<SceneNeeds, "ready" | "complete">;

/** Points of a curve in a picture the size of a thumb: ends and middle. Each costs a solution, at every opening of the bench. */
const POINTS = 3;

/** Of the first pane alone; a sweep has come to its end, at few points. */
export async function previewOf(
  frame: Frame,
  scene: SceneName,
  needs: Needs,
  answer: Answer,
): Promise<Frame> {
  await needs.ready(scene);
  const state = { ...frame.state, scene, beside: [] };
  const plan = planSweep(state);
  const sweep = plan && (await solved(thinned(plan), answer));
  const pane = entryAt(frame.panes, 0);
  const geometry = pane.geometry ?? pathwayGeometry(state.request);
  return {
    ...frame,
    state,
    sweep,
    panes: [{ ...needs.complete(scene, 0, pane, frame.time), geometry, before: undefined }],
  };
}

/** A frame of a state that nobody has gone to: answered, still, and without a flow that has run. */
export async function stillFrame(state: SceneState, needs: Needs, answer: Answer): Promise<Frame> {
  await needs.ready(state.scene);
  const requests = paneRequests(state);
  const plan = planSweep(state);
  const [sweep, circulations] = await Promise.all([
    plan && solved(plan, answer),
    Promise.all(requests.map(answer)),
  ]);
  const panes = circulations.map((circulation, index) =>
    needs.complete(
      state.scene,
      index,
      { ...EMPTY_PANE, circulation, geometry: pathwayGeometry(circulation.request) },
      0,
    ),
  );
  return { state, panes, sweep, time: 0, pace: 0, degraded: [], still: true };
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

const thinned = (plan: Sweep): Sweep => ({
  ...plan,
  curves: plan.curves.map((curve) => {
    const chosen = coarseFirst(curve.points.length).slice(0, POINTS);
    return { ...curve, points: curve.points.filter((_, index) => chosen.includes(index)) };
  }),
});

const solved = (plan: Sweep, answer: Answer): Promise<Sweep> =>
  new Promise((end) => {
    const running = createSweep(plan, answer, { onEnd: () => end(running.sweep.peek()) });
  });
