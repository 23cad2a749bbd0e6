// @vitest-environment happy-dom
import { signal } from "@preact/signals";
import { afterEach, beforeEach, expect, it } from "vitest";
import {
  type Drag,
  dragOrder,
  landing,
  movedTo,
  shiftOf,
} from "../../../../src/modes/lecture/builder/drag-order.ts";

/** Four rows of 50 px, one below the other. */
const ROWS = [0, 50, 100, 150].map((top) => ({ top, height: 50 }));

it("a row lands past each one whose middle the pointer has passed", () => {
  expect(landing(ROWS, 0, 20)).toBe(0);
  expect(landing(ROWS, 0, 76)).toBe(1);
  expect(landing(ROWS, 0, 400)).toBe(3);
  expect(landing(ROWS, 3, 74)).toBe(1);
  expect(landing(ROWS, 3, -40)).toBe(0);
  expect(landing(ROWS, 2, 130)).toBe(2);
});

it("a row moves to another place, and the same list comes back where nothing moves", () => {
  const items = ["a", "b", "c", "d"];
  expect(movedTo(items, 0, 2)).toEqual(["b", "c", "a", "d"]);
  expect(movedTo(items, 3, 0)).toEqual(["d", "a", "b", "c"]);
  for (const to of [1, -1, 4]) expect(movedTo(items, 1, to)).toBe(items);
});

it("the rows between give way by the height of the one that is held", () => {
  const down: Drag = { from: 0, to: 2, by: 90, height: 50 };
  expect([0, 1, 2, 3].map((index) => shiftOf(down, index))).toEqual([90, -50, -50, 0]);
  const up: Drag = { from: 3, to: 2, by: -40, height: 50 };
  expect([0, 1, 2, 3].map((index) => shiftOf(up, index))).toEqual([0, 0, 50, -40]);
});

const drag = signal<Drag | null>(null);
const moves: (readonly number[])[] = [];
let release = () => {};
let presses = 0;

beforeEach(() => {
  // The page is no longer than the window.
  globalThis.scrollBy = () => {};
  document.body.innerHTML = `<ol>${ROWS.map(() => "<li><p data-line><i data-grip></i><button></button></p></li>").join("")}</ol>`;
  const list = document.querySelector("ol")!;
  list.setPointerCapture = () => {};
  [...list.children].forEach((row, index) => {
    row.getBoundingClientRect = () => ROWS[index] as unknown as DOMRect;
    row.querySelector("button")!.onclick = () => {
      presses += 1;
    };
  });
  release = dragOrder(list, drag, (from, to) => moves.push([from, to]));
});
afterEach(async () => {
  release();
  // A press that was waited for in vain is let go.
  await new Promise((resolve) => setTimeout(resolve));
  moves.length = 0;
  presses = 0;
});

const send = (to: EventTarget, type: string, clientY: number, pointerType: string) =>
  to.dispatchEvent(
    new PointerEvent(type, {
      ...{ bubbles: true, button: 0, isPrimary: true, pointerId: 1 },
      ...{ clientX: 10, clientY, pointerType },
    }),
  );

/** From the first row's element down over two rows. */
function pull(selector: string, pointerType: string) {
  send(document.querySelector(selector)!, "pointerdown", 25, pointerType);
  for (const y of [60, 100, 130]) send(document.body, "pointermove", y, pointerType);
}

it("a mouse takes a row anywhere in its line, and the press that ends it is none on a button", () => {
  pull("button", "mouse");
  expect(drag.value?.to).toBe(2);
  send(document.body, "pointerup", 130, "mouse");
  document.querySelector<HTMLElement>("button")!.click();
  expect(moves).toEqual([[0, 2]]);
  expect(presses).toBe(0);
  expect(drag.value).toBeNull();
});

it("a finger takes a row by its grip and scrolls the page elsewhere", () => {
  pull("button", "touch");
  expect(drag.value).toBeNull();
  send(document.body, "pointerup", 130, "touch");
  pull("i", "touch");
  send(document.body, "pointerup", 130, "touch");
  expect(moves).toEqual([[0, 2]]);
});

it("a press without a movement stays a press; Escape and a lost pointer move nothing", () => {
  const button = document.querySelector<HTMLElement>("button")!;
  send(button, "pointerdown", 25, "mouse");
  send(document.body, "pointermove", 28, "mouse");
  send(document.body, "pointerup", 28, "mouse");
  button.click();
  expect(presses).toBe(1);
  pull("i", "mouse");
  dispatchEvent(new KeyboardEvent("keydown", { key: "Escape" }));
  send(document.body, "pointerup", 130, "mouse");
  pull("i", "touch");
  send(document.body, "pointercancel", 130, "touch");
  expect(moves).toEqual([]);
});
