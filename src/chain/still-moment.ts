/** The moment that a picture shows which never moved. */
import { entryAt } from "../sim/checked/present.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";
import type { SceneState } from "../state/scene-state.ts";

/** s of the cycle: of a calf, the squeeze at the moment at which it drives most blood out; of all else, and of a calf at rest, the beginning. */
export function stillMoment({ scene }: Pick<SceneState, "scene">, circulation: Circulation | null): number {
  if (scene !== "calf" || !circulation) return 0;
  const { time, flows, pressures } = circulation.traces;
  const { calf } = pressures;
  const { legs } = flows;
  if (!calf || !legs) return 0;
  const rises = (i: number) => i > 0 && i + 1 < time.length && entryAt(calf, i + 1) > entryAt(calf, i - 1);
  let best = 0;
  time.forEach((_, i) => {
    if (rises(i) && (best === 0 || entryAt(legs, i) > entryAt(legs, best))) best = i;
  });
  return entryAt(time, best);
}
