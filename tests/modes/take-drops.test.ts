// @vitest-environment happy-dom
import { expect, it } from "vitest";
import { takeDrops } from "../../src/modes/shared/take-drops.ts";

it("gives the first of the files dropped and all of them", () => {
  const taken: string[][] = [];
  const release = takeDrops((first, all) => taken.push([first?.name ?? "", ...all.map(({ name }) => name)]));
  const drop = (files: readonly File[]) =>
    dispatchEvent(Object.assign(new Event("drop", { cancelable: true }), { dataTransfer: { files } }));
  drop([new File([""], "one.png"), new File([""], "two.png")]);
  drop([]);
  release();
  drop([new File([""], "late.png")]);
  expect(taken).toEqual([["one.png", "one.png", "two.png"], [""]]);
});
