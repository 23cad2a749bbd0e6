/** A what-if beside the script: what it changes, and the script's own answers for comparison. */
import { computed, effect, type ReadonlySignal } from "@preact/signals";
import type { Circulation } from "../../../sim/circulation/answer/answer.ts";
import { paneRequests } from "../../../state/scene-state.ts";
import { knownAnswers } from "../../shared/lesson/known-answers.ts";
import type { Session } from "../../shared/session.ts";
import { sceneOfStop } from "./stop-state.ts";
import type { FoundStop } from "./stops.ts";
import { whatChanged } from "./what-changed.ts";

export interface WhatIf {
  readonly changes: readonly string[];
  /** One for each pane, as the script has it; null while it is being solved or the what-if's own answer is. */
  readonly before: readonly (Circulation | null)[] | null;
}

/** null while the scene is the script's. */
export function followWhatIf(
  session: Session,
  stop: ReadonlySignal<FoundStop>,
): { readonly now: ReadonlySignal<WhatIf | null>; readonly release: () => void } {
  const { chain, scene } = session;
  const known = knownAnswers(chain);
  const scripted = computed(() => sceneOfStop(stop.value));
  const differs = computed(() => {
    const script = scripted.value;
    return script && JSON.stringify(paneRequests(script)) !== JSON.stringify(paneRequests(scene.value))
      ? script
      : null;
  });
  const now = computed((): WhatIf | null => {
    const script = differs.value;
    if (!script) return null;
    const answers = paneRequests(script).map(known.exactly);
    return {
      changes: whatChanged(script.request, scene.value.request),
      before: chain.solving.value || answers.includes(null) ? null : answers,
    };
  });
  const release = effect(() => {
    for (const request of differs.value ? paneRequests(differs.value) : []) known.want(request);
  });
  return { now, release };
}
