import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import * as v from "valibot";
import { expect, test } from "vitest";
import { setBlock } from "../../../src/lesson/edit/lesson-edit.ts";
import { sceneDifference, sceneEdits } from "../../../src/lesson/edit/scene-difference.ts";
import { sceneSchema } from "../../../src/lesson/format/scene-patch.ts";
import { applyPatch } from "../../../src/lesson/model/apply-patch.ts";
import { stepState } from "../../../src/lesson/model/states.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";
import { bodyAt, STAGES } from "../../../src/sim/parameters/request.ts";
import { setBeside, setBody, setParameter, setScene, setStage, setView } from "../../../src/state/edit.ts";
import { PERSONS, setPerson } from "../../../src/state/person.ts";
import { COLOURINGS, SCENES, type SceneState, START } from "../../../src/state/scene-state.ts";

const edits = fc.oneof(
  fc.constantFrom(...STAGES).map(setStage),
  fc.constantFrom(...SCENES).map(setScene),
  fc.constantFrom(...PERSONS).map(setPerson),
  fc.integer({ min: 5, max: 19 }).map((age) => setBody(bodyAt(age))),
  fc.integer({ min: 8, max: 30 }).map((mm) => setParameter("conduitDiameter", mm)),
  fc.integer({ min: 60, max: 120 }).map((rate) => setParameter("heartRate", rate)),
  fc.constantFrom(...COLOURINGS).map((colouring) => setView({ colouring })),
  fc.boolean().map((ledger) => setView({ ledger, focus: ledger ? "conduit" : null })),
  fc.constantFrom([], [{ stage: "lateral-tunnel" as const }]).map(setBeside),
);
const scenes = fc
  .array(edits, { maxLength: 8 })
  .map((all) => all.reduce((state: SceneState, edit) => edit(state), START));

test("what is seen comes back from what differs, whatever it is laid over", () => {
  fc.assert(
    fc.property(scenes, scenes, (over, seen) => {
      const patch = sceneDifference(over, seen);
      const back = applyPatch(over, v.parse(sceneSchema, patch));
      // The same with what does not act left out, and what equals its default.
      const acting = (state: SceneState) => {
        const { set } = applyPatch(state, { stage: state.request.stage }).request;
        const bare = { ...state, request: { ...state.request, set } };
        const all = Object.entries(set).reduce((at, [name, value]) => setParameter(name, value)(at), bare);
        return Object.fromEntries(Object.entries(all.request.set).sort());
      };
      expect({ ...back.request, set: acting(back) }).toEqual({ ...seen.request, set: acting(seen) });
      expect([back.scene, back.view, back.beside]).toEqual([seen.scene, seen.view, seen.beside]);
    }),
    { numRuns: 500 },
  );
});

test("a step left as it is needs no edit; one that is adjusted says so in one line", () => {
  const file = readdirSync("lessons/en").find((name) => name.startsWith("04-"))!;
  const text = readFileSync(`lessons/en/${file}`, "utf8");
  const lesson = readLesson(text, file).value!;
  const index = lesson.steps.findIndex(({ id }) => id === "lungs");
  const seen = setParameter("conduitDiameter", 14)(stepState(lesson, index));
  const after = setBlock(text, index, "scene", sceneEdits(lesson, index, seen))!;
  expect(after).toBe(
    text.replace(
      "view: { focus: lungBed, labels: true }\n",
      (view) => `set: { conduitDiameter: 14 }\n${view}`,
    ),
  );
  expect(stepState(readLesson(after, file).value!, index)).toEqual(seen);
});
