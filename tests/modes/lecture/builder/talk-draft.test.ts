import "fake-indexeddb/auto";
import { expect, test, vi } from "vitest";
import { talkDraft } from "../../../../src/modes/lecture/builder/talk-draft.ts";
import { writeTalkFile } from "../../../../src/modes/lecture/files/talk-file.ts";
import { keepTalk, onOtherTab, readKeptTalk } from "../../../../src/modes/lecture/files/talk-store.ts";
import { pictureStop, stepStop, wordsStop } from "../../../../src/modes/lecture/talk/own-stops.ts";

const STORE = { read: readKeptTalk, keep: keepTalk, onOtherTab };
const draft = async (asked = {}) => {
  const made = talkDraft(asked, () => [], STORE);
  await made.ready;
  return made;
};
const png = new Blob([new Uint8Array([0x89, 0x50, 0x4e, 0x47])], { type: "image/png" });

test("a draft is kept at each change with its pictures, and is there when the page is opened again", async () => {
  const first = await draft();
  first.setStops(null, (stops) => [...stops, wordsStop("title", "Hello")]);
  first.addPictures([{ name: "a1.png", title: "Ward", blob: png }]);
  first.edit("title", (plan) => ({ ...plan, title: "Evening" }));
  first.release();
  const kept = await readKeptTalk();
  expect(kept?.pictures.has("a1.png")).toBe(true);
  const again = await draft();
  expect(again.plan.value.title).toBe("Evening");
  expect(again.plan.value.stops).toEqual([wordsStop("title", "Hello"), pictureStop("a1.png", "Ward")]);
  expect(again.words()).toEqual({ talk: "kept" });
  again.setStops(null, (stops) => [...stops, stepStop("03-pathways", "swirl")]);
  expect(again.linkWords()).toMatchObject({ list: "03-pathways*swirl", without: "2" });
  again.release();
});

test("a link's talk is offered beside the one that is kept, and undo brings the kept one back", async () => {
  await keepTalk({
    plan: { title: "Mine", minutes: 20, stops: [wordsStop("title", "Mine")] },
    pictures: new Map(),
  });
  const linked = await draft({ list: "03-pathways*swirl", minutes: "15" });
  expect(linked.plan.value.title).toBe("Mine");
  expect(linked.offered.value?.plan.stops).toEqual([stepStop("03-pathways", "swirl")]);
  linked.takeOffered();
  expect(linked.offered.value).toBeNull();
  expect(linked.plan.value.stops).toEqual([stepStop("03-pathways", "swirl")]);
  expect(linked.words()).toMatchObject({ list: "03-pathways*swirl", minutes: "15" });
  linked.undo();
  expect(linked.plan.value.title).toBe("Mine");
  linked.redo();
  expect(linked.plan.value.stops).toEqual([stepStop("03-pathways", "swirl")]);
  linked.release();
});

test("a link's title comes without signs that turn the order of the words", async () => {
  await keepTalk({ plan: { title: "", minutes: 20, stops: [] }, pictures: new Map() });
  const linked = await draft({ list: "03-pathways*swirl", title: "Evening\u202E talk\u2066" });
  expect(linked.offered.value?.plan.title).toBe("Evening talk");
  linked.release();
});

test("a link's talk that is declined leaves the kept one, and the same steps are not offered", async () => {
  const stops = [stepStop("03-pathways", "swirl")];
  await keepTalk({ plan: { title: "Mine", minutes: 20, stops }, pictures: new Map() });
  const same = await draft({ list: "03-pathways*swirl" });
  expect(same.offered.value).toBeNull();
  same.release();
  const other = await draft({ list: "04-energy-loss*narrow" });
  other.keepOwn();
  other.edit("title", (plan) => ({ ...plan, title: "Still mine" }));
  other.release();
  expect((await readKeptTalk())?.plan).toEqual({ title: "Still mine", minutes: 20, stops });
});

test("typing is one change, each other act its own", async () => {
  await keepTalk({ plan: { title: "", minutes: 20, stops: [] }, pictures: new Map() });
  const made = await draft();
  for (const title of ["E", "Ev", "Eve"]) made.edit("title", (plan) => ({ ...plan, title }));
  made.setStops(null, () => [wordsStop("end", "Bye")]);
  made.undo();
  expect(made.plan.value).toMatchObject({ title: "Eve", stops: [] });
  made.undo();
  expect(made.plan.value.title).toBe("");
  made.release();
});

test("a store that refuses is reported, and the draft goes on", async () => {
  const refusing = {
    read: () => Promise.reject(new Error("no")),
    keep: () => Promise.reject(new Error("no")),
    onOtherTab,
  };
  const made = talkDraft({}, () => [], refusing);
  await made.ready;
  made.setStops(null, () => [wordsStop("end", "Bye")]);
  await Promise.resolve();
  expect(made.keeps.value).toBe(false);
  expect(made.plan.value.stops).toHaveLength(1);
  made.release();
});

test("a file that is no talk, or no file, says so and is not offered; one that is waits beside the present talk", async () => {
  const made = await draft();
  const stops = [stepStop("03-pathways", "swirl")];
  made.setStops(null, () => stops);
  const folder = { size: 4096, arrayBuffer: () => Promise.reject(new Error("no file")) } as unknown as Blob;
  const named = (text: string) => new File([text], "wrong.zip");
  for (const wrong of [named("{}"), named("not json"), named("PK broken"), folder]) {
    made.report([]);
    await made.open(wrong);
    expect(made.refusedFile.value).toBe(wrong instanceof File ? "wrong.zip" : "");
    expect(made.faults.value).toEqual([]);
    expect(made.offered.value).toBeNull();
    expect(made.plan.value.stops).toEqual(stops);
  }
  const other = {
    plan: { title: "Other", minutes: 10, stops: [wordsStop("end", "Thanks")] },
    pictures: new Map(),
  };
  await made.open(await writeTalkFile(other));
  expect(made.plan.value.stops).toEqual(stops);
  expect(made.offered.value?.plan.title).toBe("Other");
  made.takeOffered();
  expect(made.plan.value.title).toBe("Other");
  made.undo();
  expect(made.plan.value.stops).toEqual(stops);
  made.setStops(null, () => []);
  await made.open(await writeTalkFile(other));
  expect(made.plan.value.title).toBe("Other");
  made.release();
});

test("what another tab puts into the talk stays with the next change here, and undo takes it out", async () => {
  await keepTalk({ plan: { title: "", minutes: 20, stops: [wordsStop("title", "A")] }, pictures: new Map() });
  const here = await draft();
  const there = [wordsStop("title", "A"), pictureStop("b1.png", "Bench")];
  await keepTalk({
    plan: { title: "", minutes: 20, stops: there },
    pictures: new Map([["b1.png", png]]),
  });
  const tab = new BroadcastChannel("lungward-talk");
  tab.postMessage(null);
  await vi.waitFor(() => expect(here.plan.value.stops).toEqual(there));
  here.setStops(null, (stops) => [...stops, wordsStop("end", "Z")]);
  const kept = await readKeptTalk();
  expect(kept?.plan.stops).toEqual([...there, wordsStop("end", "Z")]);
  expect(kept?.pictures.has("b1.png")).toBe(true);
  here.undo();
  here.undo();
  expect(here.plan.value.stops).toEqual([wordsStop("title", "A")]);
  here.release();
  tab.close();
});
