/** Each step points at one thing (signalling: Mayer, Multimedia Learning, 2021), and its picture has that thing. */
import { expect, test } from "vitest";
import { readLessonFiles, SOURCE_LANGUAGE } from "../../src/cli/lesson-files.ts";
import { stepState } from "../../src/lesson/model/states.ts";
import { partsOf } from "../../src/scenes/circuit/parts.ts";
import { spotsOf } from "../../src/scenes/layers/spots.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { PATHWAY_PARAMETERS } from "../../src/sim/parameters/pathway-parameters.ts";
import { STAGES } from "../../src/sim/parameters/request.ts";
import { CAMERAS, CIRCUIT_PLACES, FOCUSES } from "../../src/state/places.ts";
import { paneRequest, type SceneState, START } from "../../src/state/scene-state.ts";

const steps = readLessonFiles("lessons").lessons[SOURCE_LANGUAGE]!.flatMap((lesson) =>
  lesson.steps.map(({ id, question }, index) => ({
    name: `${lesson.id} ${id}`,
    state: stepState(lesson, index),
    question,
  })),
);

/** Highlighted on the line below the pathway, where the plane ends. */
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

test("what may be pointed at or come close to is what the pictures have, no more and no less", () => {
  // Narrow places lie on the path only where there are some.
  const narrow = { pathwayNarrowing: 40, leftBranchStenosis: 40, rightBranchStenosis: 40 };
  const planes = STAGES.flatMap((stage) =>
    [{}, narrow, { ...narrow, leftBranchStenosis: 50 }].flatMap((set) => {
      const request = { ...START.request, stage, set: { ...set, fenestrationDiameter: 4 } };
      return pathwayGeometry(request) ?? [];
    }),
  );
  const places = planes.flatMap((plane) => plane.places.map(({ name }) => name));
  const along = planes.flatMap(({ path, handles }) => [
    ...path.map(({ element }) => element),
    ...handles.map(({ edits }) => edits),
  ]);
  for (const name of new Set([...places, ...along])) expect(FOCUSES).toContain(name);
  for (const name of new Set(places)) expect(CAMERAS).toContain(name);
  for (const name of CAMERAS) expect(["whole", ...places]).toContain(name);
  for (const name of CIRCUIT_PLACES) expect(partsOf(name).size, name).toBeGreaterThan(0);
  const parameters = PATHWAY_PARAMETERS.map(({ name }) => name);
  const known = new Set<string>([...places, ...along, ...CIRCUIT_PLACES, ...parameters, "valve", "drain"]);
  expect(FOCUSES.filter((name) => !known.has(name))).toEqual([]);
});

test.each(steps)(
  "$name points at something that its picture has, or asks for the order of places",
  ({ state, question }) => {
    // What comes first is not to be pointed out.
    if (state.view.focus === null && question?.kind === "order") return;
    expect(hasIt(state), state.view.focus ?? "nothing").toBe(true);
  },
);
