/** How this person wants the page, kept on this device alone; a device that keeps nothing is survived. */
import { effect, signal } from "@preact/signals";

const PREFIX = "lungward.";

/** A signal whose value is kept under `lungward.<name>`; anything unreadable gives `fallback`. */
function kept<Value extends string | boolean>(name: string, fallback: Value, allowed: readonly Value[]) {
  const value = signal(fallback);
  try {
    const found = JSON.parse(localStorage.getItem(PREFIX + name) ?? "null") as Value;
    if (allowed.includes(found)) value.value = found;
  } catch {
    // Storage may be denied or hold what an older version wrote: the standard stands.
  }
  let first = true;
  effect(() => {
    const text = JSON.stringify(value.value);
    if (first) {
      first = false;
      return;
    }
    try {
      if (value.value === fallback) localStorage.removeItem(PREFIX + name);
      else localStorage.setItem(PREFIX + name, text);
    } catch {
      // Full or denied: the choice lasts until the page closes.
    }
  });
  return value;
}

/** Single letters and signs act as keys. */
export const lettersOn = kept("letters", true, [true, false]);
export const largerWords = kept("largerWords", false, [true, false]);
export const keptTheme = kept<"dark" | "light">("theme", "dark", ["dark", "light"]);
export const keptVersion = kept<"plain" | "technical">("telling", "plain", ["plain", "technical"]);
/** Of a talk; apart from one's own, so that a hall never reads what its speaker last studied. */
export const hallVersion = kept<"plain" | "technical">("hallTelling", "plain", ["plain", "technical"]);
/** The bench has shown once what can be done in it. */
export const cueSeen = kept("cueSeen", false, [true, false]);
