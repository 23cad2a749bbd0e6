// @vitest-environment happy-dom
import "fake-indexeddb/auto";
import { expect, test, vi } from "vitest";
import {
  NO_PROGRESS,
  type Progress,
  readProgress,
  writeProgress,
} from "../../../src/lesson/progress/progress.ts";
import { idFaults } from "../../../src/modes/author/id-faults.ts";
import { plainFix } from "../../../src/modes/author/plain-fix.ts";
import { isNamed, placesNaming, renameEverywhere } from "../../../src/modes/author/rename-places.ts";
import { organiser, setOrganiser } from "../../../src/modes/kiosk/organiser-settings.ts";
import { keepTalk, readKeptTalk } from "../../../src/modes/lecture/files/talk-store.ts";
import { stepStop } from "../../../src/modes/lecture/talk/own-stops.ts";
import { MAX_LENGTH, openOwnTexts } from "../../../src/modes/shared/own/own-texts.ts";

const done = { step: "wide", seen: ["wide"], finished: true, answers: {} };
const asked = { right: true, day: "2026-11-29" };
const progressOf = (id: string): Progress => ({
  version: 1,
  latest: id,
  quiz: { round: 1, given: { [`${id}#wide`]: true, "ward-two#wide": false }, results: [] },
  lessons: {
    [id]: { ...done, recalled: {} },
    "ward-two": { ...done, recalled: { [`${id}#wide`]: asked } },
  },
});
const textOf = (id: string, words = "") => `---\nid: ${id}\n---\n\n## Wide {#wide}\n\n### plain\n${words}\n`;

const KIT = { lessons: [{ id: "04-energy-loss" }] as never, own: new Set<string>() };

async function desk(id = "our-ward") {
  let count = 0;
  const texts = await openOwnTexts({
    store: { all: async () => [], put: async () => {}, remove: async () => {} },
    newId: () => `t${++count}`,
  });
  texts.add("A", textOf(id));
  texts.add("B", textOf("ward-two", "See [it](ward#wide)."));
  return { texts, library: KIT };
}

test("talk, kiosk, record and own lessons take a lesson's new id; another lesson's stays", async () => {
  const lessons = await desk();
  const { texts } = lessons;
  expect(isNamed(await placesNaming(lessons, "nowhere"))).toBe(false);
  const stops = [stepStop("ward", "wide"), stepStop("ward-two", "wide"), stepStop("ward", "wide")];
  await keepTalk({ plan: { title: "T", minutes: 20, stops }, pictures: new Map() });
  setOrganiser({ lessons: ["ward", "ward-two"] });
  localStorage.setItem("lungward.progress", writeProgress(progressOf("ward")));
  expect(await placesNaming(lessons, "ward")).toEqual({ stops: 2, kiosk: true, record: true, lessons: 1 });

  await renameEverywhere(lessons, "ward", "our-ward");
  expect(isNamed(await placesNaming(lessons, "ward"))).toBe(false);
  expect((await readKeptTalk())!.plan.stops).toMatchObject([
    { lesson: "our-ward" },
    { lesson: "ward-two" },
    { lesson: "our-ward" },
  ]);
  expect(organiser.value.lessons).toEqual(["our-ward", "ward-two"]);
  expect(readProgress(localStorage.getItem("lungward.progress"))).toEqual(progressOf("our-ward"));
  expect(texts.list.value.find(({ name }) => name === "B")!.text).toContain("[it](our-ward#wide)");
  expect(texts.list.value.find(({ name }) => name === "B")!.text).toContain("id: ward-two");
});

test("a record of a version to come is left alone", async () => {
  const lessons = await desk();
  const newer = '{"version":2,"lessons":{"ward":{}}}';
  localStorage.setItem("lungward.progress", newer);
  await renameEverywhere(lessons, "ward", "our-ward");
  expect(localStorage.getItem("lungward.progress")).toBe(newer);
  localStorage.setItem("lungward.progress", writeProgress(NO_PROGRESS));
});

test("what names a lesson that another text or the kit still has is no place to change", async () => {
  setOrganiser({ lessons: ["ward", "04-energy-loss"] });
  const twin = await desk("ward");
  expect(isNamed(await placesNaming(twin, "ward"))).toBe(false);
  expect(isNamed(await placesNaming(twin, "04-energy-loss"))).toBe(false);
  await renameEverywhere(twin, "ward", "our-ward");
  expect(organiser.value.lessons).toEqual(["ward", "04-energy-loss"]);
});

test("the new id stands once in the kiosk's list, and a record under both ids is merged", async () => {
  setOrganiser({ lessons: ["ward", "our-ward"] });
  const both = { ...progressOf("ward").lessons, "our-ward": { ...done, seen: ["late"], recalled: {} } };
  localStorage.setItem("lungward.progress", writeProgress({ ...progressOf("ward"), lessons: both }));
  await renameEverywhere(await desk(), "ward", "our-ward");
  expect(organiser.value.lessons).toEqual(["our-ward"]);
  const { lessons } = readProgress(localStorage.getItem("lungward.progress"));
  expect(lessons["our-ward"]!.seen).toEqual(["wide", "late"]);
});

test("where the record cannot be kept it rejects, and the own lessons stay as they are", async () => {
  const lessons = await desk();
  const kept = writeProgress(progressOf("ward"));
  const setItem = () => {
    throw new Error("full");
  };
  vi.stubGlobal("localStorage", { getItem: () => kept, setItem });
  await expect(renameEverywhere(lessons, "ward", "our-ward")).rejects.toThrow("full");
  expect((await placesNaming(lessons, "ward")).lessons).toBe(1);
  vi.unstubAllGlobals();
});

test("a text that would grow too long is left, and named", async () => {
  const lessons = await desk();
  const start = textOf("long", "See [it](ward#wide).");
  const long = start + "x".repeat(MAX_LENGTH - start.length);
  lessons.texts.add("Long", long);
  expect(await renameEverywhere(lessons, "ward", "our-ward")).toEqual(["Long"]);
  const textNamed = (name: string) => lessons.texts.list.value.find((each) => each.name === name)!.text;
  expect(textNamed("Long")).toBe(long);
  expect(textNamed("B")).toContain("[it](our-ward#wide)");
});

test("an id that a lesson of the kit or another own one has is one fault, with an id that is free", async () => {
  const { texts } = await desk("ward");
  const library = {
    lessons: ["04-energy-loss", "ward"].map((id) => ({ id })) as never,
    own: new Set(["ward"]),
  };
  const faultsOf = (text: string) => idFaults({ id: "t9", text }, texts.list.value, library);
  const fixed = (text: string) => plainFix(faultsOf(text)[0]!, text)!.text;
  expect(faultsOf(textOf("04-energy-loss"))).toMatchObject([
    { path: "lesson.md:2", found: 'id "04-energy-loss", which a lesson of the kit has' },
  ]);
  expect(fixed(textOf("04-energy-loss"))).toBe(textOf("04-energy-loss-own"));
  expect(faultsOf(textOf("ward"))).toMatchObject([{ found: 'id "ward", which "A" of your lessons has' }]);
  expect(fixed(textOf("ward"))).toBe(textOf("ward-2"));
  expect(fixed(textOf('  "ward" # ours'))).toBe(textOf("ward-2 # ours"));
  expect(faultsOf(textOf("free"))).toEqual([]);
  // A translation has the id of what it translates.
  expect(faultsOf(textOf("04-energy-loss").replace("\n---\n\n", "\nlanguage: de\n---\n\n"))).toEqual([]);
});
