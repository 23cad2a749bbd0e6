/** A button within a sentence that opens a note below its line; Esc closes it. */
import type { ComponentChildren } from "preact";
import { useId, useRef, useState } from "preact/hooks";

export interface DisclosureProps {
  readonly class: string;
  /** Accessible name where the visible words do not say enough. */
  readonly name?: string;
  readonly words: ComponentChildren;
  readonly children: ComponentChildren;
}

export function Disclosure({ class: kind, name, words, children }: DisclosureProps) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const closeOnEscape = (event: KeyboardEvent) => {
    if (event.key !== "Escape" || !open) return;
    event.preventDefault();
    event.stopPropagation();
    setOpen(false);
    button.current?.focus();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only hears Esc from the button within
    <span onKeyDown={closeOnEscape}>
      <button
        type="button"
        ref={button}
        class={`quiet inline ${kind}`}
        aria-label={name}
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        onClick={() => setOpen(!open)}
      >
        {words}
      </button>
      {open && (
        <span class="in-line-note" id={id} role="note">
          {children}
        </span>
      )}
    </span>
  );
}
