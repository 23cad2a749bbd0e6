/** Files dropped on the page. */

/** Words that are dragged within a text are none of ours. */
const bringsFiles = ({ dataTransfer }: DragEvent): boolean => Boolean(dataTransfer?.types.includes("Files"));

/** Until the returned function is called. */
function listen(effect: "copy" | "none", drop: (files: readonly File[]) => void): () => void {
  const hold = (event: DragEvent) => {
    if (!bringsFiles(event)) return;
    event.preventDefault();
    if (event.dataTransfer) event.dataTransfer.dropEffect = effect;
  };
  const take = (event: DragEvent) => {
    if (!bringsFiles(event)) return;
    event.preventDefault();
    drop([...(event.dataTransfer?.files ?? [])]);
  };
  addEventListener("dragover", hold);
  addEventListener("drop", take);
  return () => {
    removeEventListener("dragover", hold);
    removeEventListener("drop", take);
  };
}

/** Files dropped anywhere on the page. */
export const takeDrops = (take: (files: readonly File[]) => void): (() => void) => listen("copy", take);

/** Where nothing takes a file the pointer says so; without this the browser would show the file in the page's place or over it. */
export const refuseDrops = (): (() => void) => listen("none", () => {});
