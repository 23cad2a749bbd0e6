/** A stop's own person: in the scene, the words' numbers, and no further than that stop. */
import { expect, test } from "vitest";
import { readLessonFiles } from "../../../../src/cli/lesson-files.ts";
import { findStep } from "../../../../src/lesson/lesson.ts";
import { statesAround, stepState } from "../../../../src/lesson/model/states.ts";
import { readTalkFile, writeTalkFile } from "../../../../src/modes/lecture/files/talk-file.ts";
import {
  lessonWith,
  type OwnPerson,
  personIn,
  personSentence,
} from "../../../../src/modes/lecture/talk/own-person.ts";
import { fitsInLink, stepStop } from "../../../../src/modes/lecture/talk/own-stops.ts";
import { findStops } from "../../../../src/modes/lecture/talk/stops.ts";
import { START } from "../../../../src/state/scene-state.ts";

const { lessons } = readLessonFiles("lessons");
const losses = lessons.en!.find(({ id }) => id === "04-energy-loss")!;
const narrow = findStep(losses, "narrow");
const person: OwnPerson = {
  body: { ageYears: 12, bsa: 1.2, haemoglobin: 16 },
  set: { pulmonaryResistanceIndex: 3 },
};

test("the step's scene, the one before and the start are this person's; what the lesson sets stays", () => {
  const own = lessonWith(losses, narrow, person);
  const { request } = stepState(own, narrow);
  expect(request.body).toEqual(person.body);
  expect(request.set).toEqual({ ...stepState(losses, narrow).request.set, pulmonaryResistanceIndex: 3 });
  const { others } = statesAround(own, narrow);
  expect(others.previous!.request.body).toEqual(person.body);
  expect(others.start!.request.body).toEqual(person.body);
});

test("a value set for the person wins over the step's own, at that step alone", () => {
  const wide = { ...person, set: { conduitDiameter: 22 } };
  const own = lessonWith(losses, narrow, wide);
  expect(stepState(own, narrow).request.set.conduitDiameter).toBe(22);
  const joint = findStep(losses, "narrow-ask");
  expect(stepState(own, joint).request.set).not.toEqual(stepState(own, narrow).request.set);
});

test("a body alone makes one copy of the lesson, so that a prediction meets its answer", () => {
  const body = { ...person, set: {} };
  expect(lessonWith(losses, 1, body)).toBe(lessonWith(losses, 2, { ...body }));
  expect(lessonWith(losses, 1, null)).toBe(losses);
});

test("on stage and in a file the person is said to be invented", () => {
  const words = personSentence(person, personIn(START, person).request);
  expect(words).toMatch(/^Invented person: 12\u202fyears, 1\.20\u202fm², haemoglobin 16\.0\u202fg\/dL; /);
  expect(words).toContain("3.0");
});

test("the file keeps the person; one out of range is named, and the stop opens without", async () => {
  const stop = { ...stepStop(losses.id, "narrow"), person };
  expect(fitsInLink([stop])).toBe(false);
  const plan = { title: "", minutes: 20, stops: [stop] };
  const kept = await readTalkFile(await writeTalkFile({ plan, pictures: new Map() }));
  expect(kept).toMatchObject({ faults: [], talk: { plan } });
  for (const [wrong, path] of [
    [{ ...person, body: { ...person.body, haemoglobin: 90 } }, "stops.1.person.body.haemoglobin"],
    [{ ...person, set: { gravity: 1 } }, "stops.1.person.set"],
  ] as const) {
    const file = await writeTalkFile({
      plan: { ...plan, stops: [{ ...stop, person: wrong }] },
      pictures: new Map(),
    });
    const { talk, faults } = await readTalkFile(file);
    expect(talk?.plan.stops).toEqual([{ ...stop, person: null }]);
    expect(faults.map((each) => each.path)).toEqual([path]);
  }
});

test("stops of one lesson with and without the person show different bodies", () => {
  const stops = [stepStop(losses.id, "narrow"), { ...stepStop(losses.id, "narrow"), person }];
  const bodies = findStops(stops, lessons.en!).found.map((stop) =>
    stop.kind === "step" ? stepState(stop.found.lesson, stop.found.index).request.body.ageYears : null,
  );
  expect(bodies).toEqual([losses && stepState(losses, narrow).request.body.ageYears, 12]);
});
