/** What the speaker wants to say: own notes first, then the step's; at the size that the speaker chose. */
import { signal } from "@preact/signals";
import { t } from "../../i18n/index.ts";
import { ProseView } from "../../ui/lesson/prose.tsx";
import type { Voice } from "../../ui/lesson/voice.ts";
import { type FoundStop, stepShown } from "./stops.ts";

/** rem */
const SIZES = { min: 0.875, max: 3, step: 0.25 } as const;
/** Stays while the window is open, from stop to stop. */
const size = signal(1.375);

export function SpeakerNotes({ stop, voice }: { readonly stop: FoundStop; readonly voice: Voice | null }) {
  const given = stepShown(stop)?.notes;
  const change = (by: number) => () => {
    size.value = Math.min(SIZES.max, Math.max(SIZES.min, size.value + by));
  };
  return (
    <section aria-label={t("lecture.notes")} class="speaker-notes" style={{ fontSize: `${size.value}rem` }}>
      <div class="actions">
        <button type="button" aria-label={t("lecture.notes.smaller")} onClick={change(-SIZES.step)}>
          <span aria-hidden="true">−</span>
        </button>
        <button type="button" aria-label={t("lecture.notes.larger")} onClick={change(SIZES.step)}>
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
