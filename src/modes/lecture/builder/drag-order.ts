/** Rows of a list put in another order by mouse, pen or finger; the buttons of a row do the same by keys. */
import type { Signal } from "@preact/signals";

export interface Drag {
  /** Index of the row that is held. */
  readonly from: number;
  /** Index that it takes when it is let go. */
  readonly to: number;
  /** CSS px that the held row is away from its place. */
  readonly by: number;
  /** CSS px: height of the held row, by which those that it passes move. */
  readonly height: number;
}

/** A row as it lay when the drag began: CSS px from the page's top. */
export interface RowPlace {
  readonly top: number;
  readonly height: number;
}

/** CSS px: less is a press */
const BEGINS = 6;
/** CSS px from an edge of the window where the page scrolls along, and how far in a frame. */
const EDGE = 70;
const SCROLL = 14;

export const movedTo = <Item>(items: readonly Item[], from: number, to: number): readonly Item[] => {
  if (from === to || to < 0 || to >= items.length) return items;
  const next = [...items];
  next.splice(to, 0, ...next.splice(from, 1));
  return next;
};

/** Where the held row lands: past each row whose middle the pointer has passed. */
export function landing(rows: readonly RowPlace[], from: number, y: number): number {
  const middle = ({ top, height }: RowPlace) => top + height / 2;
  const before = rows.slice(0, from).filter((row) => y < middle(row)).length;
  const after = rows.slice(from + 1).filter((row) => y > middle(row)).length;
  return from - before + after;
}

/** CSS px that a row stands away from its place meanwhile. */
export function shiftOf({ from, to, by, height }: Drag, index: number): number {
  if (index === from) return by;
  if (index > from && index <= to) return -height;
  return index < from && index >= to ? height : 0;
}

/**
 * `list`: its children are the rows. A finger takes a row by what is marked `data-grip`, and scrolls the page elsewhere;
 * a mouse takes it anywhere in its `data-line`.
 */
export function dragOrder(
  list: HTMLElement,
  drag: Signal<Drag | null>,
  onMove: (from: number, to: number) => void,
): () => void {
  let end = () => {};
  const press = (event: PointerEvent) => {
    const at = event.target as Element;
    const taken = event.pointerType === "touch" ? "[data-grip]" : "[data-line]";
    if (event.button !== 0 || !event.isPrimary || !at.closest(taken)) return;
    const from = [...list.children].findIndex((row) => row.contains(at));
    end();
    if (from >= 0) end = follow(event, { list, drag, onMove, from });
  };
  list.addEventListener("pointerdown", press);
  return () => {
    end();
    list.removeEventListener("pointerdown", press);
  };
}

interface Held {
  readonly list: HTMLElement;
  readonly drag: Signal<Drag | null>;
  readonly onMove: (from: number, to: number) => void;
  readonly from: number;
}

/** From the press to its end. */
function follow(start: PointerEvent, { list, drag, onMove, from }: Held): () => void {
  const rows = [...list.children].map((row): RowPlace => {
    const { top, height } = row.getBoundingClientRect();
    return { top: top + scrollY, height };
  });
  const begun = start.clientY + scrollY;
  const stop = new AbortController();
  const { signal } = stop;
  let y = start.clientY;
  let scrolling = 0;
  const show = () => {
    const by = y + scrollY - begun;
    drag.value = { from, to: landing(rows, from, y + scrollY), by, height: rows[from]?.height ?? 0 };
  };
  const scroll = () => {
    if (y < EDGE) scrollBy(0, -SCROLL);
    else if (y > innerHeight - EDGE) scrollBy(0, SCROLL);
    show();
    scrolling = requestAnimationFrame(scroll);
  };
  const end = () => {
    stop.abort();
    cancelAnimationFrame(scrolling);
    drag.value = null;
  };
  const mine = (run: (event: PointerEvent) => void) => (event: PointerEvent) => {
    if (event.pointerId === start.pointerId) run(event);
  };
  const move = mine((event) => {
    y = event.clientY;
    if (drag.peek()) return show();
    if (Math.hypot(event.clientX - start.clientX, y - start.clientY) < BEGINS) return;
    list.setPointerCapture(start.pointerId);
    scroll();
  });
  const letGo = mine(() => {
    const held = drag.peek();
    end();
    if (!held) return;
    swallowClick();
    onMove(from, held.to);
  });
  addEventListener("pointermove", move, { signal });
  addEventListener("pointerup", letGo, { signal });
  addEventListener("pointercancel", mine(end), { signal });
  addEventListener("keydown", ({ key }) => key === "Escape" && end(), { signal });
  return end;
}

/** The press that ends a drag is none on what lies under it. */
function swallowClick(): void {
  const swallow = (event: Event) => {
    event.stopPropagation();
    event.preventDefault();
  };
  addEventListener("click", swallow, { capture: true, once: true });
  setTimeout(() => removeEventListener("click", swallow, { capture: true }));
}
