/** Announcements to a screen reader: one polite region and one urgent one for the whole page. */
import { signal } from "@preact/signals";

const polite = signal("");
const urgent = signal("");

/** s: shortest time between two polite announcements; of those that come sooner only the last is spoken. */
const SHORTEST_GAP = 1;

let lastSpoken = Number.NEGATIVE_INFINITY;
let waiting: ReturnType<typeof setTimeout> | undefined;

/** Speaks when the reader next pauses. While a slider moves, at most one per second is spoken, and always the last. */
export function announce(text: string): void {
  clearTimeout(waiting);
  const due = lastSpoken + SHORTEST_GAP * 1000 - performance.now();
  if (due <= 0) speak(text);
  else waiting = setTimeout(() => speak(text), due);
}

/** Speaks at once: for faults alone. */
export function announceFault(text: string): void {
  urgent.value = text;
}

function speak(text: string): void {
  lastSpoken = performance.now();
  // The same words twice are a new announcement only if the text differs.
  polite.value = polite.value === text ? `${text}\u200b` : text;
}

export const LiveRegions = () => (
  <div class="unseen">
    <div role="status" aria-live="polite" aria-atomic="true">
      {polite}
    </div>
    <div role="alert" aria-atomic="true">
      {urgent}
    </div>
  </div>
);
