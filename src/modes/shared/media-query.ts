/** Whether a media query holds, as a signal that follows the window. */
import { type ReadonlySignal, signal } from "@preact/signals";

export function mediaQuery(text: string): ReadonlySignal<boolean> {
  const query = matchMedia(text);
  const holds = signal(query.matches);
  query.addEventListener("change", ({ matches }) => {
    holds.value = matches;
  });
  return holds;
}
