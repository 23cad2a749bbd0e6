/** A row of buttons with one tab stop: arrows, Home and End move along it. */
import { useRef, useState } from "preact/hooks";
import { present } from "../sim/checked/present.ts";

interface ToolbarItem {
  readonly name: string;
  readonly label: string;
  readonly onPress: () => void;
  /** Set for a button that opens and closes something. */
  readonly expanded?: boolean;
  /** Set for a button that stays in or out. */
  readonly pressed?: boolean;
  readonly disabled?: boolean;
}

export interface ToolbarProps {
  readonly label: string;
  readonly items: readonly ToolbarItem[];
}

const MOVES: Readonly<Record<string, (index: number, count: number) => number>> = {
  ArrowRight: (index, count) => (index + 1) % count,
  ArrowLeft: (index, count) => (index + count - 1) % count,
  Home: () => 0,
  End: (_, count) => count - 1,
};

export function Toolbar({ label, items }: ToolbarProps) {
  const row = useRef<HTMLDivElement>(null);
  const [stop, setStop] = useState(0);
  const current = Math.min(stop, items.length - 1);
  const move = (event: KeyboardEvent) => {
    let next = MOVES[event.key]?.(current, items.length);
    if (next === undefined) return;
    event.preventDefault();
    if (row.current && getComputedStyle(row.current).direction === "rtl" && event.key.startsWith("Arrow"))
      next = present(MOVES[event.key === "ArrowRight" ? "ArrowLeft" : "ArrowRight"])(current, items.length);
    setStop(next);
    row.current?.querySelectorAll("button")[next]?.focus();
  };
  return (
    <div class="toolbar" role="toolbar" aria-label={label} ref={row} tabIndex={-1} onKeyDown={move}>
      {items.map((item, index) => (
        <button
          type="button"
          key={item.name}
          data-item={item.name}
          tabIndex={index === current ? 0 : -1}
          aria-expanded={item.expanded}
          aria-pressed={item.pressed}
          aria-disabled={item.disabled || undefined}
          onFocus={() => setStop(index)}
          onClick={() => !item.disabled && item.onPress()}
        >
          {item.label}
        </button>
      ))}
    </div>
  );
}
