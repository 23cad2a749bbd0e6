/** Files dropped on the page. */

/** A file dropped anywhere on the page; without this the browser would leave the page and show the file. */
export function takeDrops(take: (file: File | undefined) => void): () => void {
  const hold = (event: DragEvent) => event.preventDefault();
  const drop = (event: DragEvent) => {
    event.preventDefault();
    take(event.dataTransfer?.files[0]);
  };
  addEventListener("dragover", hold);
  addEventListener("drop", drop);
  return () => {
    removeEventListener("dragover", hold);
    removeEventListener("drop", drop);
  };
}
