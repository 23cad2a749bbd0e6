/** What the speaker wants to say: own notes first, then the step's; as large as shows them all, or as the speaker chose. */
import { signal, useSignal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import { ProseView } from "../../../ui/lesson/prose.tsx";
import type { Voice } from "../../../ui/lesson/voice.ts";
import { type FoundStop, stepShown } from "../talk/stops.ts";
import { NOTE_SIZES, sizeThatFits } from "./note-size.ts";

const { min, usual, max, step } = NOTE_SIZES;
/** rem; stays while the window is open, from stop to stop. null = as large as shows them all. */
const chosen = signal<number | null>(null);

export function SpeakerNotes({ stop, voice }: { readonly stop: FoundStop; readonly voice: Voice | null }) {
  const given = stepShown(stop)?.notes;
  const fitted = useSignal<number>(usual);
  const size = chosen.value ?? fitted.value;
  const notes = useRef<HTMLElement>(null);
  const fit = () => {
    if (notes.current && chosen.peek() === null) fitted.value = sizeThatFits(notes.current);
  };
  // At each rendering: what stands above the notes may have changed too.
  useLayoutEffect(fit);
  useLayoutEffect(() => {
    const watcher = new ResizeObserver(fit);
    const words = notes.current?.parentElement;
    if (words) watcher.observe(words);
    return () => watcher.disconnect();
  }, []);
  const change = (by: number) => () => {
    chosen.value = Math.min(max, Math.max(min, size + by));
  };
  return (
    <section
      aria-label={t("lecture.notes")}
      class="speaker-notes"
      ref={notes}
      style={{ fontSize: `${size}rem` }}
    >
      <div class="actions">
        <button type="button" aria-label={t("lecture.notes.smaller")} onClick={change(-step)}>
          <span aria-hidden="true">−</span>
        </button>
        <button type="button" aria-label={t("lecture.notes.larger")} onClick={change(step)}>
          <span aria-hidden="true">+</span>
        </button>
      </div>
      {stop.notes && <p class="own-notes">{stop.notes}</p>}
      {given && voice && (
        <div lang={given.language}>
          <ProseView prose={given.prose} voice={voice} />
        </div>
      )}
      {!stop.notes && !given && <p>{t("lecture.noNotes")}</p>}
    </section>
  );
}
