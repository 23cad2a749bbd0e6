/** A mode's keys, heard while it is open. */
import { useLayoutEffect, useRef } from "preact/hooks";
import { type Key, listenForKeys } from "../../ui/keys.ts";
import { lettersOn } from "./preferences.ts";

/** @param covered whether something lies over the mode that has keys of its own */
export function useKeys(keys: readonly Key[], covered: () => boolean): void {
  const latest = useRef({ keys, covered });
  latest.current = { keys, covered };
  // Before the first picture: whoever sees the page may press a key.
  useLayoutEffect(
    () =>
      listenForKeys(
        () => (latest.current.covered() ? [] : latest.current.keys),
        () => lettersOn.value,
      ),
    [],
  );
}
