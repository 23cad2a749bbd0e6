/** Three hints for whoever opens the bench for the first time; shown once, on this device. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Context } from "../shared/mode.ts";
import { cueSeen } from "../shared/preferences.ts";

/** What each hint is about; the first stands at a handle, the others where the page has their subject. */
const HINTS = ["drag", "read", "scenes"] as const;

export function FirstCue({ context: { session, stage } }: { readonly context: Context }) {
  const at = useSignal(0);
  const box = useRef<HTMLElement>(null);
  const begun = useRef(session.edits.peek());
  const end = () => {
    cueSeen.value = true;
  };
  const next = () => {
    if (at.value + 1 < HINTS.length) at.value++;
    else end();
  };
  useEffect(
    () =>
      session.edits.subscribe((edits) => {
        // The wall has been moved: what that did comes next.
        if (at.peek() === 0 && edits > begun.current) at.value = 1;
      }),
    [session, at],
  );
  useEffect(
    () =>
      stage.afterFrame(() => {
        const [handle] = stage.handles.peek();
        const spot = at.peek() === 0 && handle ? stage.toScreen(handle.at) : null;
        if (!box.current) return;
        // Before the first picture there is nothing to point at.
        box.current.hidden = at.peek() === 0 && !spot;
        const x = spot && Math.min(innerWidth - box.current.offsetWidth, Math.max(8, spot[0]));
        box.current.style.translate = spot ? `${x}px ${spot[1]}px` : "";
      }),
    [stage, at],
  );
  const hint = HINTS[at.value];
  return (
    <aside class={`cue cue-${hint}`} aria-label={t("cue.title")} ref={box} hidden>
      <p>{t(`cue.${hint}`)}</p>
      <p class="actions">
        <button type="button" class="main" data-item="cue-next" onClick={next}>
          {t(at.value + 1 < HINTS.length ? "lesson.next" : "cue.done")}
        </button>
        {at.value + 1 < HINTS.length && (
          <button type="button" class="quiet" data-item="cue-skip" onClick={end}>
            {t("cue.skip")}
          </button>
        )}
      </p>
    </aside>
  );
}
