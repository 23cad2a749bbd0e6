/** A pointer that the hall can follow: by mouse or finger here, and by the speaker's window. */
import type { ReadonlySignal } from "@preact/signals";
import type { Talk } from "./talk.ts";

export interface PointerProps {
  readonly talk: ReadonlySignal<Talk>;
  /** Whether the mouse points here. */
  readonly on: boolean;
  readonly onPoint: (at: readonly [number, number]) => void;
}

export function Pointer({ talk, on, onPoint }: PointerProps) {
  const at = talk.value.pointer;
  const follow = ({ clientX, clientY }: PointerEvent) =>
    onPoint([clientX / innerWidth, clientY / innerHeight]);
  return (
    <>
      {on && <div class="pointer-surface" onPointerMove={follow} onPointerDown={follow} />}
      {at && (
        <div
          class="pointer-dot"
          aria-hidden="true"
          style={{ left: `${100 * at[0]}%`, top: `${100 * at[1]}%` }}
        />
      )}
    </>
  );
}
