/** How this person wants the page, kept on this device alone. */
import { effect, signal } from "@preact/signals";
import { keptIn } from "../../ui/kept-in.ts";

/** A signal whose value is kept under `lungward.<name>`; anything unreadable gives `fallback`. */
function preference<Value extends string | boolean>(
  name: string,
  fallback: Value,
  allowed: readonly Value[],
) {
  const kept = keptIn(
    () => localStorage,
    `lungward.${name}`,
    (found) => allowed.find((each) => each === found) ?? null,
  );
  const value = signal(kept.read() ?? fallback);
  let first = true;
  effect(() => {
    const chosen = value.value === fallback ? null : value.value;
    if (!first) kept.write(chosen);
    first = false;
  });
  return value;
}

/** Single letters and signs act as keys. */
export const lettersOn = preference("letters", true, [true, false]);
export const largerWords = preference("largerWords", false, [true, false]);
export const keptTheme = preference<"dark" | "light">("theme", "dark", ["dark", "light"]);
export const keptVersion = preference<"plain" | "technical">("telling", "plain", ["plain", "technical"]);
/** Of a talk; apart from one's own, so that a hall never reads what its speaker last studied. */
export const hallVersion = preference<"plain" | "technical">("hallTelling", "plain", ["plain", "technical"]);
/** The bench has shown once what can be done in it. */
export const cueSeen = preference("cueSeen", false, [true, false]);
