/** Files let go over the page: here, or before over one that has no use for them. */
import { takeDrops } from "./take-drops.ts";

let held: readonly File[] = [];

export function holdFiles(files: readonly File[]): void {
  held = files;
}

/** Each once. */
export function heldFiles(wanted: (file: File) => boolean): readonly File[] {
  const found = held.filter(wanted);
  held = held.filter((file) => !found.includes(file));
  return found;
}

/** What is wanted of the files held and of those dropped from now on, until the returned function is called; `answer`, which says what became of them, comes into view. */
export function followDrops(
  wanted: (file: File) => boolean,
  take: (files: readonly File[]) => Promise<void>,
  answer: { readonly current: HTMLElement | null },
): () => void {
  const takeAll = (files: readonly File[]) => {
    if (files.length > 0) void take(files).then(() => answer.current?.scrollIntoView({ block: "center" }));
  };
  takeAll(heldFiles(wanted));
  return takeDrops((files) => takeAll(files.filter(wanted)));
}
