// @vitest-environment happy-dom
import { expect, it } from "vitest";
import { followDrops, holdFiles } from "../../../../src/modes/shared/own/dropped-file.ts";
import { refuseDrops, takeDrops } from "../../../../src/modes/shared/own/take-drops.ts";

/** What the page makes of it: whether the browser is held back, and what the pointer says. */
function drag(name: "dragover" | "drop", files: readonly File[] | null) {
  const dataTransfer = { files: files ?? [], types: [files ? "Files" : "text/plain"], dropEffect: "move" };
  const event = Object.assign(new Event(name, { cancelable: true }), { dataTransfer });
  dispatchEvent(event);
  return [event.defaultPrevented, dataTransfer.dropEffect];
}
const drop = (files: readonly File[]) => drag("drop", files);

it("gives all the files dropped", () => {
  const taken: string[][] = [];
  const release = takeDrops((files) => taken.push(files.map(({ name }) => name)));
  drop([new File([""], "one.png"), new File([""], "two.png")]);
  drop([]);
  release();
  drop([new File([""], "late.png")]);
  expect(taken).toEqual([["one.png", "two.png"], []]);
});

it("holds files back where nothing takes them, and leaves words that are dragged to the browser", () => {
  const file = new File([""], "one.png");
  const release = refuseDrops();
  expect(drag("dragover", [file])).toEqual([true, "none"]);
  expect(drop([file])[0]).toBe(true);
  const leave = takeDrops(() => {});
  expect(drag("dragover", [file])).toEqual([true, "copy"]);
  expect(drag("dragover", null)).toEqual([false, "move"]);
  expect(drag("drop", null)[0]).toBe(false);
  leave();
  release();
  expect(drag("dragover", [file])).toEqual([false, "move"]);
});

it("shares files held over another page and those dropped here out to whom they are for, each once", () => {
  const taken: string[] = [];
  const follow = (ending: string) =>
    followDrops(
      ({ name }) => name.endsWith(ending),
      async (files) => void taken.push(`${ending}: ${files.map(({ name }) => name).join(" ")}`),
      { current: null },
    );
  holdFiles([new File([""], "a.md"), new File([""], "b.json"), new File([""], "c.md")]);
  const leave = [follow(".md"), follow(".json"), follow(".md")];
  expect(taken).toEqual([".md: a.md c.md", ".json: b.json"]);
  drop([new File([""], "d.json")]);
  expect(taken.slice(2)).toEqual([".json: d.json"]);
  for (const each of leave) each();
});
