/** Own lessons in the browser's database, and for the moment that a write takes in local storage: a page that closes meanwhile loses nothing. */
import { createStore, del, set, values } from "idb-keyval";
import { keptIn } from "../../../ui/kept-in.ts";
import { inTime } from "./in-time.ts";
import { isOwnText, type OwnText, type TextStore } from "./own-texts.ts";

const DATABASE = "lungward-own";
const UNSAVED = "lungward.unsaved";

/** Opening a database makes it: a page that only looks must leave none behind. */
async function isThere(): Promise<boolean> {
  const known = await indexedDB.databases?.();
  return known === undefined || known.some(({ name }) => name === DATABASE);
}

export function browserTextStore(): TextStore {
  // Made at the first use: where storage is denied, making it throws.
  let made: ReturnType<typeof createStore> | undefined;
  const store = () => {
    made ??= createStore(DATABASE, "texts");
    return made;
  };
  return {
    async all() {
      const kept: unknown[] = await inTime(isThere().then((there) => (there ? values(store()) : [])));
      const late = unsaved.read();
      if (!late) return kept;
      const stored = kept.filter(isOwnText).find(({ id }) => id === late.id);
      return stored && stored.changed >= late.changed
        ? kept
        : [late, ...kept.filter((each) => each !== stored)];
    },
    async put(text) {
      const written = writeUnsaved(text);
      await inTime(set(text.id, text, store()));
      forgetUnsaved(written);
    },
    async remove(id) {
      if (unsaved.read()?.id === id) unsaved.write(null);
      await inTime(del(id, store()));
    },
  };
}

const unsaved = keptIn(
  () => localStorage,
  UNSAVED,
  (found) => (isOwnText(found) ? found : null),
);

/** @returns what stands there now; null where there is no room or no storage */
function writeUnsaved(text: OwnText): string | null {
  try {
    // Earlier versions are in the database already.
    const written = JSON.stringify({ ...text, earlier: text.earlier.slice(-1) });
    localStorage.setItem(UNSAVED, written);
    return written;
  } catch {
    return null;
  }
}

/** A later text that stands there by now stays. */
function forgetUnsaved(written: string | null): void {
  try {
    if (written === null || localStorage.getItem(UNSAVED) === written) localStorage.removeItem(UNSAVED);
  } catch {
    // Nothing was kept.
  }
}
