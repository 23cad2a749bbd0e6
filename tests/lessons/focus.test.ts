/** Each step points at one thing (signalling: Mayer, Multimedia Learning, 2021, from memory), and its picture has that thing. */
import { expect, test } from "vitest";
import { readLibrary, SOURCE_LANGUAGE } from "../../src/command/lesson-files.ts";
import { stepState } from "../../src/lesson/states.ts";
import { partsOf } from "../../src/scenes/circuit/parts.ts";
import { spotsOf } from "../../src/scenes/layers/spots.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { paneRequest, type SceneState } from "../../src/state/scene-state.ts";

const steps = readLibrary("lessons").lessons[SOURCE_LANGUAGE]!.flatMap((lesson) =>
  lesson.steps.map(({ id }, index) => ({ name: `${lesson.id} ${id}`, state: stepState(lesson, index) })),
);

/** Lit on the line beneath the pathway, where the plane ends. */
const ON_THE_LINE = ["lungBed"];

function hasIt({ scene, view, ...state }: SceneState): boolean {
  const { focus } = view;
  if (focus === null) return false;
  if (scene === "circuit") return partsOf(focus).size > 0;
  if (scene !== "pathway") return true;
  const panes = [0, ...state.beside.map((_, index) => index + 1)];
  return (
    (view.gradeLine && ON_THE_LINE.includes(focus)) ||
    panes.some((pane) => {
      const geometry = pathwayGeometry(paneRequest({ scene, view, ...state }, pane));
      return (
        geometry !== null &&
        (spotsOf(geometry, focus).length > 0 || geometry.handles.some(({ edits }) => edits === focus))
      );
    })
  );
}

test.each(steps)("$name points at something that its picture has", ({ state }) => {
  expect(hasIt(state), state.view.focus ?? "nothing").toBe(true);
});
