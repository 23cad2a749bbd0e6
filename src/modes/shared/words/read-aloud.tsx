/** Reads the words on the screen aloud, again, and stops; nothing where the device has no voice. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import { hasVoice, onVoices, readAloud, stopReading } from "./aloud.ts";

export interface ReadAloudProps {
  /** Selector of the element whose words are read. */
  readonly words: string;
  readonly language: string;
  /** Changes with what is shown: reading then stops. */
  readonly subject: string;
}

export function ReadAloud({ words, language, subject }: ReadAloudProps) {
  const able = useSignal(hasVoice(language));
  const reading = useSignal(false);
  useEffect(
    () =>
      onVoices(() => {
        able.value = hasVoice(language);
      }),
    [able, language],
  );
  // Each subject begins in silence.
  useEffect(
    () => () => {
      stopReading();
      reading.value = false;
    },
    [reading, subject],
  );
  if (!able.value) return null;
  return (
    <button
      type="button"
      onClick={() => {
        if (reading.value) {
          stopReading();
          reading.value = false;
          return;
        }
        reading.value = true;
        readAloud(spokenWords(document.querySelector(words)), language, () => {
          reading.value = false;
        });
      }}
    >
      {t(reading.value ? "kiosk.quiet" : "kiosk.aloud")}
    </button>
  );
}

/** One sentence an element, so that a heading does not run into its text. */
const spokenWords = (element: Element | null): string =>
  [...(element?.querySelectorAll("h2, p, li, legend, label") ?? [])]
    .map((each) => each.textContent ?? "")
    .join("\n");
