// @vitest-environment happy-dom
/** A closed page refuses what leaves it, and lets the organiser type. */
import { afterEach, beforeEach, expect, test } from "vitest";
import { closePage } from "../../../src/modes/kiosk/closed.ts";

let open = () => {};
const field = document.createElement("input");
beforeEach(() => {
  document.body.replaceChildren(field);
  open = closePage();
});
afterEach(() => open());

const refused = (target: EventTarget, event: Event): boolean => !target.dispatchEvent(event);
const key = (name: string, more: KeyboardEventInit & { readonly third?: boolean } = {}) => {
  const { third, ...keys } = more;
  const event = new KeyboardEvent("keydown", { key: name, bubbles: true, cancelable: true, ...keys });
  Object.defineProperty(event, "getModifierState", {
    value: (asked: string) => third === true && asked === "AltGraph",
  });
  return event;
};

test.each([
  ["F5", {}],
  ["BrowserBack", {}],
  ["BrowserRefresh", {}],
  ["ArrowLeft", { altKey: true }],
  ["d", { altKey: true }],
  ["Home", { altKey: true }],
  ["p", { ctrlKey: true }],
  ["w", { metaKey: true }],
  ["r", { ctrlKey: true }],
  ["Delete", { ctrlKey: true, altKey: true }],
])("%s %j leaves neither the page nor a field of it", (name, keys) => {
  expect(refused(document.body, key(name, keys))).toBe(true);
  expect(refused(field, key(name, keys))).toBe(true);
});

test.each([
  ["a", {}],
  ["@", { ctrlKey: true, altKey: true, third: true }],
  ["@", { altKey: true }],
  ["v", { ctrlKey: true }],
  ["a", { metaKey: true }],
])("%s %j is typed into a field", (name, keys) => {
  expect(refused(field, key(name, keys))).toBe(false);
});

test("text of a field is marked, that of the page is not", () => {
  const start = () => new Event("selectstart", { bubbles: true, cancelable: true });
  expect(refused(field, start())).toBe(false);
  expect(refused(document.body, start())).toBe(true);
});

test.each(["mousedown", "mouseup"])("%s of a wheel or of a button that goes back does nothing", (kind) => {
  for (const button of [0, 1, 2, 3, 4])
    expect(refused(document.body, new MouseEvent(kind, { button, bubbles: true, cancelable: true }))).toBe(
      button > 0,
    );
});
