// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { type Key, listenForKeys } from "../../src/ui/keys.ts";

const ran = vi.fn();
const table: readonly Key[] = [
  { keys: ["a"], does: "x", run: () => ran("letter") },
  { keys: ["PageDown", "ArrowRight", " "], does: "x", run: (key) => ran(`next ${key}`) },
  { keys: ["PageUp"], does: "x", run: () => ran("back"), always: true },
  { keys: ["F5"], does: "x", run: () => ran("start") },
  { keys: ["z"], does: "x", run: () => ran("undo"), control: true, shift: false },
  { keys: ["z"], does: "x", run: () => ran("redo"), control: true, shift: true },
];
let letters = true;
let stop = () => {};

beforeEach(() => {
  letters = true;
  ran.mockClear();
  stop = listenForKeys(
    () => table,
    () => letters,
  );
});
afterEach(() => {
  stop();
  document.body.replaceChildren();
});

function press(
  key: string,
  more: KeyboardEventInit = {},
  target: EventTarget = document.body,
): KeyboardEvent {
  const event = new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true, ...more });
  target.dispatchEvent(event);
  return event;
}

function focused(tag: string, attributes: Record<string, string> = {}): HTMLElement {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  document.body.append(element);
  return element;
}

describe("keys", () => {
  it("act wherever the focus is, but in a text field", () => {
    press("a");
    press("a", {}, focused("button"));
    expect(ran).toHaveBeenCalledTimes(2);
    press("a", {}, focused("input", { type: "text" }));
    press("a", {}, focused("textarea"));
    expect(ran).toHaveBeenCalledTimes(2);
  });

  it("U13 leave a text field its keys, but not those of a remote, which no line of text needs", () => {
    const [line, text] = [focused("input", { type: "text" }), focused("textarea")];
    for (const key of [" ", "ArrowRight"]) press(key, {}, line);
    press("PageUp", {}, text);
    expect(ran).not.toHaveBeenCalled();
    expect(press("PageUp", {}, line).defaultPrevented).toBe(true);
    expect(press("F5", {}, line).defaultPrevented).toBe(true);
    expect(press("F5", {}, text).defaultPrevented).toBe(true);
    expect(ran.mock.calls.flat()).toEqual(["back", "start", "start"]);
  });

  it("U13 leave Space to a focused button, and arrows to a slider", () => {
    press(" ", {}, focused("button"));
    press("ArrowRight", {}, focused("div", { role: "slider" }));
    expect(ran).not.toHaveBeenCalled();
    press(" ");
    expect(ran).toHaveBeenLastCalledWith("next  ");
  });

  it("U27 of single letters can be switched off; named keys and held ones stay", () => {
    letters = false;
    press("a");
    expect(ran).not.toHaveBeenCalled();
    press("PageDown");
    press("z", { ctrlKey: true });
    expect(ran.mock.calls.flat()).toEqual(["next PageDown", "undo"]);
  });

  it("distinguish Shift from no Shift where it matters", () => {
    press("Z", { ctrlKey: true, shiftKey: true });
    expect(ran).toHaveBeenLastCalledWith("redo");
  });

  it("keep the browser from acting on what they took", () => {
    expect(press("PageDown").defaultPrevented).toBe(true);
    expect(press("q").defaultPrevented).toBe(false);
  });
});
