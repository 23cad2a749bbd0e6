import { expect, it } from "vitest";
import { pictureStop, stepStop, withMore, wordsStop } from "../../../../src/modes/lecture/talk/own-stops.ts";

it("further stops go before an end that closes the talk, else behind", () => {
  const [title, end] = [wordsStop("title", "Invented"), wordsStop("end", "Thank you")];
  const [step, picture] = [stepStop("03-pathways", "job"), pictureStop("a.png", "Own")];
  expect(withMore([title, end], [step, picture])).toEqual([title, step, picture, end]);
  expect(withMore([title], [step])).toEqual([title, step]);
  expect(withMore([end, title], [step])).toEqual([end, title, step]);
  expect(withMore([], [step])).toEqual([step]);
});
