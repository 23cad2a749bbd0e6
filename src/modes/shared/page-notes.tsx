/** What went wrong with the page, over whichever mode is open: an address of which not all could be used, a part or language that did not come, a picture that stopped. */
import { signal } from "@preact/signals";
import { render } from "preact";
import { language, languageName, t } from "../../i18n/index.ts";
import type { Fault } from "../../sim/faults.ts";
import { FaultNote } from "../../ui/fault-note.tsx";
import type { Place } from "./address/place.ts";

const announced = signal<readonly Fault[]>([]);
const missed = signal("");
const partMissed = signal(false);
const pictureStopped = signal(false);

export function mountPageNotes(): void {
  const host = document.createElement("div");
  document.body.append(host);
  render(<PageNotes />, host);
}

/** Reports what reading the address has left out, and what it asks for that no library holds. */
export function tellDropped(place: Place, dropped: readonly Fault[]): void {
  announced.value = dropped;
  if (!place.lesson && !place.step && !place.more.page && !place.more.list) return;
  // Not before it is needed: the lessons are no part of the first picture.
  const asked = Promise.all([import("../../lesson/library/library.ts"), import("../place-faults.ts")]);
  asked
    .then(async ([{ loadLibrary }, { placeFaults }]) => {
      const faults = placeFaults(place, await loadLibrary(language()));
      if (announced.peek() === dropped && faults.length > 0) announced.value = [...dropped, ...faults];
    })
    // Lessons that do not load are reported where they are opened.
    .catch(() => {});
}

/** Tells which language was asked for and did not come; "" when all is well. */
export function tellMissedLanguage(tag: string): void {
  missed.value = tag;
}

/** Tells that a part of the page did not come; the address says what was wanted, so that loading the page again asks for it anew. */
export function tellMissedPart(): void {
  partMissed.value = true;
}

/** Tells that the picture's drawing fails, or that it goes on. */
export function tellStoppedPicture(stopped: boolean): void {
  pictureStopped.value = stopped;
}

const ReloadNote = ({ words }: { readonly words: string }) => (
  <div class="note">
    <p>{words}</p>
    <button type="button" onClick={() => location.reload()}>
      {t("part.reload")}
    </button>
  </div>
);

const PageNotes = () => (
  <div class="page-notes" role="status">
    {partMissed.value && <ReloadNote words={t("part.missed")} />}
    {pictureStopped.value && <ReloadNote words={t("part.stopped")} />}
    {missed.value && (
      <FaultNote
        title={t("link.language.missed", {
          asked: languageName(missed.value),
          shown: languageName(language()),
        })}
        faults={[]}
        onClose={() => {
          missed.value = "";
        }}
      />
    )}
    {announced.value.length > 0 && (
      <FaultNote
        title={t("link.dropped")}
        faults={announced.value}
        onClose={() => {
          announced.value = [];
        }}
      />
    )}
  </div>
);
