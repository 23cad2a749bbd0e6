// @vitest-environment happy-dom
import { expect, it } from "vitest";
import { NOTE_SIZES, sizeThatFits } from "../../../../src/modes/lecture/speaker/note-size.ts";

/** Notes in a place of 100 px that are so many px high for each rem of their size. */
function notes(height: number): HTMLElement {
  const around = document.createElement("div");
  const own = document.createElement("section");
  around.append(own);
  Object.defineProperty(around, "clientHeight", { value: 100 });
  Object.defineProperty(around, "scrollHeight", {
    get: () => Math.max(100, Number.parseFloat(own.style.fontSize) * height),
  });
  return own;
}

it.each([
  [10, NOTE_SIZES.usual],
  [85, 1.125],
  [300, NOTE_SIZES.min],
])("notes of %i px a rem stand at %d rem in 100 px", (height, size) => {
  const own = notes(height);
  expect(sizeThatFits(own)).toBe(size);
  expect(own.style.fontSize).toBe(`${size}rem`);
});
