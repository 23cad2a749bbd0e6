/** A modal that traps focus, closes with Esc and gives focus back to its opener: all by the browser's own `dialog`. */
import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import { t } from "../i18n/index.ts";

export interface DialogProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
  /** "alertdialog" for what must be answered. */
  readonly urgent?: boolean;
  /** Leaves the close button out where the content brings its own. */
  readonly ownButtons?: boolean;
}

export function Dialog({ title, onClose, children, urgent, ownButtons }: DialogProps) {
  const element = useRef<HTMLDialogElement>(null);
  const heading = useId();
  useEffect(() => {
    const opener = document.activeElement;
    const dialog = element.current;
    dialog?.showModal();
    // What takes the focus first may stand far down a long text, which is read from its top.
    if (dialog && dialog.scrollTop > 0) {
      dialog.focus();
      dialog.scrollTop = 0;
    }
    return () => {
      if (opener instanceof HTMLElement) opener.focus();
    };
  }, []);
  return (
    <dialog
      ref={element}
      class="dialog"
      role={urgent ? "alertdialog" : undefined}
      aria-labelledby={heading}
      tabIndex={-1}
      onClose={onClose}
    >
      <div class="dialog-body">
        <h2 id={heading}>{title}</h2>
        {children}
        {!ownButtons && (
          <button type="button" class="main" onClick={() => element.current?.close()}>
            {t("dialog.close")}
          </button>
        )}
      </div>
    </dialog>
  );
}
