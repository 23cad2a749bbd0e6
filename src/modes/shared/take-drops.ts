/** Files dropped on the page. */

/** Files dropped anywhere on the page, the first and all; without this the browser would leave the page and show the file. */
export function takeDrops(take: (first: File | undefined, all: readonly File[]) => void): () => void {
  const hold = (event: DragEvent) => event.preventDefault();
  const drop = (event: DragEvent) => {
    event.preventDefault();
    const files = [...(event.dataTransfer?.files ?? [])];
    take(files[0], files);
  };
  addEventListener("dragover", hold);
  addEventListener("drop", drop);
  return () => {
    removeEventListener("dragover", hold);
    removeEventListener("drop", drop);
  };
}
