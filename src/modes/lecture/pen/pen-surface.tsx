/** Takes the pointer's moves over a picture: shows, draws or erases there. */
import { useRef } from "preact/hooks";
import { MAX_SENT, type MarkEvent, type Place } from "./pen.ts";

export const TOOLS = ["pointer", "pen", "eraser"] as const;
export type Tool = (typeof TOOLS)[number];

export interface PenSurfaceProps {
  readonly tool: Tool;
  readonly onMark: (event: MarkEvent) => void;
}

/** Fills what it stands in. */
export function PenSurface({ tool, onMark }: PenSurfaceProps) {
  const line = useRef("");
  const last = useRef<Place | null>(null);
  const apply = (event: PointerEvent, surface: HTMLElement) => {
    const box = surface.getBoundingClientRect();
    const placeOf = ({ clientX, clientY }: PointerEvent): Place => [
      within((clientX - box.x) / box.width),
      within((clientY - box.y) / box.height),
    ];
    if (tool === "pointer") onMark({ kind: "point", at: placeOf(event) });
    else if (tool === "eraser" && event.buttons > 0) {
      const at = placeOf(event);
      onMark({ kind: "erase", along: [last.current ?? at, at] });
      last.current = at;
    } else if (tool === "pen" && line.current) {
      const between = event.getCoalescedEvents?.() ?? [];
      const to = (between.length > 0 ? between : [event]).map(placeOf);
      onMark({ kind: "draw", line: line.current, to: to.slice(-MAX_SENT) });
    }
  };
  const end = () => {
    line.current = "";
    last.current = null;
  };
  return (
    <div
      class={`pen-surface ${tool}`}
      aria-hidden="true"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        line.current = newLine();
        apply(event, event.currentTarget);
      }}
      onPointerMove={(event) => apply(event, event.currentTarget)}
      onPointerUp={end}
      onPointerCancel={end}
      onPointerLeave={() => tool === "pointer" && onMark({ kind: "unpoint" })}
    />
  );
}

const within = (share: number): number => Math.min(1, Math.max(0, share));

/** No two lines of a talk have one name, whichever window they begin in. */
const newLine = (): string =>
  crypto
    .getRandomValues(new Uint32Array(3))
    .reduce((text, part) => text + part.toString(36), "")
    .slice(0, 24);
