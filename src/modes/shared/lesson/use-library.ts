/** The lessons in the page's language, for a component: null until they are read; follows the language and the own lessons. */
import { type ReadonlySignal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { language } from "../../../i18n/index.ts";
import { type Library, loadLibrary, onLibrariesForgotten } from "../../../lesson/library/library.ts";
import { tellMissedPart } from "../page-notes.tsx";

export function useLibrary(): ReadonlySignal<Library | null> {
  const library = useSignal<Library | null>(null);
  const tag = language();
  useEffect(() => {
    // A language that was left before its lessons came must not win over the one chosen after it.
    let wanted = true;
    const load = () =>
      void loadLibrary(tag).then((loaded) => {
        if (wanted) library.value = loaded;
      }, tellMissedPart);
    load();
    const unfollow = onLibrariesForgotten(load);
    return () => {
      wanted = false;
      unfollow();
    };
  }, [library, tag]);
  return library;
}
