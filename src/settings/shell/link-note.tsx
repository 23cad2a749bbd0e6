/** Parts of the page's address that could not be used, told over whichever setting is open. */
import { signal } from "@preact/signals";
import { render } from "preact";
import { FaultNote } from "../../interface/fault-note.tsx";
import type { Fault } from "../../sim/faults.ts";
import { language, t } from "../../words/index.ts";
import type { Place } from "../where.ts";

const told = signal<readonly Fault[]>([]);

export function mountLinkNote(): void {
  const host = document.createElement("div");
  document.body.append(host);
  render(<LinkNote />, host);
}

/** Tells what reading the address has left out, and what it asks for that is on no shelf. */
export function tellDropped(place: Place, dropped: readonly Fault[]): void {
  told.value = dropped;
  if (!place.lesson && !place.step && !place.more.page && !place.more.list) return;
  // Not before it is needed: the lessons are no part of the first picture.
  const asked = Promise.all([import("../../lesson/shelf.ts"), import("../place-faults.ts")]);
  asked
    .then(async ([{ loadShelf }, { placeFaults }]) => {
      const faults = placeFaults(place, await loadShelf(language()));
      if (told.peek() === dropped && faults.length > 0) told.value = [...dropped, ...faults];
    })
    // Lessons that do not come are told where they are opened.
    .catch(() => {});
}

const LinkNote = () => (
  <div class="link-note" role="status">
    {told.value.length > 0 && (
      <FaultNote
        title={t("link.dropped")}
        faults={told.value}
        onClose={() => {
          told.value = [];
        }}
      />
    )}
  </div>
);
