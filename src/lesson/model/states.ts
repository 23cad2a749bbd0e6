/** A lesson's steps as scenes: each laid over the one before, the start, or a named state. */
import { paneRequest, type SceneState, START } from "../../state/scene-state.ts";
import type { Lesson, Step, StepStates } from "../lesson.ts";
import { applyPatch } from "./apply-patch.ts";

/** All of a lesson that decides its scenes. */
export interface Scenes extends Pick<Lesson, "start" | "states"> {
  readonly steps: readonly Pick<Step, "patch">[];
}

/** The scene from which the first step begins. */
const startState = (lesson: Scenes): SceneState => applyPatch(START, lesson.start);

const namedState = (lesson: Scenes, name: string): SceneState =>
  name === "start" ? startState(lesson) : applyPatch(startState(lesson), lesson.states[name] ?? {});

/** What step `index` sets. */
export function stepState(lesson: Scenes, index: number): SceneState {
  let state = startState(lesson);
  for (const { patch } of lesson.steps.slice(0, index + 1)) {
    const from = patch.from ?? "previous";
    // A dye pulse is a count that only grows, whatever the scene is laid over.
    const over = from === "previous" ? state : { ...namedState(lesson, from) };
    state = applyPatch({ ...over, view: { ...over.view, dye: state.view.dye } }, patch);
  }
  return state;
}

/** `own` may be a state that a reader has changed; the other panes' states follow it. */
export function statesAround(
  lesson: Scenes,
  index: number,
  own: SceneState = stepState(lesson, index),
): StepStates {
  const others: Record<string, SceneState> = {
    start: startState(lesson),
    previous: index > 0 ? stepState(lesson, index - 1) : startState(lesson),
  };
  for (const name of Object.keys(lesson.states)) others[name] = namedState(lesson, name);
  for (const [pane, name] of ["second", "third"].entries()) {
    if (own.beside[pane]) others[name] = { ...own, request: paneRequest(own, pane + 1), beside: [] };
  }
  return { own, others };
}
