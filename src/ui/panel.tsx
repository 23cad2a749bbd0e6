/** A panel next to the scene: closes with Esc or its button, and gives focus back to what opened it. */
import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import { t } from "../i18n/index.ts";

export interface PanelProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
  /** Shown next to the title. */
  readonly beside?: ComponentChildren;
}

export function Panel({ title, onClose, children, beside }: PanelProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  const id = useId();
  useEffect(() => {
    const opener = document.activeElement;
    heading.current?.focus();
    return () => {
      if (opener instanceof HTMLElement && opener.isConnected) opener.focus();
    };
  }, []);
  return (
    <section
      class="panel"
      aria-labelledby={id}
      onKeyDown={(event) => {
        if (event.key !== "Escape" || event.defaultPrevented) return;
        event.preventDefault();
        onClose();
      }}
    >
      <header class="panel-head">
        <h2 id={id} ref={heading} tabIndex={-1}>
          {title}
        </h2>
        {beside}
        <button type="button" class="quiet" onClick={onClose}>
          {t("dialog.close")}
        </button>
      </header>
      <div class="panel-body">{children}</div>
    </section>
  );
}
