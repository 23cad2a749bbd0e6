/** The lessons in the page's language, for a component: null until they are read; follows the language. */
import { type ReadonlySignal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { loadShelf, type Shelf } from "../../lesson/shelf.ts";
import { language } from "../../words/index.ts";

export function useShelf(): ReadonlySignal<Shelf | null> {
  const shelf = useSignal<Shelf | null>(null);
  const tag = language();
  useEffect(() => {
    // A language that was left before its lessons came must not win over the one chosen after it.
    let wanted = true;
    void loadShelf(tag).then((loaded) => {
      if (wanted) shelf.value = loaded;
    });
    return () => {
      wanted = false;
    };
  }, [shelf, tag]);
  return shelf;
}
