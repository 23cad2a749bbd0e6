/** Own lessons in the browser's database. */
import { createStore, del, set, values } from "idb-keyval";
import type { TextStore } from "./own-texts.ts";

export function browserTextStore(): TextStore {
  // Made at the first use: where storage is denied, making it throws.
  let made: ReturnType<typeof createStore> | undefined;
  const store = () => {
    made ??= createStore("lungward-own", "texts");
    return made;
  };
  return {
    all: async () => values(store()),
    put: async (text) => set(text.id, text, store()),
    remove: async (id) => del(id, store()),
  };
}
