// @vitest-environment happy-dom
import { afterEach, expect, it } from "vitest";
import { letGo } from "../../../../src/modes/lecture/windows/free-focus.ts";

afterEach(() => document.body.replaceChildren());

/** @param detail how often it was clicked; 0 for a press of Space or Enter */
function pressed(detail: number): Element | null {
  const button = document.createElement("button");
  const sign = document.createElement("span");
  button.append(sign);
  document.body.append(button);
  button.focus();
  letGo({ detail, target: sign });
  return document.activeElement;
}

it("a button pressed by the mouse leaves the keys to the talk", () => {
  expect(pressed(1)).toBe(document.body);
});

it("a button pressed by a key keeps the focus", () => {
  expect(pressed(0)?.tagName).toBe("BUTTON");
});

it("what a press has given the focus to keeps it", () => {
  const field = document.createElement("input");
  const button = document.createElement("button");
  document.body.append(field, button);
  field.focus();
  letGo({ detail: 1, target: button });
  expect(document.activeElement).toBe(field);
});
